#include "ui/paint/packages/face_parts.h"

#include "ui/paint/lettering.h"
#include "ui/paint/packages/supply_parts.h"
#include "ui/paint/shade.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace tiepoint::ui {
namespace {

constexpr double kFaceTurnDegrees = 270;  ///< from one stop of a knob to the other

/// Where a knob points for a value: the place of a choice, of the nearest number offered, or of a plain number in its range.
double shareOfTurn(const ValueSpec& spec, double value) {
    if (spec.allowed.size() > 1) {
        const auto away = [value](double offered) {
            return offered > 0 && value > 0 ? std::abs(std::log(offered / value)) : std::abs(offered - value);
        };
        const auto nearest = std::ranges::min_element(spec.allowed, {}, away);
        return static_cast<double>(nearest - spec.allowed.begin()) / static_cast<double>(spec.allowed.size() - 1);
    }
    if (spec.minimum > 0 && spec.maximum / spec.minimum > 100 && value > 0)
        return std::log(value / spec.minimum) / std::log(spec.maximum / spec.minimum);
    return spec.maximum > spec.minimum ? (value - spec.minimum) / (spec.maximum - spec.minimum) : 0;
}

}  // namespace

void paintFaceCase(QPainter& painter, const PartScene& scene, const QRectF& panel) {
    const Theme& theme = scene.theme;
    const Furnishing& f = theme.furnishing;
    const QRectF box(QPointF(0, 0), scene.bodyRect().size());
    drawSoftShadow(painter, theme, box, 2.1, {1.7, 2.1}, 1.9);
    painter.setPen(outlinePen(f.caseEdge, theme.outlineMm * 1.2));
    painter.setBrush(shadeDown(theme, box, f.caseTop, f.caseBottom));
    painter.drawPath(roundedBox(box, 2.1));
    if (!theme.flat) {
        painter.setPen(QPen(faded(Qt::white, 0.34), 0.28, Qt::SolidLine, Qt::FlatCap));
        painter.drawLine(QPointF(2.3, 0.38), QPointF(box.right() - 2.3, 0.38));
    }
    painter.setPen(outlinePen(faded(f.caseEdge, theme.flat ? 1 : 0.85), theme.outlineMm));
    painter.setBrush(shadeDown(theme, panel, f.panelTop, f.panelBottom));
    painter.drawPath(roundedBox(panel, 1.25));
    for (double x : {panel.left() + 1.4, panel.right() - 1.4}) {
        for (double y : {panel.top() + 1.5, panel.bottom() - 1.5}) paintScrew(painter, theme, {x, y});
    }
}

void paintFaceKnob(QPainter& painter, const PartScene& scene, const FaceKnob& knob, double wordMm) {
    const Theme& theme = scene.theme;
    const Furnishing& f = theme.furnishing;
    drawSoftShadow(painter, theme, knob.at, knob.radiusMm, {0.7, 0.9}, 0.8);
    painter.setPen(outlinePen(f.ink, theme.outlineMm));
    painter.setBrush(shadeRound(theme, knob.at, knob.radiusMm, f.plasticLight, f.plasticDark));
    painter.drawPath(disc(knob.at, knob.radiusMm));
    painter.setPen(outlinePen(faded(theme.flat ? QColor(Qt::white) : f.digits, theme.flat ? 0.5 : 0.28), 0.14));
    constexpr int kRibs = 28;
    for (int rib = 0; rib < kRibs; ++rib) {
        const double a = 2 * std::numbers::pi * rib / kRibs;
        const QPointF way(std::cos(a), std::sin(a));
        painter.drawLine(knob.at + way * knob.radiusMm * 0.86, knob.at + way * knob.radiusMm * 0.95);
    }
    const int value = scene.part.kind->valueIndex(knob.value);
    const double share =
        value < 0 ? 0 : shareOfTurn(scene.part.kind->values[static_cast<std::size_t>(value)], scene.part.value(value));
    const double degrees = (std::clamp(share, 0.0, 1.0) - 0.5) * kFaceTurnDegrees, a = degrees * std::numbers::pi / 180;
    const QPointF way(std::sin(a), -std::cos(a));
    painter.setPen(outlinePen(theme.dark || theme.flat ? QColor(Qt::white) : f.digits, 0.6));
    painter.drawLine(knob.at + way * knob.radiusMm * 0.28, knob.at + way * knob.radiusMm * 0.78);
    drawText(painter, QString::fromUtf8(knob.word), knob.at + QPointF(0, knob.radiusMm + 0.95 * wordMm),
             {wordMm, QFont::Medium}, f.panelInk);
}

}  // namespace tiepoint::ui
