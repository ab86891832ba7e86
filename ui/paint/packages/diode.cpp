// A small diode in glass: the black ring marks the cathode.

#include "ui/paint/packages/package_painter.h"
#include "ui/paint/shade.h"
#include "ui/paint/wire_painter.h"

namespace tiepoint::ui {
namespace {

constexpr double kHalfLengthMm = 2.0, kHalfWidthMm = 1.0, kDiodeCornerMm = 0.45;
constexpr double kRingFromMm = 0.85, kCathodeBandMm = 0.72;
constexpr QRgb kGlassLight = 0xffd67a4c, kGlassDark = 0xff8a3f1e, kRing = 0xff1c1a19;

class DiodePainter final : public PackagePainter {
public:
    void paint(QPainter& painter, const PartScene& scene) const override {
        const Theme& theme = scene.theme;
        if (scene.place.pose.standing) {
            paintStanding(painter, scene);
            return;
        }
        paintBareLeads(painter, scene);
        const BodyFrame frame(painter, scene);
        const QRectF box(-kHalfLengthMm, -kHalfWidthMm, 2 * kHalfLengthMm, 2 * kHalfWidthMm);
        const QPainterPath body = roundedBox(box, kDiodeCornerMm);
        drawSoftShadow(painter, theme, box, kDiodeCornerMm, {0.35, 0.5}, 0.4);
        painter.setPen(Qt::NoPen);
        painter.setBrush(shadeDown(theme, box, QColor::fromRgb(kGlassLight), QColor::fromRgb(kGlassDark)));
        painter.drawPath(body);
        painter.fillRect(QRectF(kRingFromMm, -kHalfWidthMm, kCathodeBandMm, 2 * kHalfWidthMm), QColor::fromRgb(kRing));
        if (!theme.flat) {
            painter.setPen(outlinePen(faded(Qt::white, 0.55), 0.16));
            painter.drawLine(QPointF(-1.4, -0.5), QPointF(1.4, -0.5));
        }
        painter.setBrush(Qt::NoBrush);
        painter.setPen(outlinePen(theme.furnishing.ink, theme.outlineMm));
        painter.drawPath(body);
    }

    QPainterPath body(const PartScene& scene) const override {
        if (scene.place.pose.standing) return bodyTransform(scene).map(disc({0, 0}, kHalfWidthMm));
        return bodyTransform(scene).map(
            roundedBox(QRectF(-kHalfLengthMm, -kHalfWidthMm, 2 * kHalfLengthMm, 2 * kHalfWidthMm), kDiodeCornerMm));
    }

private:
    /// Stands on its anode, so that the ring is on top.
    static void paintStanding(QPainter& painter, const PartScene& scene) {
        const QPointF first = toQt(scene.place.leadsMm[0]), second = toQt(scene.place.leadsMm[1]);
        const QPainterPath end = disc(first, kHalfWidthMm);
        drawSoftShadow(painter, scene.theme, first, kHalfWidthMm, {0.7, 0.9}, 0.5);
        painter.setPen(outlinePen(scene.theme.furnishing.ink, scene.theme.outlineMm));
        painter.setBrush(
            shadeRound(scene.theme, first, kHalfWidthMm, QColor::fromRgb(kGlassLight), QColor::fromRgb(kGlassDark)));
        painter.drawPath(end);
        painter.setPen(QPen(QColor::fromRgb(kRing), 0.35));
        painter.drawPath(disc(first, kHalfWidthMm - 0.28));
        paintBareLead(painter, scene.theme, first, second);
    }
};

}  // namespace

const PackagePainter& diodePainter() {
    static const DiodePainter kPainter;
    return kPainter;
}

}  // namespace tiepoint::ui
