#pragma once
// Light and warmth in the window: an action, its card, and the edit of the bench's surroundings that follows torch and hand. A drag is one step
// of the history.

#include "ui/cards/card_row.h"
#include "ui/cards/surroundings_card.h"
#include "ui/document/bench_document.h"
#include "ui/view/bench_view.h"

#include <QAction>
#include <QMenu>

namespace tiepoint::ui {

class SurroundingsDesk : public QObject {
    Q_OBJECT
public:
    /// Adds its action to the menu and to the window.
    SurroundingsDesk(BenchDocument& document, BenchView& view, CardRow& cards, QMenu& menu, QWidget* window);

    QAction* action() const { return action_; }
    SurroundingsCard& card() const { return *card_; }

Q_SIGNALS:
    void cardWanted();  ///< the card is about to be shown: the row of cards has to be there
    void said(const QString& line);

private:
    void show(bool wanted);
    void choose(const Surroundings& surroundings, bool begins);
    void follow();

    BenchDocument& document_;
    CardRow& cards_;
    SurroundingsCard* card_;
    QAction* action_;
    int gesture_ = -1;
};

}  // namespace tiepoint::ui
