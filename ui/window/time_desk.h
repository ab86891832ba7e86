#pragma once
// Time in the window: its card, which comes by itself with a bench that moves and never for a resting one, its keys and menu, and what
// keeps all of it in line with the live bench. The rate of time is of no document. Window's thread only.

#include "ui/cards/card_row.h"
#include "ui/cards/time_card.h"
#include "ui/document/bench_document.h"
#include "ui/live/live_bench.h"

#include <QAction>
#include <QMenu>
#include <QObject>

namespace tiepoint::ui {

class TimeDesk : public QObject {
    Q_OBJECT
public:
    struct Parts {
        BenchDocument& document;
        LiveBench& live;
        BenchView& view;
        CardRow& cards;
    };
    /// Adds a menu of its own to `menu`, and its actions to the window.
    TimeDesk(const Parts& parts, QMenu& menu, QWidget* window);

    TimeCard& card() const { return *card_; }
    QAction* cardAction() const { return show_; }
    QAction* pauseAction() const { return pause_; }
    QAction* slowerAction() const { return slower_; }
    QAction* fasterAction() const { return faster_; }
    QAction* stepAction() const { return step_; }
    QAction* restartAction() const { return restart_; }
    /// While a room looks on the card is called for and put away, as others are.
    void setRoom(bool room);

Q_SIGNALS:
    void cardWanted();  ///< the card is about to be shown: the row of cards has to be there

private:
    void follow();
    void show(bool wanted);
    void choose(int detent);
    void stepRate(int by);
    int detent() const;

    Parts parts_;
    TimeCard* card_;
    QAction *show_, *pause_, *slower_, *faster_, *step_, *restart_;
    bool moves_ = false, room_ = false, putAway_ = false, isNew_ = false;
};

}  // namespace tiepoint::ui
