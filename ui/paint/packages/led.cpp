// A round LED from above, never from the side: flange with its flat at the cathode, dome on top, dull while
// it gives no light.

#include "ui/paint/light_painter.h"
#include "ui/paint/packages/package_painter.h"
#include "ui/paint/palette.h"
#include "ui/paint/shade.h"

namespace tiepoint::ui {
namespace {

class LedPainter final : public PackagePainter {
public:
    void paint(QPainter& painter, const PartScene& scene) const override {
        paintBareLeads(painter, scene);
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
};

}  // namespace

const PackagePainter& ledPainter() {
    static const LedPainter kPainter;
    return kPainter;
}

}  // namespace tiepoint::ui
