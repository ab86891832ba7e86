#include "ui/view/pointer_ring.h"

namespace tiepoint::ui {
namespace {

constexpr double kRingRadiusShare = 1.0 / 32, kRingBreadthShare = 1.0 / 200;  ///< of the window's height

}  // namespace

QRect PointerRing::rect() const {
    if (!shown_ || !viewport_.underMouse()) return {};
    const double reach = (kRingRadiusShare + 1.5 * kRingBreadthShare) * viewport_.height();
    return QRectF(at_, QSizeF()).adjusted(-reach, -reach, reach, reach).toAlignedRect();
}

void PointerRing::paint(QPainter& painter, const Theme& theme) const {
    if (rect().isEmpty()) return;
    const double radius = kRingRadiusShare * viewport_.height(), breadth = kRingBreadthShare * viewport_.height();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(theme.arrowCasing, 2 * breadth));
    painter.drawEllipse(at_, radius, radius);
    painter.setPen(QPen(theme.accent, breadth));
    painter.drawEllipse(at_, radius, radius);
}

}  // namespace tiepoint::ui
