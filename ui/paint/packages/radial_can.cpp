// An electrolytic capacitor from above: the aluminium top with the cross that lets it vent, and the sleeve that is folded over its rim,
// with the pale stripe on the side of the minus lead.

#include "ui/paint/packages/package_painter.h"
#include "ui/paint/shade.h"

#include <numbers>

namespace tiepoint::ui {
namespace {

constexpr double kFoldShare = 0.17;  ///< of the radius: the sleeve's fold
constexpr double kStripeDegrees = 62;
constexpr double kVentShare = 0.62;
constexpr QRgb kFoilLight = 0xff34465e, kFoilDark = 0xff1b2738, kStripe = 0xffc4ccd4, kStripeInk = 0xff273140;

/// Direction of the minus lead in the body's frame: 1 to the right, -1 to the left, 0 without one.
int minusSide(const PartKind& kind) {
    const int minus = kind.leadIndex("-");
    return minus < 0 ? 0 : minus == 0 ? -1 : 1;
}

class RadialCanPainter final : public PackagePainter {
public:
    void paint(QPainter& painter, const PartScene& scene) const override {
        const Theme& theme = scene.theme;
        const Furnishing& f = theme.furnishing;
        paintBareLeads(painter, scene);
        const BodyFrame frame(painter, scene);
        const double radius = scene.bodyRect().width() / 2, top = radius * (1 - kFoldShare);
        drawSoftShadow(painter, theme, {0, 0}, radius, fallInBody(scene, {0.9, 1.15}), 0.9);
        painter.setPen(outlinePen(f.ink, theme.outlineMm));
        painter.setBrush(shadeRound(theme, {0, 0}, radius, QColor::fromRgb(kFoilLight), QColor::fromRgb(kFoilDark)));
        painter.drawPath(disc({0, 0}, radius));
        if (const int side = minusSide(*scene.part.kind)) paintStripe(painter, theme, radius, top, side);
        painter.setPen(outlinePen(faded(f.ink, 0.8), theme.outlineMm));
        painter.setBrush(shadeAlong(theme, {-top, -top}, {top, top}, blend(f.steelLight, Qt::white, 0.2), f.steelDark));
        painter.drawPath(disc({0, 0}, top));
        paintVent(painter, theme, top * kVentShare);
    }

    QPainterPath body(const PartScene& scene) const override {
        return bodyTransform(scene).map(disc({0, 0}, scene.bodyRect().width() / 2));
    }

private:
    static void paintStripe(QPainter& painter, const Theme& theme, double radius, double top, int side) {
        const double middle = side > 0 ? 0 : 180, half = kStripeDegrees / 2;
        const QRectF outer(-radius, -radius, 2 * radius, 2 * radius), inner(-top, -top, 2 * top, 2 * top);
        QPainterPath stripe;
        stripe.arcMoveTo(outer, middle - half);
        stripe.arcTo(outer, middle - half, kStripeDegrees);
        stripe.arcTo(inner, middle + half, -kStripeDegrees);
        stripe.closeSubpath();
        painter.setPen(outlinePen(theme.furnishing.ink, theme.outlineMm * 0.7));
        painter.setBrush(QColor::fromRgb(kStripe));
        painter.drawPath(stripe);
        // The printed minus, along the rim.
        const double at = side * (radius + top) / 2, reach = radius * 0.2;
        painter.setPen(QPen(QColor::fromRgb(kStripeInk), (radius - top) * 0.38, Qt::SolidLine, Qt::FlatCap));
        painter.drawLine(QPointF(at, -reach), QPointF(at, reach));
    }

    static void paintVent(QPainter& painter, const Theme& theme, double reach) {
        painter.setPen(outlinePen(faded(theme.furnishing.ink, 0.55), 0.2));
        painter.drawLine(QPointF(-reach, 0), QPointF(reach, 0));
        painter.drawLine(QPointF(0, -reach), QPointF(0, reach));
        if (theme.flat) return;
        constexpr double kEdgeMm = 0.15;
        painter.setPen(outlinePen(faded(Qt::white, 0.5), 0.12));
        painter.drawLine(QPointF(-reach, kEdgeMm), QPointF(reach, kEdgeMm));
        painter.drawLine(QPointF(kEdgeMm, -reach), QPointF(kEdgeMm, reach));
    }
};

}  // namespace

const PackagePainter& radialCanPainter() {
    static const RadialCanPainter kPainter;
    return kPainter;
}

}  // namespace tiepoint::ui
