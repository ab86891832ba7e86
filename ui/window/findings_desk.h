#pragma once
// Findings in the window: asks for a report at each revision, off the window's thread, marks what it tells on the bench and tells it on a
// card, one at a time. Stays calm while someone builds: what is no fault waits until the hand has let go and a moment has passed.
// Nothing of another revision is shown for longer than a blink.
//
// A bench that isn't done yet has no faults: what is open is told on a calm card instead (core/findings/unfinished.h), until the bench has
// worked once in this window or someone asks what is wrong. Opening a bench is no asking, from a file neither: who goes on with yesterday's half
// meets the same calm, and who looks for a fault has a key for it. Another bench begins anew.

#include "core/findings/unfinished.h"
#include "ui/cards/card_row.h"
#include "ui/cards/finding_card.h"
#include "ui/cards/open_card.h"
#include "ui/live/live_bench.h"
#include "ui/live/questions.h"
#include "ui/window/reveal_menu.h"

#include <QAction>
#include <QObject>
#include <QTimer>

#include <memory>
#include <set>

namespace tiepoint::ui {

class FindingsDesk : public QObject {
    Q_OBJECT
public:
    struct Parts {
        BenchDocument& document;
        LiveBench& live;
        BenchView& view;
        CardRow& cards;
        Questions& questions;
    };
    static constexpr int kCalmMs = 1000;  ///< after the last edit
    static constexpr int kPatienceMs =
        150;  ///< how long a report may take before what was known of the last revision goes

    /// Adds its actions to the menu.
    FindingsDesk(const Parts& parts, QMenu& menu, QWidget* window);

    FindingCard& card() const { return *card_; }
    OpenCard& openCard() const { return *openCard_; }
    RevealMenu& reveal() const { return *reveal_; }
    QAction* nextAction() const { return next_; }
    /// What is shown at the moment; null if nothing is.
    std::shared_ptr<const std::vector<Finding>> shown() const { return shown_; }

Q_SIGNALS:
    void cardWanted();  ///< the card is about to be shown on someone's wish: the row of cards has to be there
    void said(const QString& line);  ///< for the bar

private:
    /// What tells two findings of different revisions to be the same.
    using FindingId = std::pair<std::string, std::vector<std::string>>;
    static FindingId idOf(const Finding& finding) { return {finding.rule, finding.parts}; }

    /// What was told and put away of the bench before.
    void forget();
    void followBench();
    void followInstant();
    void ask();
    void take(const std::shared_ptr<const Report>& report);
    /// Shows of the report what may be shown now.
    void show();
    void showOnCard(int finding);
    void openAt(int finding);
    void followUnfinished();
    void showOpenEnds();
    void putOpenAway();
    void next();
    void sayNothing();
    void putAway();
    void preview(bool wanted);
    void applyMend();

    Parts parts_;
    RevealMenu* reveal_;
    FindingCard* card_;
    OpenCard* openCard_;
    QAction* next_;
    QTimer afterPicture_, calm_, patience_;
    quint64 asked_ = 0;                     ///< the revision that the last question was about
    std::shared_ptr<const Report> report_;  ///< of the present revision, or null
    std::shared_ptr<const std::vector<Finding>> shown_;
    std::set<FindingId> told_;     ///< shown before this revision: these needn't wait
    std::set<FindingId> putAway_;  ///< told when the card was put away: these don't open it again
    bool open_ = false;            ///< the card is
    bool worked_ = false;          ///< this bench has, in this window
    bool wanted_ = false;          ///< someone asked for all that is found, finished or not
    bool answerDue_ = false;       ///< someone asked before the report was there
    bool openPutAway_ = false;     ///< someone closed the card of what is open
    Unfinished unfinished_;        ///< of the present revision, as far as it is to be heeded
};

}  // namespace tiepoint::ui
