#pragma once
// The potential walk as a card: potential against the way, hole by hole, once round a loop. Flat along metal, a slope at each part, with
// an axis of its own. Pointing at a step, with the mouse or with the arrow keys, tells which part or jumper it is.

#include "ui/cards/aside_card.h"
#include "ui/cards/walk_text.h"

#include <map>

namespace tiepoint::ui {

class WalkCard : public AsideCard {
    Q_OBJECT
public:
    explicit WalkCard(QWidget* parent);

    /// Round the loop of a part; empty: of the supply that gives most.
    void showPicture(const Picture& picture, const std::string& id);
    /// Marks the step of a part or jumper; empty: none.
    void mark(const std::string& thing);

    const WalkText& walk() const { return text_; }
    const std::string& marked() const { return marked_; }
    /// The column of a step, in pixels of the card.
    QRectF column(int move) const;

    bool isForRoom() const override { return true; }

Q_SIGNALS:
    void pointed(const std::string& thing);  ///< empty: at nothing any more

protected:
    void paintBody(QPainter& painter) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void leaveEvent(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;

private:
    QRectF plot() const;
    double y(const QRectF& plot, double volt) const;
    void point(const std::string& thing);
    void paintAxis(QPainter& painter, const QRectF& plot) const;
    void paintColumns(QPainter& painter, const QRectF& plot) const;
    void paintLine(QPainter& painter, const QRectF& plot) const;
    void paintLabels(QPainter& painter) const;

    WalkText text_;
    AxisTicks ticks_;
    std::map<std::string, Part> parts_;  ///< that are passed, by id: their own colours stand for them
    std::string marked_;
};

}  // namespace tiepoint::ui
