// A small box on a USB lead: one plus and two minus sockets, and a slide for on and off.

#include "ui/paint/lettering.h"
#include "ui/paint/packages/supply_parts.h"
#include "ui/paint/shade.h"
#include "ui/paint/wire_painter.h"

namespace tiepoint::ui {
namespace {

constexpr double kCornerRadiusMm = 1.6;
constexpr double kUsbSocketMm = 2.3;
constexpr QRectF kUsbSwitch(4.2, 15.2, 3.2, 6.4);

class UsbSupplyPainter final : public PackagePainter {
public:
    void paint(QPainter& painter, const PartScene& scene) const override {
        const Theme& theme = scene.theme;
        const Furnishing& f = theme.furnishing;
        painter.save();
        painter.translate(cornerMm(scene));
        if (!scene.compact) paintCable(painter, scene);
        const QRectF box(QPointF(0, 0), scene.bodyRect().size());
        drawSoftShadow(painter, theme, box, kCornerRadiusMm, {1.3, 1.6}, 1.4);
        painter.setPen(outlinePen(f.caseEdge, theme.outlineMm * 1.2));
        painter.setBrush(shadeDown(theme, box, f.caseTop, f.caseBottom));
        painter.drawPath(roundedBox(box, kCornerRadiusMm));
        const QRectF face = box.adjusted(1.1, 1.1, -1.1, -1.1);
        painter.setBrush(shadeDown(theme, face, f.panelTop, f.panelBottom));
        painter.drawPath(roundedBox(face, 1));
        drawText(painter, QStringLiteral("USB"), faced(scene, QPointF(5.8, 6.4)), {2.4, QFont::DemiBold}, f.panelInk);
        drawText(painter, QString::number(scene.value("voltage")) + QStringLiteral(" V"),
                 faced(scene, QPointF(5.8, 9.6)), {2.0, QFont::Normal}, f.panelDim);
        drawText(painter, QString::fromStdString(scene.part.id), faced(scene, QPointF(3.2, 32.4)), {1.7, QFont::Medium},
                 f.panelDim, scene.place.mirrored ? Qt::AlignRight : Qt::AlignLeft);
        paintSmallSwitch(painter, scene, faced(scene, kUsbSwitch), f.panelInk);
        const auto& places = scene.part.kind->package->footprint;
        for (std::size_t i = 0; i < places.size(); ++i) {
            const QPointF socket = toQt(places[i]);
            paintSupplySign(painter, theme, faced(scene, socket - QPointF(5, 0)), i == 0, 1.0);
            paintSocket(painter, theme, faced(scene, socket), kUsbSocketMm);
        }
        painter.restore();
    }

    /// Its jumpers carry the current; nothing runs outside the box but along them.
    std::vector<PartPath> paths(const PartScene&) const override { return {}; }
    QPainterPath body(const PartScene& scene) const override {
        return bodyTransform(scene).map(roundedBox(scene.bodyRect(), kCornerRadiusMm));
    }
    QPainterPath control(const PartScene& scene) const override {
        return roundedBox(faced(scene, kUsbSwitch).adjusted(-0.8, -2.4, 0.8, 2.4), 0.5).translated(cornerMm(scene));
    }

private:
    static void paintCable(QPainter& painter, const PartScene& scene) {
        const auto at = [&](double x, double y) { return faced(scene, QPointF(x, y)); };
        const Cubic cable{at(2, 30), at(-4, 31), at(-5, 37), at(-9, 38)};
        paintWire(painter, scene.theme, cable, {scene.theme.furnishing.plasticLight, 2.2, 0.9, 0, 0});
    }
};

}  // namespace

const PackagePainter& usbSupplyPainter() {
    static const UsbSupplyPainter kPainter;
    return kPainter;
}

}  // namespace tiepoint::ui
