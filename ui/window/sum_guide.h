#pragma once
// The sum in large digits in the window: its action, its card, and the brackets at the parts that it adds up while a room looks on. Changes
// nothing.

#include "ui/cards/card_row.h"
#include "ui/cards/sum_card.h"
#include "ui/live/live_bench.h"
#include "ui/view/bench_view.h"

#include <QAction>
#include <QMenu>

namespace tiepoint::ui {

class SumGuide : public QObject {
    Q_OBJECT
public:
    /// Adds its action to the menu and to the window.
    SumGuide(LiveBench& live, BenchView& view, CardRow& cards, QMenu& menu, QWidget* window);

    QAction* action() const { return action_; }
    SumCard& card() const { return *card_; }
    void show(bool wanted);

Q_SIGNALS:
    void cardWanted();  ///< the card is about to be shown: the row of cards has to be there

private:
    void follow();

    BenchView& view_;
    CardRow& cards_;
    SumCard* card_;
    QAction* action_;
};

}  // namespace tiepoint::ui
