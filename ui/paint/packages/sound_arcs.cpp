#include "ui/paint/packages/sound_arcs.h"

#include "ui/paint/shade.h"

#include <array>

namespace tiepoint::ui {

void paintSoundArcs(QPainter& painter, QPointF from, double scaleMm, double towards, int strong, const QColor& colour) {
    constexpr std::array kRadii{1.06, 1.98, kSoundReach};
    constexpr double kSpreadDegrees = 45, kStrong = 0.5, kWeak = 0.24;
    for (int arc = 0; arc < kSoundArcs; ++arc) {
        const double r = kRadii[static_cast<std::size_t>(arc)] * scaleMm;
        const QRectF ring(from.x() - r, from.y() - r, 2 * r, 2 * r);
        QPainterPath path;
        path.arcMoveTo(ring, towards - kSpreadDegrees);
        path.arcTo(ring, towards - kSpreadDegrees, 2 * kSpreadDegrees);
        painter.strokePath(path, outlinePen(colour, (arc == strong ? kStrong : kWeak) * scaleMm));
    }
}

}  // namespace tiepoint::ui
