#include "ui/paint/packages/supply_parts.h"

#include "ui/paint/lettering.h"
#include "ui/paint/probe_painter.h"
#include "ui/paint/shade.h"
#include "ui/paint/wire_painter.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace tiepoint::ui {

QPointF cornerMm(const PartScene& scene) { return toQt(scene.place.pose.centre) + scene.bodyRect().topLeft(); }

double faced(const PartScene& scene, double x) { return scene.place.mirrored ? scene.bodyRect().width() - x : x; }
QPointF faced(const PartScene& scene, QPointF at) { return {faced(scene, at.x()), at.y()}; }
QRectF faced(const PartScene& scene, const QRectF& area) {
    if (!scene.place.mirrored) return area;
    return {faced(scene, area.right()), area.top(), area.width(), area.height()};
}

QColor leadColour(const Theme& theme, bool plus) { return theme.jumpers[plus ? 0 : 1]; }

CubicChain supplyLead(const PartScene& scene, int lead) {
    const auto i = static_cast<std::size_t>(lead);
    const WireCurve &detour = scene.place.detoursMm[i], &cable = scene.place.cablesMm[i];
    if (detour.a == detour.d) return {{toQt(cable)}};
    return {{toQt(detour), toQt(cable)}};
}

void paintSupplyLead(QPainter& painter, const PartScene& scene, int lead, bool plus) {
    const WireLook look{leadColour(scene.theme, plus), kLeadBreadthMm, 2.2, 0, 1.3};
    paintWire(painter, scene.theme, supplyLead(scene, lead), look);
}

void paintBatteryLeads(QPainter& painter, const PartScene& scene) {
    if (scene.compact) return;
    for (const int lead : {1, 0}) paintSupplyLead(painter, scene, lead, lead == 0);
}

std::vector<PartPath> supplyPaths(const PartScene& scene) {
    // The two ends inside the box are places of their own: arrows don't run on through it.
    const int inside = static_cast<int>(scene.part.kind->leads.size());
    std::vector<PartPath> ways;
    for (int lead = 0; lead < inside; ++lead) {
        ways.push_back({supplyLead(scene, lead).path().toReversed(), {lead}, PathLook::OverBody, lead, inside + lead});
    }
    return ways;
}

void paintSocket(QPainter& painter, const Theme& theme, QPointF at, double radius) {
    const Furnishing& f = theme.furnishing;
    painter.setPen(outlinePen(f.steelEdge, theme.outlineMm));
    painter.setBrush(shadeAlong(theme, at - QPointF(radius, radius) * 0.7, at + QPointF(radius, radius) * 0.7,
                                f.steelLight, f.steelDark));
    painter.drawPath(disc(at, radius));
    painter.setBrush(theme.flat ? QColor(0x2b333c) : QColor(0x2c2f35));
    painter.setPen(outlinePen(f.ink, theme.outlineMm));
    painter.drawPath(disc(at, radius * 0.83));
    painter.setPen(outlinePen(f.steelDark, theme.outlineMm));
    painter.setBrush(QColor(0x0b0c0e));
    painter.drawPath(disc(at, radius * 0.36));
}

void paintPlug(QPainter& painter, const Theme& theme, QPointF at, double radius, const QColor& colour, double angle) {
    const QColor edge = theme.flat ? theme.furnishing.ink : blend(colour, Qt::black, 0.6);
    const double half = kLeadBreadthMm * 0.62;
    painter.save();
    painter.translate(at);
    painter.rotate(angle * 180 / std::numbers::pi);
    const QRectF sleeve(radius * 0.6, -half, radius * 1.75, 2 * half);
    painter.setPen(outlinePen(edge, theme.outlineMm));
    painter.setBrush(shadeDown(theme, sleeve, blend(colour, Qt::white, 0.06), blend(colour, Qt::black, 0.16)));
    painter.drawRect(sleeve);
    // Ribs as polygons: the raster engine fills a slanted line by another rule, and its edge depends on where the sheet begins.
    painter.setPen(Qt::NoPen);
    painter.setBrush(edge);
    for (double x : {0.62, 0.74, 0.86}) {
        const double from = sleeve.left() + x * sleeve.width() - theme.outlineMm / 2, to = from + theme.outlineMm;
        painter.drawPolygon(QPolygonF({{from, -half}, {to, -half}, {to, half}, {from, half}}));
    }
    painter.restore();
    painter.setPen(outlinePen(edge, theme.outlineMm));
    painter.setBrush(shadeRound(theme, at, radius, blend(colour, Qt::white, 0.22), blend(colour, Qt::black, 0.16)));
    painter.drawPath(disc(at, radius * 0.84));
    painter.setBrush(Qt::NoBrush);
    painter.setPen(outlinePen(faded(edge, 0.7), theme.outlineMm));
    painter.drawPath(disc(at, radius * 0.52));
}

void paintScrew(QPainter& painter, const Theme& theme, QPointF at) {
    constexpr double kRadiusMm = 0.74;
    painter.setPen(outlinePen(theme.furnishing.steelEdge, theme.outlineMm * 0.8));
    painter.setBrush(shadeRound(theme, at, kRadiusMm, theme.furnishing.steelLight, theme.furnishing.steelDark));
    painter.drawPath(disc(at, kRadiusMm));
    painter.setPen(outlinePen(blend(theme.furnishing.steelEdge, Qt::black, 0.3), 0.16));
    painter.drawLine(at - QPointF(0.42, 0.42), at + QPointF(0.42, 0.42));
}

void paintSupplySign(QPainter& painter, const Theme& theme, QPointF at, bool plus, double half) {
    painter.setPen(outlinePen(plus ? theme.plusLine : theme.minusLine, 0.46));
    painter.drawLine(at - QPointF(half, 0), at + QPointF(half, 0));
    if (plus) painter.drawLine(at - QPointF(0, half), at + QPointF(0, half));
}

void paintSmallSwitch(QPainter& painter, const PartScene& scene, const QRectF& slot, const QColor& ink) {
    const Theme& theme = scene.theme;
    const bool on = scene.state("on") > 0.5;
    painter.setPen(outlinePen(theme.furnishing.ink, theme.outlineMm));
    painter.setBrush(QColor(0x17191c));
    painter.drawPath(roundedBox(slot, 0.4));
    const double half = slot.height() / 2;
    const QRectF slide =
        (on ? slot.adjusted(0, 0, 0, -half) : slot.adjusted(0, half, 0, 0)).adjusted(0.3, 0.3, -0.3, -0.3);
    painter.setBrush(shadeDown(theme, slide, theme.furnishing.steelLight, theme.furnishing.steelDark));
    painter.drawPath(roundedBox(slide, 0.3));
    const double x = slot.center().x();
    constexpr double kWordMm = 1.8, kMostWordMm = 2.6, kAwayEm = 0.78;
    const double word = scene.wordMm(kWordMm, kMostWordMm);
    drawText(painter, QStringLiteral("on"), {x, slot.top() - kAwayEm * word}, {word, on ? QFont::Bold : QFont::Normal},
             ink);
    drawText(painter, QStringLiteral("off"), {x, slot.bottom() + kAwayEm * word},
             {word, on ? QFont::Normal : QFont::Bold}, ink);
}

namespace {

/// Light bands about a wire.
void paintLightBands(QPainter& painter, const CubicChain& wire) {
    QPen bands(Qt::white, kLeadBreadthMm * 0.78, Qt::SolidLine, Qt::FlatCap);
    bands.setDashPattern({0.9, 0.9});
    painter.setBrush(Qt::NoBrush);
    painter.strokePath(wire.path(), bands);
}

}  // namespace

void paintTestLead(QPainter& painter, const PartScene& scene, int lead, const TestLead& look) {
    const Theme& theme = scene.theme;
    const auto i = static_cast<std::size_t>(lead);
    const CubicChain whole = supplyLead(scene, lead);
    const double length = whole.lengthMm();
    const CubicChain wire = whole.between(0, std::max(length / 2, length - kProbeLengthMm));
    paintWire(painter, theme, wire, {look.colour, kLeadBreadthMm, 2.2, 0, 0});
    if (look.banded) paintLightBands(painter, wire);
    paintProbe(painter, theme, wire.end(), toQt(scene.place.leadsMm[i]), look.colour);
    paintPlug(painter, theme, toQt(scene.place.exitsMm[i]), look.socketMm * 0.9, look.colour,
              scene.place.mirrored ? 0 : std::numbers::pi);
}

}  // namespace tiepoint::ui
