#pragma once
// The reading card: one big number for the part pointed at, its current in and out side by side, its share of a rating, and a button
// that asks why the part does what it does.

#include "ui/cards/card.h"
#include "ui/cards/reading_text.h"

#include <QToolButton>

namespace tiepoint::ui {

class ReadingCard : public Card {
    Q_OBJECT
public:
    explicit ReadingCard(QWidget* parent = nullptr);

    void setText(const ReadingText& text);
    const ReadingText& text() const { return text_; }
    /// Whether there is anyone to answer: without, the button is not there.
    void setAnswered(bool answered);
    QToolButton* whyButton() const { return why_; }

Q_SIGNALS:
    void whyAsked(const std::string& part);

protected:
    void arrangeCard() override;
    void paintBody(QPainter& painter) override;

private:
    /// Draws the big number, smaller where it needs more room than there is; returns its width.
    double paintNumber(QPainter& painter, const QRectF& box) const;
    void paintInAndOut(QPainter& painter, const QRectF& box) const;
    void paintBar(QPainter& painter, const QRectF& box) const;

    void showButton();

    ReadingText text_;
    QToolButton* why_;
    bool answered_ = false;
};

}  // namespace tiepoint::ui
