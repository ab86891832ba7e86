#pragma once
// The potential walk in the window: its action, its card, and what ties the steps on the card to the parts on the board. Changes nothing.

#include "ui/cards/card_row.h"
#include "ui/cards/walk_card.h"
#include "ui/document/bench_document.h"
#include "ui/live/live_bench.h"
#include "ui/view/bench_view.h"

#include <QAction>
#include <QMenu>
#include <QTimer>

namespace tiepoint::ui {

class WalkGuide : public QObject {
    Q_OBJECT
public:
    /// Adds its action to the menu and to the window.
    WalkGuide(BenchDocument& document, LiveBench& live, BenchView& view, CardRow& cards, QMenu& menu, QWidget* window);

    QAction* action() const { return action_; }
    WalkCard& card() const { return *card_; }

Q_SIGNALS:
    void cardWanted();  ///< the card is about to be shown: the row of cards has to be there

private:
    void show(bool wanted);
    void follow();
    std::string partToShow() const;

    BenchView& view_;
    CardRow& cards_;
    WalkCard* card_;
    QAction* action_;
    QTimer patience_;  ///< an answer that takes longer than a frame is shown as missing
};

}  // namespace tiepoint::ui
