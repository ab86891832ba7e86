#pragma once
// A card that is called for and put away again: it stands in the legend's place while it is wanted.

#include "ui/cards/card.h"
#include "ui/theme/panels.h"

#include <QLabel>
#include <QScrollArea>
#include <QToolButton>

namespace tiepoint::ui {

class AsideCard : public Card {
    Q_OBJECT
public:
    explicit AsideCard(QWidget* parent);

    QToolButton* closeButton() const { return close_; }

Q_SIGNALS:
    void closed();

protected:
    void arrangeCard() override;
    void keyPressEvent(QKeyEvent* event) override;
    /// The body less the room of the closing key.
    double widthBesideButton() const;
    /// Lays words that may be longer than the card into an area that scrolls up and down; the area owns the label then.
    static void scrollWords(QScrollArea& area, QLabel& words);
    /// Has the area scroll as far as the words reach, after they or its size have changed.
    static void settleWords(QScrollArea& area, QLabel& words);

private:
    QToolButton* close_;
};

}  // namespace tiepoint::ui
