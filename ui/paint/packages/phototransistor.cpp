// A phototransistor from above: the round body of an LED in clear resin, through which its dark chip shows. Its rim is flat at the collector.

#include "ui/paint/light_painter.h"
#include "ui/paint/packages/package_painter.h"
#include "ui/paint/shade.h"

namespace tiepoint::ui {
namespace {

constexpr QRgb kClearLight = 0xffdfe8ee, kClearDark = 0xff8fa0ac, kChip = 0xff1d2126, kCup = 0xffb9bfc4;

/// Its flat on the side of the first lead.
QPainterPath clearFlange() { return QTransform::fromScale(-1, 1).map(flangeShape()); }

class PhototransistorPainter final : public PackagePainter {
public:
    void paint(QPainter& painter, const PartScene& scene) const override {
        const Theme& theme = scene.theme;
        paintBareLeads(painter, scene);
        const BodyFrame frame(painter, scene);
        drawSoftShadow(painter, theme, {0, 0}, kFlangeRadiusMm, fallInBody(scene, {0.75, 0.95}), 0.75);
        const QColor light = QColor::fromRgb(kClearLight), dark = QColor::fromRgb(kClearDark);
        painter.setPen(outlinePen(theme.furnishing.ink, theme.outlineMm));
        painter.setBrush(blend(dark, light, 0.25));
        painter.drawPath(clearFlange());
        painter.setPen(outlinePen(faded(theme.furnishing.ink, 0.5), theme.outlineMm));
        painter.setBrush(shadeRound(theme, {0, 0}, kDomeRadiusMm, light, dark));
        painter.drawPath(disc({0, 0}, kDomeRadiusMm));
        constexpr double kCupMm = 0.95, kChipMm = 0.45;
        painter.setPen(Qt::NoPen);
        painter.setBrush(QColor::fromRgb(kCup));
        painter.drawPath(disc({0, 0}, kCupMm));
        painter.setBrush(QColor::fromRgb(kChip));
        painter.drawRect(QRectF(-kChipMm, -kChipMm, 2 * kChipMm, 2 * kChipMm));
        if (theme.flat) return;
        painter.setPen(outlinePen(faded(Qt::white, 0.85), 0.26));
        painter.drawArc(QRectF(-1.45, -1.45, 2.9, 2.9), 110 * 16, 50 * 16);
    }

    QPainterPath body(const PartScene& scene) const override { return bodyTransform(scene).map(clearFlange()); }
};

}  // namespace

const PackagePainter& phototransistorPainter() {
    static const PhototransistorPainter kPainter;
    return kPainter;
}

}  // namespace tiepoint::ui
