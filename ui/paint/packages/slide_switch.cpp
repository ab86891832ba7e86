// A slide switch: a steel case with a slot, and a slide that stands towards leg a or b. Seen through: its
// blade on two of three pins.

#include "ui/paint/lettering.h"
#include "ui/paint/packages/package_painter.h"
#include "ui/paint/shade.h"

namespace tiepoint::ui {
namespace {

constexpr double kSlideRadiusMm = 0.4;
constexpr double kSlotHalfLengthMm = 2.7, kSlotHalfWidthMm = 0.95;
constexpr double kSlideAtMm = 1.27, kSlideHalfLengthMm = 1.25, kSlideHalfWidthMm = 0.8;
enum SlideLeg { kA, kCommon, kB };

bool towardsB(const PartScene& scene) { return scene.state("position") > 0.5; }
double slideAt(const PartScene& scene) { return towardsB(scene) ? kSlideAtMm : -kSlideAtMm; }

class SlideSwitchPainter final : public PackagePainter {
public:
    void paint(QPainter& painter, const PartScene& scene) const override {
        const Theme& theme = scene.theme;
        const Furnishing& f = theme.furnishing;
        const BodyFrame frame(painter, scene);
        const QRectF box = scene.bodyRect();
        drawSoftShadow(painter, theme, box, kSlideRadiusMm, fallInBody(scene, {0.5, 0.65}), 0.5);
        painter.setPen(outlinePen(f.ink, theme.outlineMm));
        painter.setBrush(shadeDown(theme, box, f.steelLight, f.steelDark));
        painter.drawPath(roundedBox(box, kSlideRadiusMm));
        const QRectF slot(-kSlotHalfLengthMm, -kSlotHalfWidthMm, 2 * kSlotHalfLengthMm, 2 * kSlotHalfWidthMm);
        painter.setBrush(theme.flat ? QColor(0x20262d) : QColor(0x17191c));
        painter.drawPath(roundedBox(slot, 0.2));
        const QRectF slide(slideAt(scene) - kSlideHalfLengthMm, -kSlideHalfWidthMm, 2 * kSlideHalfLengthMm,
                           2 * kSlideHalfWidthMm);
        painter.setBrush(shadeDown(theme, slide, blend(f.plasticLight, Qt::white, 0.22), f.plasticLight));
        painter.drawPath(roundedBox(slide, 0.25));
        painter.setPen(QPen(faded(Qt::white, 0.4), 0.14));
        for (double x : {-0.6, 0.0, 0.6}) {
            painter.drawLine(QPointF(slide.center().x() + x, -0.5), QPointF(slide.center().x() + x, 0.5));
        }
        const Lettering print{1.25, QFont::DemiBold};
        drawText(painter, QStringLiteral("a"), {-3.55, 0}, print, QColor(0x23262b));
        drawText(painter, QStringLiteral("b"), {3.55, 0}, print, QColor(0x23262b));
    }

    bool hasInside() const override { return true; }
    const char* contactWord(const PartScene& scene) const override { return towardsB(scene) ? "b closed" : "a closed"; }

    void paintInside(QPainter& painter, const PartScene& scene) const override {
        const BodyFrame frame(painter, scene);
        paintPaleCase(painter, scene.theme, scene.bodyRect(), kSlideRadiusMm);
        for (const double x : {-kPitchMm, 0.0, kPitchMm}) paintPinInside(painter, scene.theme, x);
        if (!towardsB(scene)) painter.translate(-kPitchMm, 0);
        paintBladeInside(painter, scene.theme, kPitchMm);
    }

    std::vector<PartPath> paths(const PartScene& scene) const override {
        const auto way = [&](int outer) {
            QPainterPath line(toQt(scene.place.leadsMm[static_cast<std::size_t>(outer)]));
            line.lineTo(toQt(scene.place.leadsMm[kCommon]));
            return PartPath{line, {outer}, PathLook::OverBody, outer, kCommon};
        };
        return {way(kA), way(kB)};
    }

    QPainterPath control(const PartScene& scene) const override {
        return bodyTransform(scene).map(
            roundedBox(QRectF(-kSlotHalfLengthMm, -kSlotHalfWidthMm, 2 * kSlotHalfLengthMm, 2 * kSlotHalfWidthMm)
                           .adjusted(-0.2, -0.4, 0.2, 0.4),
                       0.3));
    }
};

}  // namespace

const PackagePainter& slideSwitchPainter() {
    static const SlideSwitchPainter kPainter;
    return kPainter;
}

}  // namespace tiepoint::ui
