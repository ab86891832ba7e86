// A resistor from above: a waist between two thicker ends, and the bands that its value asks for.

#include "core/parts/preferred.h"
#include "ui/paint/packages/package_painter.h"
#include "ui/paint/palette.h"
#include "ui/paint/shade.h"
#include "ui/paint/wire_painter.h"

namespace tiepoint::ui {
namespace {

constexpr double kResistorHalfMm = 3.25, kHalfEndMm = 1.25, kHalfWaistMm = 1.0;
constexpr double kEndMm = 1.35;    ///< length of a thick end
constexpr double kSlopeMm = 0.75;  ///< from an end to the waist
constexpr double kEndRadiusMm = 0.6;
constexpr double kBandMm = 0.82;
constexpr double kFirstBandMm = -2.45, kLastBandMm = 2.45;
constexpr double kSecondBandMm = -1.1, kBandStepMm = 1.22, kCloseBandStepMm = 1.12;
constexpr QRgb kBodyLight = 0xfff1dcb4, kBodyDark = 0xffc79c62;

QPainterPath waistShape() {
    // One quarter of the outline at a time, mirrored: corner, thick end, slope, waist.
    QPainterPath path;
    const double x0 = -kResistorHalfMm, x1 = x0 + kEndMm, x2 = x1 + kSlopeMm;
    const double bend = kSlopeMm * 0.5;
    path.moveTo(x0, -kHalfEndMm + kEndRadiusMm);
    path.quadTo(x0, -kHalfEndMm, x0 + kEndRadiusMm, -kHalfEndMm);
    path.lineTo(x1, -kHalfEndMm);
    path.cubicTo(x1 + bend, -kHalfEndMm, x2 - bend, -kHalfWaistMm, x2, -kHalfWaistMm);
    path.lineTo(-x2, -kHalfWaistMm);
    path.cubicTo(-x2 + bend, -kHalfWaistMm, -x1 - bend, -kHalfEndMm, -x1, -kHalfEndMm);
    path.lineTo(-x0 - kEndRadiusMm, -kHalfEndMm);
    path.quadTo(-x0, -kHalfEndMm, -x0, -kHalfEndMm + kEndRadiusMm);
    path.lineTo(-x0, kHalfEndMm - kEndRadiusMm);
    path.quadTo(-x0, kHalfEndMm, -x0 - kEndRadiusMm, kHalfEndMm);
    path.lineTo(-x1, kHalfEndMm);
    path.cubicTo(-x1 - bend, kHalfEndMm, -x2 + bend, kHalfWaistMm, -x2, kHalfWaistMm);
    path.lineTo(x2, kHalfWaistMm);
    path.cubicTo(x2 - bend, kHalfWaistMm, x1 + bend, kHalfEndMm, x1, kHalfEndMm);
    path.lineTo(x0 + kEndRadiusMm, kHalfEndMm);
    path.quadTo(x0, kHalfEndMm, x0, kHalfEndMm - kEndRadiusMm);
    path.closeSubpath();
    return path;
}

/// Middle of a band: the last of four or more stands apart on the far end.
double bandPlace(std::size_t band, std::size_t count) {
    if (band == 0) return kFirstBandMm;
    if (count > 3 && band == count - 1) return kLastBandMm;
    return kSecondBandMm + (static_cast<double>(band) - 1) * (count > 4 ? kCloseBandStepMm : kBandStepMm);
}

void paintBands(QPainter& painter, const PartScene& scene, const QPainterPath& body) {
    const auto bands = colourBands(scene.value("resistance"), scene.value("tolerance"));
    if (!bands) return;
    painter.save();
    painter.setClipPath(body, Qt::IntersectClip);
    for (std::size_t i = 0; i < bands->size(); ++i) {
        const double x = bandPlace(i, bands->size());
        painter.fillRect(QRectF(x - kBandMm / 2, -kHalfEndMm, kBandMm, 2 * kHalfEndMm), bandColour((*bands)[i]));
    }
    painter.restore();
}

void paintGloss(QPainter& painter, const Theme& theme, const QPainterPath& body) {
    if (theme.flat) return;
    painter.save();
    painter.setClipPath(body, Qt::IntersectClip);
    const QRectF box = body.boundingRect();
    const QRectF low(box.left(), 0.1, box.width(), kHalfEndMm);
    painter.fillRect(low, shadeDown(theme, low, faded(Qt::black, 0), faded(Qt::black, 0.30)));
    painter.setPen(outlinePen(faded(Qt::white, 0.62), 0.17));
    painter.drawLine(QPointF(-2.2, -0.62), QPointF(2.2, -0.62));
    painter.restore();
}

class ResistorPainter final : public PackagePainter {
public:
    void paint(QPainter& painter, const PartScene& scene) const override {
        if (scene.place.pose.standing) {
            paintStanding(painter, scene);
            return;
        }
        paintBareLeads(painter, scene);
        const QPainterPath body = waistShape();
        const BodyFrame frame(painter, scene);
        drawSoftShadow(painter, scene.theme, body.boundingRect(), kHalfEndMm, shadowOffset(scene), 0.45);
        painter.setPen(Qt::NoPen);
        painter.setBrush(
            shadeDown(scene.theme, body.boundingRect(), QColor::fromRgb(kBodyLight), QColor::fromRgb(kBodyDark)));
        painter.drawPath(body);
        paintBands(painter, scene, body);
        paintGloss(painter, scene.theme, body);
        painter.setBrush(Qt::NoBrush);
        painter.setPen(
            outlinePen(faded(scene.theme.dark ? QColor(0x0b0d10) : QColor(0x4a3c28), 0.9), scene.theme.outlineMm));
        painter.drawPath(body);
    }

    QPainterPath body(const PartScene& scene) const override {
        const QPainterPath own = scene.place.pose.standing ? disc({0, 0}, kHalfEndMm) : waistShape();
        return bodyTransform(scene).map(own);
    }

private:
    /// Falls to the lower right of the bench however the body is turned.
    static QPointF shadowOffset(const PartScene& scene) { return fallInBody(scene, {0.45, 0.65}); }

    /// Seen from its end: the body stands over its first hole, its other lead bent down to the second.
    static void paintStanding(QPainter& painter, const PartScene& scene) {
        const QPointF first = toQt(scene.place.leadsMm[0]), second = toQt(scene.place.leadsMm[1]);
        const QPainterPath end = disc(first, kHalfEndMm);
        drawSoftShadow(painter, scene.theme, first, kHalfEndMm, {0.9, 1.1}, 0.6);
        painter.setPen(outlinePen(QColor(0x4a3c28), scene.theme.outlineMm));
        painter.setBrush(
            shadeRound(scene.theme, first, kHalfEndMm, QColor::fromRgb(kBodyLight), QColor::fromRgb(kBodyDark)));
        painter.drawPath(end);
        // Bands show as rings, the first one outermost.
        if (const auto bands = colourBands(scene.value("resistance"), scene.value("tolerance"))) {
            const double step = (kHalfEndMm - 0.35) / static_cast<double>(bands->size());
            for (std::size_t i = 0; i < bands->size(); ++i) {
                painter.setPen(QPen(bandColour((*bands)[i]), step * 0.72));
                painter.setBrush(Qt::NoBrush);
                painter.drawPath(disc(first, kHalfEndMm - 0.2 - step * (static_cast<double>(i) + 0.3)));
            }
        }
        paintBareLead(painter, scene.theme, first, second);
    }
};

}  // namespace

const PackagePainter& resistorPainter() {
    static const ResistorPainter kPainter;
    return kPainter;
}

}  // namespace tiepoint::ui
