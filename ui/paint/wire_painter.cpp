#include "ui/paint/wire_painter.h"

#include "core/bench/jumper_routes.h"
#include "ui/paint/shade.h"

#include <algorithm>
#include <cmath>

namespace tiepoint::ui {
namespace {

constexpr double kBareMm = 0.46;
constexpr double kEdgeDarker = 0.55;
constexpr double kHighlightMm = 0.2;
constexpr double kFlatLiftMm = 0.25;

void strokeLine(QPainter& painter, const QPainterPath& path, const QColor& colour, double breadth,
                Qt::PenCapStyle cap) {
    QPen pen(colour, breadth, Qt::SolidLine, cap, Qt::RoundJoin);
    painter.strokePath(path, pen);
}

void paintBarePath(QPainter& painter, const Theme& theme, const QPainterPath& path) {
    strokeLine(painter, path, theme.furnishing.steelEdge, kBareMm + 2 * theme.outlineMm, Qt::RoundCap);
    strokeLine(painter, path, blend(theme.furnishing.steelLight, theme.furnishing.steelDark, 0.4), kBareMm,
               Qt::RoundCap);
}

/// The pins that stick out of the insulation, and a little of what lies in it.
template <class Wire>
void paintBareEnds(QPainter& painter, const Theme& theme, const Wire& wire, const WireLook& look) {
    constexpr double kInsideMm = 0.4;
    const double length = wire.lengthMm();
    const auto endAt = [&](double from, double to) { paintBarePath(painter, theme, wire.between(from, to).path()); };
    if (look.bareFromMm > 0) endAt(0, std::min(look.bareFromMm + kInsideMm, length / 2));
    if (look.bareToMm > 0) endAt(std::max(length - look.bareToMm - kInsideMm, length / 2), length);
}

template <class Wire>
Wire insulatedOf(const Wire& wire, const WireLook& look) {
    const double length = wire.lengthMm();
    // The shortest jumpers still show some insulation.
    const double most = 0.3 * length;
    return wire.between(std::min(look.bareFromMm, most), length - std::min(look.bareToMm, most));
}

template <class Wire>
void paintShadowOf(QPainter& painter, const Theme& theme, const Wire& wire, const WireLook& look) {
    if (theme.furnishing.shadow.alpha() == 0) return;
    const QPainterPath path = wire.lifted(QPointF(0.9, 1.25) * look.liftMm).path();
    constexpr int kRings = 4;
    const double strength = theme.furnishing.shadow.alphaF() * 0.9;
    const QColor ring = faded(theme.furnishing.shadow, 1 - std::pow(1 - strength, 1.0 / kRings));
    for (int i = 0; i < kRings; ++i) {
        strokeLine(painter, path, ring, look.breadthMm * 0.75 + 0.28 * i * (0.6 + 0.5 * look.liftMm), Qt::FlatCap);
    }
}

template <class Wire>
void paintWholeWire(QPainter& painter, const Theme& theme, const Wire& wire, const WireLook& look) {
    paintShadowOf(painter, theme, wire, look);
    paintBareEnds(painter, theme, wire, look);
    const QPainterPath coat = insulatedOf(wire, look).path();
    const QColor edge = theme.flat ? theme.furnishing.ink : blend(look.colour, Qt::black, kEdgeDarker);
    strokeLine(painter, coat, edge, look.breadthMm + 2 * theme.outlineMm, Qt::FlatCap);
    strokeLine(painter, coat, look.colour, look.breadthMm, Qt::FlatCap);
    // The cut ends of the insulation, which a flat cap leaves without an edge.
    const Polyline line = Polyline::of(coat);
    for (const double distance : {0.0, line.lengthMm()}) {
        const Place end = line.at(distance);
        const QPointF across = QPointF(-std::sin(end.angle), std::cos(end.angle)) * (look.breadthMm / 2);
        painter.setPen(QPen(edge, theme.outlineMm));
        painter.drawLine(end.at - across, end.at + across);
    }
    if (theme.flat) return;
    const QPointF up(-0.16, -0.22);
    QPainterPath shadeSide = coat.translated(-up * 1.9);
    strokeLine(painter, shadeSide, faded(Qt::black, 0.16), look.breadthMm * 0.34, Qt::FlatCap);
    const double length = line.lengthMm();
    if (length < 1.2) return;
    const Wire shine = insulatedOf(wire, look).between(0.35, length - 0.35);
    strokeLine(painter, shine.path().translated(up), faded(Qt::white, theme.dark ? 0.45 : 0.5), kHighlightMm,
               Qt::RoundCap);
}

}  // namespace

Cubic toQt(const WireCurve& curve) { return {toQt(curve.a), toQt(curve.b), toQt(curve.c), toQt(curve.d)}; }

Cubic jumperCubic(Point first, Point second, const Arc& arc) { return toQt(arcCurve(first, second, arc)); }

WireLook jumperLook(const Theme& theme, int colour, double lengthMm, bool flat) {
    return {theme.jumpers[static_cast<std::size_t>(colour)], 1.62, flat ? kFlatLiftMm : jumperLiftMm(lengthMm), 1.15,
            1.15};
}

double jumperLiftMm(double lengthMm) { return std::clamp(0.35 + 0.05 * lengthMm, 0.6, 3.2); }

Cubic insulated(const Cubic& wire, const WireLook& look) { return insulatedOf(wire, look); }

void paintWireShadow(QPainter& painter, const Theme& theme, const Cubic& wire, const WireLook& look) {
    paintShadowOf(painter, theme, wire, look);
}

void paintWire(QPainter& painter, const Theme& theme, const Cubic& wire, const WireLook& look) {
    paintWholeWire(painter, theme, wire, look);
}

void paintWire(QPainter& painter, const Theme& theme, const CubicChain& wire, const WireLook& look) {
    paintWholeWire(painter, theme, wire, look);
}

QRectF wireBounds(const Cubic& wire) {
    constexpr double kShadowRoomMm = 4.5;
    return wire.path().boundingRect().adjusted(-kShadowRoomMm, -kShadowRoomMm, kShadowRoomMm, kShadowRoomMm);
}

void paintBareLead(QPainter& painter, const Theme& theme, QPointF from, QPointF to) {
    QPainterPath path(from);
    path.lineTo(to);
    paintBarePath(painter, theme, path);
    if (theme.flat) return;
    strokeLine(painter, path, faded(Qt::white, theme.dark ? 0.35 : 0.7), kBareMm * 0.35, Qt::RoundCap);
}

}  // namespace tiepoint::ui
