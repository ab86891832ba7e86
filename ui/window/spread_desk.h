#pragma once
// Spread and life in the window: an action, its card, and what keeps the card in line with the bench and the hands. Changes nothing.

#include "ui/cards/card_row.h"
#include "ui/cards/spread_card.h"
#include "ui/document/bench_document.h"
#include "ui/live/live_bench.h"
#include "ui/live/questions.h"

#include <QAction>
#include <QMenu>

namespace tiepoint::ui {

class SpreadDesk : public QObject {
    Q_OBJECT
public:
    struct Parts {
        BenchDocument& document;
        LiveBench& live;
        BenchView& view;
        CardRow& cards;
        Questions& questions;
    };
    /// Adds its action to the menu and to the window.
    SpreadDesk(const Parts& parts, QMenu& menu, QWidget* window);

    QAction* action() const { return action_; }
    SpreadCard& card() const { return *card_; }

Q_SIGNALS:
    void cardWanted();  ///< the card is about to be shown: the row of cards has to be there

private:
    void show(bool wanted);
    void ask();

    Parts parts_;
    SpreadCard* card_;
    QAction* action_;
};

}  // namespace tiepoint::ui
