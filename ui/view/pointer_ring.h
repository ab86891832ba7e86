#pragma once
// A ring about the pointer, as large as a room can see, while the bench is projected.

#include "ui/theme/theme.h"

#include <QPainter>
#include <QWidget>

namespace tiepoint::ui {

class PointerRing {
public:
    /// The viewport must outlive it.
    explicit PointerRing(const QWidget& viewport) : viewport_(viewport) {}

    void setShown(bool shown) { shown_ = shown; }
    bool isShown() const { return shown_; }
    void moveTo(QPointF inView) { at_ = inView; }
    /// Where it stands; nothing where there is none.
    QRect rect() const;
    void paint(QPainter& painter, const Theme& theme) const;

private:
    const QWidget& viewport_;
    bool shown_ = false;
    QPointF at_;
};

}  // namespace tiepoint::ui
