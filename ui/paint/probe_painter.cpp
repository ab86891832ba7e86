#include "ui/paint/probe_painter.h"

#include "ui/paint/shade.h"

#include <cmath>
#include <numbers>

namespace tiepoint::ui {

/// Bare tip, a guard for the fingers, a slim handle; along the way that the lead ends.
void paintProbe(QPainter& painter, const Theme& theme, QPointF begin, QPointF tip, const QColor& colour) {
    const QColor edge = theme.flat ? theme.furnishing.ink : blend(colour, Qt::black, 0.6);
    const QPointF away = begin - tip;
    painter.save();
    painter.translate(tip);
    painter.rotate(std::atan2(away.y(), away.x()) * 180 / std::numbers::pi);
    painter.setPen(outlinePen(theme.furnishing.steelEdge, 0.46 + 2 * theme.outlineMm));
    painter.drawLine(QPointF(0, 0), QPointF(2.6, 0));
    painter.setPen(outlinePen(blend(theme.furnishing.steelLight, theme.furnishing.steelDark, 0.3), 0.46));
    painter.drawLine(QPointF(0, 0), QPointF(2.6, 0));
    QPainterPath handle(QPointF(1.5, -0.5));
    for (const QPointF corner : {QPointF(3.2, -0.75), QPointF(3.2, -1.45), QPointF(3.9, -1.45), QPointF(3.9, -1.05)})
        handle.lineTo(corner);
    handle.cubicTo({6, -1.35}, {8, -1.3}, {kProbeLengthMm + 0.6, -0.95});
    handle.lineTo(kProbeLengthMm + 0.6, 0.95);
    handle.cubicTo({8, 1.3}, {6, 1.35}, {3.9, 1.05});
    for (const QPointF corner : {QPointF(3.9, 1.45), QPointF(3.2, 1.45), QPointF(3.2, 0.75), QPointF(1.5, 0.5)})
        handle.lineTo(corner);
    handle.closeSubpath();
    painter.setPen(outlinePen(edge, theme.outlineMm));
    painter.setBrush(
        shadeDown(theme, handle.boundingRect(), blend(colour, Qt::white, 0.16), blend(colour, Qt::black, 0.2)));
    painter.drawPath(handle);
    if (!theme.flat) {
        painter.setPen(QPen(faded(Qt::white, 0.4), 0.2, Qt::SolidLine, Qt::RoundCap));
        painter.drawLine(QPointF(5.2, -0.6), QPointF(8.4, -0.56));
    }
    painter.restore();
}

}  // namespace tiepoint::ui
