#pragma once
// The second card: the drops once round the loop as a bar, the sum at a branch point, or what the supplies give.

#include "ui/cards/card.h"
#include "ui/cards/loop_text.h"

#include <map>

namespace tiepoint::ui {

class LoopCard : public Card {
    Q_OBJECT
public:
    explicit LoopCard(QWidget* parent = nullptr);

    /// The picture is read only during the call.
    void showPicture(const Picture& picture, const std::string& pointedAt);
    const LoopText& text() const { return text_; }

protected:
    void paintBody(QPainter& painter) override;

private:
    void paintDrops(QPainter& painter, const QRectF& box) const;
    void paintManyDrops(QPainter& painter, const QRectF& bar, const std::vector<QRectF>& frames) const;
    void paintSegment(QPainter& painter, const QRectF& box, const DropText& drop, bool named = true) const;
    void paintPotentials(QPainter& painter, const QRectF& box, const std::vector<QRectF>& segments) const;
    void paintBranchPoint(QPainter& painter, const QRectF& box) const;
    void paintNote(QPainter& painter) const;
    std::vector<QRectF> segments(const QRectF& box) const;
    QString dropsInWords() const;
    QString dropsInBrief() const;
    QString spoken() const;

    LoopText text_;
    std::map<std::string, QColor> tints_;  ///< by part id, of the drops
    bool voltage_ = false;                 ///< coloured as in the voltage view
    double fullScaleAmpere_ = 1;
    Arrows arrows_ = Arrows::Conventional;
};

}  // namespace tiepoint::ui
