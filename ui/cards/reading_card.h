#pragma once
// The reading card: one big number for the part pointed at, its current in and out side by side, and its share of a rating.

#include "ui/cards/card.h"
#include "ui/cards/reading_text.h"

namespace tiepoint::ui {

class ReadingCard : public Card {
    Q_OBJECT
public:
    explicit ReadingCard(QWidget* parent = nullptr);

    void setText(const ReadingText& text);
    const ReadingText& text() const { return text_; }

protected:
    void paintBody(QPainter& painter) override;

private:
    /// Draws the big number, smaller where it needs more room than there is; returns its width.
    double paintNumber(QPainter& painter, const QRectF& box) const;
    void paintInAndOut(QPainter& painter, const QRectF& box) const;
    void paintBar(QPainter& painter, const QRectF& box) const;

    ReadingText text_;
};

}  // namespace tiepoint::ui
