#include "ui/paint/metal_painter.h"

#include "core/base/geometry.h"
#include "ui/paint/shade.h"

#include <cmath>

namespace tiepoint::ui {
namespace {

constexpr double kHalfBreadthMm = 1.0;
constexpr double kBeyondMm = 1.0;
constexpr double kRadiusMm = 0.5;
constexpr double kPunchedMm = 1.0, kHoleRadiusMm = 0.14;
constexpr double kBevelMm = 1.6, kBevelRadiusMm = 0.3;
constexpr double kSpringFromEdgeMm = 0.32;
constexpr double kSpringHalfMm = 0.75;
constexpr double kHatchMm = 0.75;

QRectF squareAbout(QPointF centre, double side) { return {centre.x() - side / 2, centre.y() - side / 2, side, side}; }

bool liesFlat(const QRectF& frame) { return frame.width() > frame.height(); }

/// Short dark strokes along both sides of each hole: the springs that grip a lead.
void paintSprings(QPainter& painter, const QRectF& frame, const QColor& colour, double breadth) {
    painter.setPen(QPen(colour, breadth, Qt::SolidLine, Qt::FlatCap));
    const bool flat = liesFlat(frame);
    const double length = flat ? frame.width() : frame.height();
    for (double along = kBeyondMm; along < length; along += kPitchMm) {
        for (double side : {kSpringFromEdgeMm, 2 * kHalfBreadthMm - kSpringFromEdgeMm}) {
            const QPointF middle = frame.topLeft() + (flat ? QPointF(along, side) : QPointF(side, along));
            const QPointF half = flat ? QPointF(kSpringHalfMm, 0) : QPointF(0, kSpringHalfMm);
            painter.drawLine(middle - half, middle + half);
        }
    }
}

void paintFilled(QPainter& painter, const Theme& theme, const QRectF& frame, const QColor& light, const QColor& dark,
                 const QColor& edge) {
    const QPointF across = liesFlat(frame) ? frame.bottomLeft() : frame.topRight();
    painter.setPen(outlinePen(edge, theme.outlineMm));
    painter.setBrush(shadeAlong(theme, frame.topLeft(), across, light, dark));
    painter.drawPath(roundedBox(frame, kRadiusMm));
}

}  // namespace

QRectF stripFrame(QPointF firstHole, QPointF lastHole) {
    const bool flat = std::abs(lastHole.x() - firstHole.x()) > std::abs(lastHole.y() - firstHole.y());
    const double dx = flat ? kBeyondMm : kHalfBreadthMm, dy = flat ? kHalfBreadthMm : kBeyondMm;
    return QRectF(firstHole, lastHole).normalized().adjusted(-dx, -dy, dx, dy);
}

void paintHole(QPainter& painter, const Theme& theme, QPointF at) {
    if (!theme.flat) {
        const QRectF bevel = squareAbout(at, kBevelMm);
        painter.setPen(Qt::NoPen);
        painter.setBrush(shadeAlong(theme, bevel.topLeft(), bevel.bottomRight(), theme.bevelDark, theme.bevelLight));
        painter.drawPath(roundedBox(bevel, kBevelRadiusMm));
    }
    paintMouth(painter, at, theme.hole);
}

void paintMouth(QPainter& painter, QPointF at, const QColor& colour) {
    painter.setPen(Qt::NoPen);
    painter.setBrush(colour);
    painter.drawPath(roundedBox(squareAbout(at, kPunchedMm), kHoleRadiusMm));
}

void paintMetal(QPainter& painter, const Theme& theme, const QRectF& frame) {
    paintFilled(painter, theme, frame, theme.metalLight, theme.metalDark, theme.metalEdge);
    if (!theme.flat) {
        // A lit ridge along the middle makes the strip a bent sheet rather than a bar.
        const bool flat = liesFlat(frame);
        const QRectF ridge = flat ? frame.adjusted(0.5, 0.5, -0.5, -0.9) : frame.adjusted(0.5, 0.5, -0.9, -0.5);
        painter.setPen(Qt::NoPen);
        painter.setBrush(faded(blend(theme.metalLight, Qt::white, 0.5), theme.dark ? 0.2 : 0.75));
        painter.drawPath(roundedBox(ridge, kRadiusMm / 2));
    }
    paintSprings(painter, frame, faded(theme.metalEdge, 0.75), theme.outlineMm);
}

void paintMetalSeenThrough(QPainter& painter, const Theme& theme, const QRectF& frame) {
    // Two plain fills: a stroke of the rounded frame costs several times as much, and this layer follows
    // every press.
    const double half = theme.outlineMm / 2;
    const QPainterPath inside = roundedBox(frame.adjusted(half, half, -half, -half), kRadiusMm - half);
    QPainterPath rim = roundedBox(frame.adjusted(-half, -half, half, half), kRadiusMm + half);
    rim.addPath(inside);
    painter.fillPath(inside, faded(blend(theme.metalLight, theme.metalDark, 0.3), 0.58));
    painter.fillPath(rim, faded(theme.metalEdge, 0.75));
}

void paintMetalInColour(QPainter& painter, const Theme& theme, const QRectF& frame, const QColor& colour) {
    const QColor edge = theme.dark ? blend(colour, Qt::white, 0.45) : blend(colour, Qt::black, 0.5);
    paintFilled(painter, theme, frame, blend(colour, Qt::white, 0.06), blend(colour, Qt::black, 0.06), edge);
    paintSprings(painter, frame, faded(edge, 0.55), theme.outlineMm);
}

void paintMetalFloating(QPainter& painter, const Theme& theme, const QRectF& frame) {
    const QColor ground = theme.dark ? QColor(0x8b8f94) : QColor(0xc6c4bf);
    paintFilled(painter, theme, frame, ground, ground, blend(ground, Qt::black, 0.6));
    paintCrossHatch(painter, theme, roundedBox(frame.adjusted(0.1, 0.1, -0.1, -0.1), kRadiusMm));
}

void paintCrossHatch(QPainter& painter, const Theme& theme, const QPainterPath& shape) {
    const QRectF box = shape.boundingRect();
    painter.save();
    painter.setClipPath(shape, Qt::IntersectClip);
    painter.setPen(QPen(theme.dark ? QColor(0x1b1f24) : QColor(0x55524c), theme.outlineMm));
    for (double offset = -box.height(); offset < box.width(); offset += kHatchMm) {
        painter.drawLine(QPointF(box.left() + offset, box.top()),
                         QPointF(box.left() + offset + box.height(), box.bottom()));
        painter.drawLine(QPointF(box.left() + offset, box.bottom()),
                         QPointF(box.left() + offset + box.height(), box.top()));
    }
    painter.restore();
}

}  // namespace tiepoint::ui
