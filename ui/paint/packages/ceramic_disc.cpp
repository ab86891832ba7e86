// A ceramic disc capacitor from above: it stands on edge, so that its lens of hardened lacquer shows from the rim.

#include "ui/paint/packages/package_painter.h"
#include "ui/paint/shade.h"

namespace tiepoint::ui {
namespace {

constexpr QRgb kCeramicLight = 0xffdca160, kCeramicDark = 0xff9a5f24;

QPainterPath lens(const QRectF& box) {
    QPainterPath path;
    path.addEllipse(box);
    return path;
}

class CeramicDiscPainter final : public PackagePainter {
public:
    void paint(QPainter& painter, const PartScene& scene) const override {
        const Theme& theme = scene.theme;
        paintBareLeads(painter, scene);
        const BodyFrame frame(painter, scene);
        const QRectF box = scene.bodyRect();
        drawSoftShadow(painter, theme, box, box.height() / 2, fallInBody(scene, {0.65, 0.85}), 0.6);
        painter.setPen(outlinePen(theme.furnishing.ink, theme.outlineMm));
        painter.setBrush(shadeDown(theme, box, QColor::fromRgb(kCeramicLight), QColor::fromRgb(kCeramicDark)));
        painter.drawPath(lens(box));
        if (theme.flat) return;
        // The rim of the disc, where the lacquer is thinnest.
        painter.setPen(outlinePen(faded(Qt::white, 0.4), 0.2));
        painter.drawLine(QPointF(box.left() * 0.72, -box.height() * 0.12),
                         QPointF(box.right() * 0.72, -box.height() * 0.12));
    }

    QPainterPath body(const PartScene& scene) const override {
        return bodyTransform(scene).map(lens(scene.bodyRect()));
    }
};

}  // namespace

const PackagePainter& ceramicDiscPainter() {
    static const CeramicDiscPainter kPainter;
    return kPainter;
}

}  // namespace tiepoint::ui
