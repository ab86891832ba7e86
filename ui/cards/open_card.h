#pragma once
// What is still open on a bench that isn't done yet: not wrong, so it looks like the bench itself, with a dashed line and broken rings, and
// nothing in it is red. Says nothing by itself: it shows what it is given.

#include "core/findings/unfinished.h"
#include "ui/cards/aside_card.h"

namespace tiepoint::ui {

class OpenCard : public AsideCard {
    Q_OBJECT
public:
    explicit OpenCard(QWidget* parent);

    /// Without places where the bench keeps them to itself.
    void showOpen(std::vector<OpenEnd> open, bool withPlaces);
    const std::vector<OpenEnd>& open() const { return open_; }
    /// Asks for the findings all the same.
    QToolButton* askButton() const { return ask_; }

Q_SIGNALS:
    void asked();

protected:
    void paintSurface(QPainter& painter) override;
    void paintBody(QPainter& painter) override;
    void arrangeCard() override;

private:
    void paintEnd(QPainter& painter, const QRectF& cell, const OpenEnd& end) const;

    std::vector<OpenEnd> open_;
    bool withPlaces_ = true;
    QToolButton* ask_;
};

}  // namespace tiepoint::ui
