// A miniature filament lamp from above: a glass bulb on a steel collar, in it two posts and the coil between them. The coil is dark
// while it is cold; the warmer it gets, the more the glass fills with its light.

#include "ui/paint/light_painter.h"
#include "ui/paint/packages/package_painter.h"
#include "ui/paint/shade.h"

#include <QRadialGradient>

namespace tiepoint::ui {
namespace {

constexpr double kCollarRadiusMm = 3.1, kGlassRadiusMm = 2.75;
constexpr double kPostAtMm = 1.35, kPostRadiusMm = 0.3;
constexpr int kTurns = 6;
constexpr double kCoilHalfMm = 0.42, kCoilMm = 0.26;

const QColor kGlow(0xffc873);  ///< tungsten at 2300 K, between the orange of embers and daylight
const QColor kGlass(0xdfe6ea);
const QColor kGlassInDark(0x5b656d);
const QColor kColdWire(0x4a4a4d);

QPainterPath coil() {
    QPainterPath path(QPointF(-kPostAtMm, 0));
    const double step = 2 * kPostAtMm / (2 * kTurns);
    for (int i = 1; i < 2 * kTurns; ++i) path.lineTo(-kPostAtMm + i * step, i % 2 == 1 ? -kCoilHalfMm : kCoilHalfMm);
    path.lineTo(kPostAtMm, 0);
    return path;
}

void paintBulb(QPainter& painter, const Theme& theme, double brightness) {
    const double lit = litShare(brightness);
    const Furnishing& f = theme.furnishing;
    painter.setPen(outlinePen(f.ink, theme.outlineMm * 1.2));
    painter.setBrush(shadeRound(theme, {0, 0}, kCollarRadiusMm, f.steelLight, f.steelDark));
    painter.drawPath(disc({0, 0}, kCollarRadiusMm));

    const QColor glass = theme.dark ? kGlassInDark : kGlass;
    const QColor rim = blend(glass, kGlow, lit), core = blend(glass, blend(Qt::white, kGlow, 0.35), lit);
    QRadialGradient fill(QPointF(0, 0), kGlassRadiusMm);
    fill.setColorAt(0, core);
    fill.setColorAt(0.45, blend(core, rim, 0.4));
    fill.setColorAt(1, rim);
    painter.setBrush(theme.flat ? QBrush(blend(rim, core, 0.25)) : QBrush(fill));
    painter.setPen(outlinePen(faded(f.ink, 0.8), theme.outlineMm));
    painter.drawPath(disc({0, 0}, kGlassRadiusMm));

    // A glowing coil is the brightest thing of all; ink beneath keeps it a line on the bright glass.
    const QColor wire = blend(kColdWire, blend(kGlow, Qt::white, 0.7), lit);
    painter.setBrush(Qt::NoBrush);
    painter.setPen(outlinePen(blend(kColdWire, QColor(0x8a5a1c), lit), kCoilMm + 0.22));
    painter.drawPath(coil());
    painter.setPen(outlinePen(wire, kCoilMm));
    painter.drawPath(coil());
    painter.setPen(outlinePen(f.ink, theme.outlineMm * 0.8));
    painter.setBrush(f.steelDark);
    for (const double x : {-kPostAtMm, kPostAtMm}) painter.drawPath(disc({x, 0}, kPostRadiusMm));
    if (theme.flat) return;
    painter.setPen(outlinePen(faded(Qt::white, 0.75 - 0.4 * lit), 0.28));
    painter.drawArc(QRectF(-2.05, -2.05, 4.1, 4.1), 110 * 16, 50 * 16);
}

class LampPainter final : public PackagePainter {
public:
    void paint(QPainter& painter, const PartScene& scene) const override {
        paintBareLeads(painter, scene);
        const BodyFrame frame(painter, scene);
        drawSoftShadow(painter, scene.theme, {0, 0}, kCollarRadiusMm, fallInBody(scene, {0.75, 0.95}), 0.75);
        paintBulb(painter, scene.theme, 0);
    }

    void paintLit(QPainter& painter, const PartScene& scene, double brightness) const override {
        const BodyFrame frame(painter, scene);
        paintBulb(painter, scene.theme, brightness);
    }

    QColor light(const PartScene&) const override { return kGlow; }

    std::vector<PartPath> paths(const PartScene& scene) const override {
        auto ways = PackagePainter::paths(scene);
        ways.front().look = PathLook::OnLight;
        return ways;
    }

    QPainterPath body(const PartScene& scene) const override {
        return bodyTransform(scene).map(disc({0, 0}, kCollarRadiusMm));
    }
};

}  // namespace

const PackagePainter& lampPainter() {
    static const LampPainter kPainter;
    return kPainter;
}

}  // namespace tiepoint::ui
