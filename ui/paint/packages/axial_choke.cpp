// An axial choke from above: a lacquered barrel, rounded at both ends, with bands that tell microhenries as those of a resistor tell ohms
// (IEC 60062; the lacquer's green is common practice).

#include "core/parts/preferred.h"
#include "ui/paint/packages/package_painter.h"
#include "ui/paint/palette.h"
#include "ui/paint/shade.h"
#include "ui/paint/wire_painter.h"

namespace tiepoint::ui {
namespace {

constexpr double kChokeCornerMm = 1.7, kChokeBandMm = 0.85, kFirstChokeBandMm = -2.9, kChokeBandStepMm = 1.55;
constexpr double kPerMicrohenry = 1e6, kUsualChokeTolerance = 0.1;
constexpr QRgb kChokeLight = 0xff8fb98c, kChokeDark = 0xff47704b;

class AxialChokePainter final : public PackagePainter {
public:
    void paint(QPainter& painter, const PartScene& scene) const override {
        const Theme& theme = scene.theme;
        paintBareLeads(painter, scene);
        const BodyFrame frame(painter, scene);
        const QRectF box = scene.bodyRect();
        const QPainterPath barrel = roundedBox(box, kChokeCornerMm);
        drawSoftShadow(painter, theme, box, kChokeCornerMm, fallInBody(scene, {0.55, 0.8}), 0.45);
        painter.setPen(Qt::NoPen);
        painter.setBrush(shadeDown(theme, box, QColor::fromRgb(kChokeLight), QColor::fromRgb(kChokeDark)));
        painter.drawPath(barrel);
        paintBands(painter, scene, box, barrel);
        if (!theme.flat) {
            painter.setPen(outlinePen(faded(Qt::white, 0.5), 0.2));
            painter.drawLine(QPointF(box.left() + 1.6, -1.05), QPointF(box.right() - 1.6, -1.05));
        }
        painter.setBrush(Qt::NoBrush);
        painter.setPen(outlinePen(theme.furnishing.ink, theme.outlineMm));
        painter.drawPath(barrel);
    }

    QPainterPath body(const PartScene& scene) const override {
        return bodyTransform(scene).map(roundedBox(scene.bodyRect(), kChokeCornerMm));
    }

private:
    static void paintBands(QPainter& painter, const PartScene& scene, const QRectF& box, const QPainterPath& barrel) {
        const auto bands = colourBands(scene.value("inductance") * kPerMicrohenry, kUsualChokeTolerance);
        if (!bands) return;
        painter.save();
        painter.setClipPath(barrel, Qt::IntersectClip);
        for (std::size_t i = 0; i < bands->size(); ++i) {
            const double x = kFirstChokeBandMm + static_cast<double>(i) * kChokeBandStepMm;
            painter.fillRect(QRectF(x, box.top(), kChokeBandMm, box.height()), bandColour((*bands)[i]));
        }
        painter.restore();
    }
};

}  // namespace

const PackagePainter& axialChokePainter() {
    static const AxialChokePainter kPainter;
    return kPainter;
}

}  // namespace tiepoint::ui
