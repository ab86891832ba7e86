// A thermistor from above: a glossy drop of dark lacquer on two wires.

#include "ui/paint/packages/package_painter.h"
#include "ui/paint/shade.h"

namespace tiepoint::ui {
namespace {

constexpr QRgb kLacquerLight = 0xff3d5a50, kLacquerDark = 0xff17261f;

class ThermistorPainter final : public PackagePainter {
public:
    void paint(QPainter& painter, const PartScene& scene) const override {
        const Theme& theme = scene.theme;
        paintBareLeads(painter, scene);
        const BodyFrame frame(painter, scene);
        const double radius = scene.bodyRect().width() / 2;
        drawSoftShadow(painter, theme, {0, 0}, radius, fallInBody(scene, {0.65, 0.85}), 0.6);
        painter.setPen(outlinePen(theme.furnishing.ink, theme.outlineMm));
        painter.setBrush(
            shadeRound(theme, {0, 0}, radius, QColor::fromRgb(kLacquerLight), QColor::fromRgb(kLacquerDark)));
        painter.drawPath(drop(radius));
        if (theme.flat) return;
        painter.setPen(Qt::NoPen);
        painter.setBrush(faded(Qt::white, 0.4));
        painter.drawEllipse(QPointF(-radius * 0.3, -radius * 0.38), radius * 0.26, radius * 0.16);
    }

    QPainterPath body(const PartScene& scene) const override {
        return bodyTransform(scene).map(drop(scene.bodyRect().width() / 2));
    }

private:
    /// Round, drawn out a little to both wires.
    static QPainterPath drop(double radius) {
        QPainterPath path(QPointF(-radius, 0));
        const double bulge = radius * 0.92;
        path.cubicTo({-radius * 0.75, -bulge * 0.5}, {-radius * 0.55, -bulge}, {0, -bulge});
        path.cubicTo({radius * 0.55, -bulge}, {radius * 0.75, -bulge * 0.5}, {radius, 0});
        path.cubicTo({radius * 0.75, bulge * 0.5}, {radius * 0.55, bulge}, {0, bulge});
        path.cubicTo({-radius * 0.55, bulge}, {-radius * 0.75, bulge * 0.5}, {-radius, 0});
        return path;
    }
};

}  // namespace

const PackagePainter& thermistorPainter() {
    static const ThermistorPainter kPainter;
    return kPainter;
}

}  // namespace tiepoint::ui
