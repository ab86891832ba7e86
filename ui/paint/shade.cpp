#include "ui/paint/shade.h"

#include "core/light/lightness.h"

#include <QLinearGradient>
#include <QRadialGradient>

#include <algorithm>
#include <cmath>

namespace tiepoint::ui {
namespace {

float mixed(float a, float b, double share) { return std::clamp(a + (b - a) * static_cast<float>(share), 0.0F, 1.0F); }

double linear(double channel) {
    return channel <= 0.04045 ? channel / 12.92 : std::pow((channel + 0.055) / 1.055, 2.4);
}

}  // namespace

QColor blend(const QColor& first, const QColor& second, double share) {
    return QColor::fromRgbF(mixed(first.redF(), second.redF(), share), mixed(first.greenF(), second.greenF(), share),
                            mixed(first.blueF(), second.blueF(), share), mixed(first.alphaF(), second.alphaF(), share));
}

QColor faded(QColor colour, double alpha) {
    colour.setAlphaF(static_cast<float>(std::clamp(alpha, 0.0, 1.0)));
    return colour;
}

double lightnessOf(const QColor& colour) {
    const double luminance =
        0.2126 * linear(colour.redF()) + 0.7152 * linear(colour.greenF()) + 0.0722 * linear(colour.blueF());
    return lightness(luminance);
}

QColor darkenedTo(const QColor& colour, double lightnessLimit) {
    // L* falls monotonically on the way to black, so a few halvings find the share.
    if (lightnessOf(colour) <= lightnessLimit) return colour;
    double low = 0, high = 1;
    for (int i = 0; i < 20; ++i) {
        const double middle = (low + high) / 2;
        (lightnessOf(blend(colour, Qt::black, middle)) > lightnessLimit ? low : high) = middle;
    }
    return blend(colour, Qt::black, high);
}

QBrush shadeAlong(const Theme& theme, QPointF from, QPointF to, const QColor& first, const QColor& last) {
    if (theme.flat) return blend(first, last, 0.5);
    QLinearGradient gradient(from, to);
    gradient.setColorAt(0, first);
    gradient.setColorAt(1, last);
    return gradient;
}

QBrush shadeDown(const Theme& theme, const QRectF& rect, const QColor& top, const QColor& bottom) {
    return shadeAlong(theme, rect.topLeft(), rect.bottomLeft(), top, bottom);
}

QBrush shadeRound(const Theme& theme, QPointF centre, double radius, const QColor& lit, const QColor& shaded) {
    if (theme.flat) return blend(lit, shaded, 0.5);
    constexpr double kLightFrom = 0.35;  // share of the radius towards the top left
    QRadialGradient gradient(centre, radius, centre - QPointF(kLightFrom, kLightFrom) * radius);
    gradient.setColorAt(0, lit);
    gradient.setColorAt(1, shaded);
    return gradient;
}

QPen outlinePen(const QColor& colour, double widthMm) {
    QPen pen(colour, widthMm);
    pen.setJoinStyle(Qt::RoundJoin);
    pen.setCapStyle(Qt::RoundCap);
    return pen;
}

void drawSoftShadow(QPainter& painter, const Theme& theme, const QRectF& box, double radiusMm, QPointF offset,
                    double spreadMm) {
    if (theme.furnishing.shadow.alpha() == 0) return;
    constexpr int kRings = 12;
    constexpr double kLargeMm = 12;  // the ground under larger bodies is worth sparing
    // Rings of equal alpha add up to the full strength under the body and thin out towards the rim.
    const double strength = theme.furnishing.shadow.alphaF();
    const QColor ring = faded(theme.furnishing.shadow, 1 - std::pow(1 - strength, 1.0 / kRings));
    const QRectF covered = box.adjusted(radiusMm, radiusMm, -radiusMm, -radiusMm);
    for (int i = 0; i < kRings; ++i) {
        const double grow = spreadMm * (i + 0.5) / kRings;
        QPainterPath shape = roundedBox(box.translated(offset).adjusted(-grow, -grow, grow, grow), radiusMm + grow);
        if (covered.width() > kLargeMm && covered.height() > kLargeMm) shape.addRect(covered);
        painter.fillPath(shape, ring);
    }
}

void drawSoftShadow(QPainter& painter, const Theme& theme, QPointF centre, double radiusMm, QPointF offset,
                    double spreadMm) {
    const QPointF reach(radiusMm, radiusMm);
    drawSoftShadow(painter, theme, QRectF(centre - reach, centre + reach), radiusMm, offset, spreadMm);
}

QPainterPath roundedBox(const QRectF& rect, double radiusMm) {
    QPainterPath path;
    path.addRoundedRect(rect, radiusMm, radiusMm);
    return path;
}

QPainterPath disc(QPointF centre, double radiusMm) {
    QPainterPath path;
    path.addEllipse(centre, radiusMm, radiusMm);
    return path;
}

}  // namespace tiepoint::ui
