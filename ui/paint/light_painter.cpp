#include "ui/paint/light_painter.h"

#include "ui/paint/shade.h"

#include <QRadialGradient>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace tiepoint::ui {
namespace {

constexpr double kFlatMm = 2.05;   ///< from the middle to the flat of the rim
constexpr double kCoreHue = 0.44;  ///< share of its hue that the brightest core keeps
constexpr double kHaloLeastMm = 4, kHaloGrowthMm = 6.5;
constexpr int kMostRays = 8;
constexpr double kRayFromMm = 3.5, kRayToMm = 4.6, kRayMm = 0.36;
constexpr double kRayStep = std::numbers::pi / 6;
constexpr double kQuarterInVoltage = 0.25;

}  // namespace

double litShare(double brightness) { return brightness <= 0 ? 0 : std::min(1.0, 1.25 * std::pow(brightness, 0.7)); }

double haloOpacity(const Theme& theme, double brightness, bool voltageView) {
    return theme.haloOpacity * std::clamp(brightness, 0.0, 1.0) * (voltageView ? kQuarterInVoltage : 1);
}

double haloRadiusMm(double brightness) { return brightness <= 0 ? 0 : kHaloLeastMm + kHaloGrowthMm * brightness; }

int rayCount(double brightness) { return static_cast<int>(std::lround(kMostRays * std::clamp(brightness, 0.0, 1.0))); }

QPainterPath flangeShape() {
    const double half = std::acos(kFlatMm / kFlangeRadiusMm) * 180 / std::numbers::pi;
    QPainterPath path;
    const QRectF box(-kFlangeRadiusMm, -kFlangeRadiusMm, 2 * kFlangeRadiusMm, 2 * kFlangeRadiusMm);
    path.arcMoveTo(box, half);
    path.arcTo(box, half, 360 - 2 * half);
    path.closeSubpath();
    return path;
}

namespace {

/// The light edge of the flat, by which the cathode is told.
void paintFlatEdge(QPainter& painter, const Theme& theme, const LedColours& colours, double lit) {
    constexpr double kInsideMm = 0.3, kEdgeMm = 0.26;
    const double x = kFlatMm - kInsideMm / 2 - theme.outlineMm / 2;
    const double half = std::sqrt(kFlangeRadiusMm * kFlangeRadiusMm - kFlatMm * kFlatMm) - kInsideMm;
    const QColor pale = blend(blend(colours.dull, Qt::white, 0.45), blend(colours.light, Qt::white, 0.6), lit);
    QPen edge = outlinePen(pale, kEdgeMm);
    edge.setCapStyle(Qt::FlatCap);
    painter.setPen(edge);
    painter.drawLine(QPointF(x, -half), QPointF(x, half));
}

/// What is seen in a dome that gives no light: the anode's post, and the cathode's cup.
void paintPostAndCup(QPainter& painter, const LedColours& colours) {
    constexpr double kFaint = 0.06, kUnlitLightness = 37;
    const QColor metal = darkenedTo(blend(colours.dull, Qt::white, kFaint), kUnlitLightness);
    painter.setPen(Qt::NoPen);
    painter.setBrush(metal);
    painter.drawRect(QRectF(-0.95, -0.3, 0.5, 0.6));
    QPainterPath cup(QPointF(-0.2, -0.75));
    cup.lineTo(1.05, -0.95);
    cup.lineTo(1.05, 0.95);
    cup.lineTo(-0.2, 0.75);
    cup.closeSubpath();
    painter.drawPath(cup);
}

}  // namespace

void paintDome(QPainter& painter, const Theme& theme, const LedColours& colours, double brightness) {
    const double lit = litShare(brightness);
    const QColor flange = blend(blend(colours.dull, Qt::black, 0.16), colours.light, lit);
    const QColor unlit = blend(colours.dull, Qt::black, 0.2);  // under the flange's, so that post and cup show in it
    const QColor rim = blend(unlit, colours.light, lit);
    const QColor core = blend(unlit, blend(Qt::white, colours.light, kCoreHue), lit);
    const QColor ink = theme.dark ? theme.furnishing.ink : blend(colours.dull, Qt::black, 0.62);

    painter.setPen(outlinePen(ink, theme.outlineMm * 1.2));
    painter.setBrush(flange);
    painter.drawPath(flangeShape());
    if (theme.flat) {
        painter.setBrush(blend(rim, core, 0.25));
    } else {
        constexpr double kGlowMm = 2.4;  // beyond the dome, so that an arrow on it keeps a light ground
        QRadialGradient glow(QPointF(0, 0), kGlowMm);
        glow.setColorAt(0, core);
        glow.setColorAt(0.3, blend(core, rim, 0.35));
        glow.setColorAt(0.85, rim);
        glow.setColorAt(1, blend(rim, Qt::black, 0.06));
        painter.setBrush(glow);
    }
    painter.setPen(outlinePen(faded(ink, 0.75), theme.outlineMm));
    painter.drawPath(disc({0, 0}, kDomeRadiusMm));
    paintFlatEdge(painter, theme, colours, lit);
    if (brightness <= 0) paintPostAndCup(painter, colours);
}

namespace {

/// Opacity of a halo at a share of its radius. Light falls off with the square of the way; a straight ramp would look like a disc.
double fadedOpacity(double opacity, double at) { return opacity * (1 - at) * (1 - at); }

}  // namespace

void paintHalo(QPainter& painter, const Theme& theme, const QColor& light, double brightness, bool voltageView) {
    const double radius = haloRadiusMm(brightness), opacity = haloOpacity(theme, brightness, voltageView);
    if (radius <= 0) return;
    painter.setPen(Qt::NoPen);
    QRadialGradient glow(QPointF(0, 0), radius);
    constexpr int kStops = 8;
    for (int i = 0; i <= kStops; ++i) {
        const double at = static_cast<double>(i) / kStops;
        glow.setColorAt(at, faded(light, fadedOpacity(opacity, at)));
    }
    painter.setBrush(glow);
    painter.drawPath(disc({0, 0}, radius));
}

void paintRays(QPainter& painter, const Theme& theme, int rays) {
    QPainterPath strokes;
    for (int side = 0; side < 2; ++side) {
        const int inFan = side == 0 ? (rays + 1) / 2 : rays / 2;
        const double middle = side == 0 ? -std::numbers::pi / 2 : std::numbers::pi / 2;
        for (int i = 0; i < inFan; ++i) {
            const double angle = middle + (i - (inFan - 1) / 2.0) * kRayStep;
            const QPointF out(std::cos(angle), std::sin(angle));
            strokes.moveTo(out * kRayFromMm);
            strokes.lineTo(out * kRayToMm);
        }
    }
    painter.strokePath(strokes, outlinePen(theme.arrowCasing, kRayMm + theme.arrowCasingMm * 0.6));
    painter.strokePath(strokes, outlinePen(theme.arrow, kRayMm));
}

}  // namespace tiepoint::ui
