// A toggle switch from above: a black case, a threaded bush and a bat lever, which leans to the line (closed) or to the ring (open).
// Seen through: a bar on both pins, or tilted off one of them.

#include "ui/paint/packages/package_painter.h"
#include "ui/paint/shade.h"

namespace tiepoint::ui {
namespace {

constexpr double kToggleRadiusMm = 0.5;
constexpr double kBushRadiusMm = 1.75, kNutRadiusMm = 2.1;
constexpr double kLeverReachMm = 1.75, kLeverNeckMm = 0.45, kLeverTipMm = 0.72;
constexpr double kMarkAtMm = 3.2, kMarkHalfMm = 0.62;
constexpr double kPinAtMm = kPitchMm;
constexpr double kOpenTilt = 17;  ///< degrees

bool isClosed(const PartScene& scene) { return scene.state("closed") > 0.5; }

/// The bat from its neck at 0,0 up to its tip, towards -y.
QPainterPath lever() {
    QPainterPath path(QPointF(-kLeverNeckMm, 0));
    path.lineTo(-kLeverTipMm, -kLeverReachMm);
    path.arcTo(QRectF(-kLeverTipMm, -kLeverReachMm - kLeverTipMm, 2 * kLeverTipMm, 2 * kLeverTipMm), 180, -180);
    path.lineTo(kLeverNeckMm, 0);
    path.arcTo(QRectF(-kLeverNeckMm, -kLeverNeckMm, 2 * kLeverNeckMm, 2 * kLeverNeckMm), 0, -180);
    path.closeSubpath();
    return path;
}

class TogglePainter final : public PackagePainter {
public:
    void paint(QPainter& painter, const PartScene& scene) const override {
        const Theme& theme = scene.theme;
        const Furnishing& f = theme.furnishing;
        const BodyFrame frame(painter, scene);
        const QRectF box = scene.bodyRect();
        drawSoftShadow(painter, theme, box, kToggleRadiusMm, fallInBody(scene, {0.5, 0.65}), 0.5);
        painter.setPen(outlinePen(f.ink, theme.outlineMm));
        painter.setBrush(shadeDown(theme, box, f.plasticLight, f.plasticDark));
        painter.drawPath(roundedBox(box, kToggleRadiusMm));
        paintMarks(painter);
        painter.setPen(outlinePen(f.steelEdge, theme.outlineMm));
        painter.setBrush(shadeRound(theme, {0, 0}, kNutRadiusMm, f.steelLight, f.steelDark));
        painter.drawPath(disc({0, 0}, kNutRadiusMm));
        painter.setBrush(shadeRound(theme, {0, 0}, kBushRadiusMm, blend(f.steelLight, f.steelDark, 0.35), f.steelDark));
        painter.drawPath(disc({0, 0}, kBushRadiusMm * 0.72));
        // The lever leans along the case: to the right, where the line is, while it is closed.
        painter.rotate(isClosed(scene) ? 90 : -90);
        painter.setPen(outlinePen(f.ink, theme.outlineMm * 1.1));
        painter.setBrush(
            shadeAlong(theme, {-kLeverTipMm, 0}, {kLeverTipMm, 0}, blend(f.steelLight, Qt::white, 0.4), f.steelDark));
        painter.drawPath(lever());
    }

    bool hasInside() const override { return true; }
    const char* contactWord(const PartScene& scene) const override { return isClosed(scene) ? "closed" : "open"; }

    void paintInside(QPainter& painter, const PartScene& scene) const override {
        const BodyFrame frame(painter, scene);
        paintPaleCase(painter, scene.theme, scene.bodyRect(), kToggleRadiusMm);
        for (const double x : {-kPinAtMm, kPinAtMm}) paintPinInside(painter, scene.theme, x);
        painter.translate(-kPinAtMm, 0);
        if (!isClosed(scene)) painter.rotate(-kOpenTilt);
        paintBladeInside(painter, scene.theme, 2 * kPinAtMm);
    }

    QPainterPath control(const PartScene& scene) const override {
        const double reach = kLeverReachMm + kLeverTipMm;
        return bodyTransform(scene).map(
            roundedBox(QRectF(-reach, -kNutRadiusMm, 2 * reach, 2 * kNutRadiusMm), kNutRadiusMm));
    }

private:
    /// A line at the right for closed, a ring at the left for open.
    static void paintMarks(QPainter& painter) {
        painter.setPen(outlinePen(QColor(0xe8e6df), 0.26));
        painter.setBrush(Qt::NoBrush);
        painter.drawLine(QPointF(kMarkAtMm + 0.3, -kMarkHalfMm), QPointF(kMarkAtMm + 0.3, kMarkHalfMm));
        painter.drawEllipse(QPointF(-kMarkAtMm - 0.2, 0), kMarkHalfMm * 0.8, kMarkHalfMm * 0.8);
    }
};

}  // namespace

const PackagePainter& togglePainter() {
    static const TogglePainter kPainter;
    return kPainter;
}

}  // namespace tiepoint::ui
