#pragma once
// A fault hunt in the window: while the bench on the table hides a slip, three cards take the place of the row of cards and the tray. What the
// meter shows becomes a reading with a number, marked on the bench by a pinned tag with the figure as it was; readings are the proof of a
// guess. Changes the bench by edits alone: a reading is one, so is the mend once it is proved. Judging is done off the window's thread.
//
// What is told unasked elsewhere (findings, why, flows and volts of nets) stays silent by itself: those who tell it ask isHunting().

#include "core/hunt/hidden_slip.h"
#include "core/hunt/judge.h"
#include "ui/cards/hunt_cause_card.h"
#include "ui/cards/hunt_proof_card.h"
#include "ui/cards/hunt_readings_card.h"
#include "ui/document/bench_document.h"
#include "ui/live/live_bench.h"
#include "ui/live/questions.h"
#include "ui/view/bench_view.h"

#include <QAction>
#include <QWidget>

#include <map>
#include <optional>
#include <set>

namespace tiepoint::ui {

class HuntDesk : public QObject {
    Q_OBJECT
public:
    struct Parts {
        BenchDocument& document;
        LiveBench& live;
        BenchView& view;
        Questions& questions;
        std::vector<QAction*> locked;  ///< actions that would tell
    };
    HuntDesk(const Parts& parts, QWidget* stage);

    /// Whether the cards of a hunt are on the table.
    bool isActive() const { return active_; }
    /// What is seen, for the title line; empty without a hunt.
    QString seen() const;
    QWidget& panel() const { return *panel_; }
    HuntReadingsCard& readings() const { return *readings_; }
    HuntCauseCard& cause() const { return *cause_; }
    HuntProofCard& proof() const { return *proof_; }

    void setLook(const Look& look);
    /// Gives the cards their places in the panel.
    void arrange();

Q_SIGNALS:
    void activeChanged();

private:
    /// Where a reading was taken: what must differ for another to be one.
    struct Spot {
        Hole red, black;
        std::string quantity, when;
        friend bool operator==(const Spot&, const Spot&) = default;
    };

    /// What the buttons of the things were made from.
    struct Shown {
        std::vector<Part> parts;
        std::vector<Jumper> jumpers;
        const Theme* theme = nullptr;
        friend bool operator==(const Shown&, const Shown&) = default;
    };

    void followBench();
    void followInstant();
    void takeReading(const std::shared_ptr<const Snapshot>& snapshot, const Part& meter);
    void showAll();
    void showThings();
    std::vector<HuntRow> rowsNow() const;
    QString whereOf(const Hole& hole) const;
    void tryGuess();
    void takeVerdict(const HuntVerdict& verdict);
    void nextHint();
    void finish();

    Parts parts_;
    QWidget* panel_;
    HuntReadingsCard* readings_;
    HuntCauseCard* cause_;
    HuntProofCard* proof_;
    std::optional<HiddenSlip> slip_;
    bool active_ = false;
    quint64 opening_ = 0;   ///< of the bench that the hunt is on
    quint64 finished_ = 0;  ///< the opening whose hunt is over
    std::optional<Shown> shown_;
    std::optional<Spot> last_;
    std::map<std::string, HuntReading> taken_;  ///< by pinned reading
    std::set<std::string> chosen_;
    std::vector<std::string> hints_;
    int openHints_ = 0;
    Look look_;
};

}  // namespace tiepoint::ui
