// A round LED from above, never from the side: flange with its flat at the cathode, dome on top, dull while
// it gives no light.

#include "ui/paint/light_painter.h"
#include "ui/paint/packages/package_painter.h"
#include "ui/paint/palette.h"
#include "ui/paint/shade.h"

#include <cmath>

namespace tiepoint::ui {
namespace {

class LedPainter final : public PackagePainter {
public:
    void paint(QPainter& painter, const PartScene& scene) const override {
        paintBareLeads(painter, scene);
        paintBend(painter, scene);
        const BodyFrame frame(painter, scene);
        drawSoftShadow(painter, scene.theme, {0, 0}, kFlangeRadiusMm, fallInBody(scene, {0.75, 0.95}), 0.75);
        paintDome(painter, scene.theme, ledColours(scene.choice("colour")), 0);
    }

    void paintLit(QPainter& painter, const PartScene& scene, double brightness) const override {
        const BodyFrame frame(painter, scene);
        paintDome(painter, scene.theme, ledColours(scene.choice("colour")), brightness);
    }

    QColor light(const PartScene& scene) const override { return ledColours(scene.choice("colour")).light; }

    std::vector<PartPath> paths(const PartScene& scene) const override {
        auto ways = PackagePainter::paths(scene);
        ways.front().look = PathLook::OnLight;
        return ways;
    }

    QPainterPath body(const PartScene& scene) const override { return bodyTransform(scene).map(flangeShape()); }

private:
    /// Where the anode's leg, the longer one, is bent down into its hole.
    static void paintBend(QPainter& painter, const PartScene& scene) {
        constexpr double kLeastLegMm = 1, kFromTipMm = 0.9, kHalfMm = 0.3, kMarkMm = 0.16;
        const QPointF tip = toQt(scene.place.leadsMm[0]), exit = toQt(scene.place.exitsMm[0]);
        const QPointF way = exit - tip;
        const double length = std::hypot(way.x(), way.y());
        if (length < kLeastLegMm) return;
        const QPointF along = way / length, across(-along.y(), along.x());
        const QPointF at = tip + along * kFromTipMm;
        painter.setPen(outlinePen(scene.theme.furnishing.steelEdge, kMarkMm));
        painter.drawLine(at - across * kHalfMm, at + across * kHalfMm);
    }
};

}  // namespace

const PackagePainter& ledPainter() {
    static const LedPainter kPainter;
    return kPainter;
}

}  // namespace tiepoint::ui
