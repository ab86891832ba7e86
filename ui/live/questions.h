#pragma once
// Questions about the bench that take longer than a frame: its truth table, why a part does what it does, which resistor it needs and where that
// goes, and what is wrong with it. A
// thread of its own, of low priority, works them out from immutable snapshots; the newest question of each kind wins, and what is being
// worked out for an older one, or for a bench that is no more, stops at once, as all does when this goes. Answers come back in the window's
// thread.

#include "core/findings/finding.h"
#include "core/hunt/judge.h"
#include "core/sizing/series_resistor.h"
#include "core/spread/battery.h"
#include "core/spread/spread.h"
#include "core/truth/truth_table.h"
#include "core/why/explain.h"

#include <QObject>

#include <memory>
#include <optional>
#include <string>

namespace tiepoint::ui {

/// A truth table, or why there is none, and the revision of the bench that it is about.
struct TableAnswer {
    quint64 revision = 0;
    std::shared_ptr<const Bench> bench;
    Result<TruthTable> table;
};

/// Why a part does what it does, and the instant that it is about.
struct WhyAnswer {
    quint64 revision = 0;
    quint64 inputSequence = 0;
    Answer answer;
};

/// What the bench says about the resistor that a part needs.
struct DriveAnswer {
    quint64 revision = 0;
    ResistorQuestion question;
};

/// Where a resistance goes for a part; nothing where there is no place.
struct PlaceAnswer {
    quint64 revision = 0;
    int part = -1;
    double ohm = 0;
    std::optional<Mend> place;
};

/// How far real parts may let the readings lie, and how long a battery lasts.
struct SpreadAnswer {
    quint64 revision = 0;
    quint64 inputSequence = 0;
    Spread spread;
    std::optional<BatteryLife> life;
};

struct HuntAnswer {
    std::shared_ptr<const Bench> target, bench;  ///< of the hunt; null: there is none, and why
    quint64 number = 0;
    std::string why;
};

class Questions : public QObject {
    Q_OBJECT
public:
    explicit Questions(QObject* parent = nullptr);
    ~Questions() override;

    /// The bench has changed: nobody waits any more for answers about the one before.
    void giveUp();
    /// The resistors that mends and remedies may take.
    void setDrawer(const ResistorDrawer& drawer);
    void askTable(std::shared_ptr<const Snapshot> snapshot);
    /// Nothing comes of it if the bench has no such part.
    void askWhy(std::shared_ptr<const Snapshot> snapshot, const std::string& part);
    /// `usual` as in core/why/light_drive.h.
    void askDrive(std::shared_ptr<const Snapshot> snapshot, int part, const ResistorQuestion& usual);
    void askPlace(std::shared_ptr<const Snapshot> snapshot, int part, double ohm);
    /// What is wrong with the bench of a snapshot, hands off its buttons.
    void askReport(std::shared_ptr<const Snapshot> snapshot);
    void askSpread(std::shared_ptr<const Snapshot> snapshot, const BatteryChoice& battery);
    /// About the slip that a bench hides; nothing comes of it if it hides none.
    void askVerdict(std::shared_ptr<const Bench> bench, const HuntGuess& guess);
    void askHints(std::shared_ptr<const Bench> bench);
    /// Hides a slip, the one of that number, in a bench.
    void askHunt(std::shared_ptr<const Bench> target, quint64 number);

Q_SIGNALS:
    void drawerChanged();  ///< what was answered before may propose other resistors now
    void tableReady(std::shared_ptr<const tiepoint::ui::TableAnswer> answer);
    void whyReady(std::shared_ptr<const tiepoint::ui::WhyAnswer> answer);
    void driveReady(std::shared_ptr<const tiepoint::ui::DriveAnswer> answer);
    void placeReady(std::shared_ptr<const tiepoint::ui::PlaceAnswer> answer);
    void reportReady(std::shared_ptr<const tiepoint::Report> report);
    void spreadReady(std::shared_ptr<const tiepoint::ui::SpreadAnswer> answer);
    void verdictReady(std::shared_ptr<const tiepoint::HuntVerdict> verdict);
    void huntReady(std::shared_ptr<const tiepoint::ui::HuntAnswer> answer);
    void hintsReady(std::shared_ptr<const std::vector<std::string>> hints);

private:
    class Worker;
    ResistorDrawer drawer_;
    std::unique_ptr<Worker> worker_;
};

}  // namespace tiepoint::ui
