// A small motor standing on its end, seen from above: the can with its two flat sides, the bearing, the shaft with its flat, and a propeller
// on it, which stands where it has turned to. Faster than the eye follows it is a blur; its turns a minute stand below.

#include "ui/paint/lettering.h"
#include "ui/paint/packages/supply_parts.h"
#include "ui/paint/shade.h"

#include <fmt/format.h>

#include <cmath>
#include <numbers>

namespace tiepoint::ui {
namespace {

constexpr double kMotorCanMm = 10.2, kMotorCanFlatMm = 7.7;  ///< half across, and half across the flats
constexpr double kMotorBearingMm = 3.1, kMotorShaftMm = 1.0;
constexpr double kMotorBladeMm = 17, kMotorBladeFromMm = 1.6, kMotorHubMm = 2.4;
constexpr int kMotorBlades = 3, kMotorShadeSteps = 36;  ///< of a turn
constexpr double kMotorBlurRadian = 40;  ///< a second: so fast a blade passes the next one's place between two frames
constexpr double kMotorStandsRadian = 3;
constexpr Lettering kMotorTurns{2.6, QFont::DemiBold};
constexpr std::string_view kMotorBlurred = "blurred";

QPainterPath canShape() {
    QPainterPath slab;
    slab.addRect(QRectF(-kMotorCanMm, -kMotorCanFlatMm, 2 * kMotorCanMm, 2 * kMotorCanFlatMm));
    return disc({0, 0}, kMotorCanMm).intersected(slab);
}

QPainterPath blade() {
    QPainterPath path(QPointF(kMotorBladeFromMm, -0.9));
    path.cubicTo({6, -3.6}, {13, -3.9}, {kMotorBladeMm - 1.2, -2.0});
    path.cubicTo({kMotorBladeMm + 0.4, -0.6}, {kMotorBladeMm, 1.4}, {kMotorBladeMm - 2.2, 1.5});
    path.cubicTo({12, 1.7}, {6, 1.4}, {kMotorBladeFromMm, 0.9});
    path.closeSubpath();
    return path;
}

void paintPropeller(QPainter& painter, const Theme& theme, double degrees, bool blurred) {
    const Furnishing& f = theme.furnishing;
    const QColor ink = theme.dark ? f.steelLight : f.plasticDark, fill = blend(theme.accent, Qt::white, 0.35);
    if (blurred) {
        painter.setPen(outlinePen(faded(ink, 0.45), theme.outlineMm));
        painter.setBrush(faded(fill, 0.16));
        painter.drawPath(disc({0, 0}, kMotorBladeMm));
    }
    painter.save();
    painter.rotate(degrees);
    for (int k = 0; k < kMotorBlades; ++k) {
        painter.setPen(outlinePen(faded(ink, blurred ? 0.3 : 0.9), theme.outlineMm));
        painter.setBrush(faded(fill, blurred ? 0.22 : 0.72));
        painter.drawPath(blade());
        painter.rotate(360.0 / kMotorBlades);
    }
    painter.setPen(outlinePen(f.ink, theme.outlineMm));
    painter.setBrush(shadeRound(theme, {0, 0}, kMotorHubMm, fill, blend(fill, Qt::black, 0.3)));
    painter.drawPath(disc({0, 0}, kMotorHubMm));
    // The shaft has a flat, by which its place can be told.
    QPainterPath round = disc({0, 0}, kMotorShaftMm), cut;
    cut.addRect(QRectF(-kMotorShaftMm, -kMotorShaftMm, 1.6 * kMotorShaftMm, 2 * kMotorShaftMm));
    painter.setBrush(shadeRound(theme, {0, 0}, kMotorShaftMm, f.steelLight, f.steelDark));
    painter.drawPath(round.intersected(cut));
    painter.restore();
}

double speedOf(const Snapshot& snapshot, int part) {
    for (const ElementState element : snapshot.solution.elements())
        if (element.part == part && element.told != 0) return element.told;
    return 0;
}

class MotorCanPainter final : public PackagePainter {
public:
    void paint(QPainter& painter, const PartScene& scene) const override {
        const Theme& theme = scene.theme;
        const Furnishing& f = theme.furnishing;
        if (!scene.compact)
            for (const int lead : {1, 0}) paintSupplyLead(painter, scene, lead, lead == 0);
        painter.save();
        painter.translate(toQt(scene.place.pose.centre));
        drawSoftShadow(painter, theme, {0, 0}, kMotorCanMm, {1.6, 2.0}, 1.8);
        painter.setPen(outlinePen(f.ink, theme.outlineMm * 1.2));
        painter.setBrush(shadeAlong(theme, {-kMotorCanMm, -kMotorCanFlatMm}, {kMotorCanMm, kMotorCanFlatMm},
                                    blend(f.steelLight, Qt::white, 0.2), f.steelDark));
        painter.drawPath(canShape());
        painter.setPen(outlinePen(faded(f.ink, 0.7), theme.outlineMm));
        painter.setBrush(shadeRound(theme, {0, 0}, kMotorBearingMm, f.steelLight, f.steelDark));
        painter.drawPath(disc({0, 0}, kMotorBearingMm));
        for (const double y : {-2.0, 2.0}) {  // where the wires are soldered
            painter.setBrush(f.steelLight);
            painter.drawPath(disc({(scene.place.mirrored ? 1 : -1) * (kMotorCanMm - 1.2), y}, 0.8));
        }
        if (scene.compact) paintPropeller(painter, theme, 0, false);
        painter.restore();
        drawText(painter, QString::fromStdString(scene.part.id),
                 toQt(scene.place.pose.centre) + QPointF(0, kMotorCanFlatMm - 1.6), {1.7, QFont::Medium}, f.ink);
    }

    QRectF figures(const PartScene& scene) const override {
        return scene.bodyRect().translated(toQt(scene.place.pose.centre)).adjusted(-0.4, -0.4, 0.4, 3.4);
    }

    std::optional<DisplayFigures> figuresAt(const Snapshot& instant, int part, int) const override {
        const double speed = speedOf(instant, part);
        const double turned = static_cast<std::size_t>(part) < instant.turnedRadian.size()
                                  ? instant.turnedRadian[static_cast<std::size_t>(part)]
                                  : 0;
        DisplayFigures shown;
        shown.beat = static_cast<int>(turned / (2 * std::numbers::pi) * kMotorShadeSteps) % kMotorShadeSteps;
        if (std::abs(speed) > kMotorBlurRadian) shown.quantity = kMotorBlurred;
        if (std::abs(speed) > kMotorStandsRadian) {
            constexpr double kTurnsAMinute = 60 / (2 * std::numbers::pi), kRounded = 10;
            shown.figure = fmt::format("{:.0f}", std::round(std::abs(speed) * kTurnsAMinute / kRounded) * kRounded);
            shown.unit = "rpm";
        }
        return shown;
    }

    void paintFigures(QPainter& painter, const PartScene& scene, const DisplayFigures& shown) const override {
        painter.save();
        painter.translate(toQt(scene.place.pose.centre));
        paintPropeller(painter, scene.theme, 360.0 * shown.beat / kMotorShadeSteps, shown.quantity == kMotorBlurred);
        if (!shown.figure.empty()) {
            const QString text = QString::fromStdString(shown.figure + " " + shown.unit);
            drawText(painter, text, {0, scene.bodyRect().bottom() + 1.4}, kMotorTurns, scene.theme.dimTextOnBench);
        }
        painter.restore();
    }

    std::vector<PartPath> paths(const PartScene& scene) const override { return supplyPaths(scene); }

    QPainterPath body(const PartScene& scene) const override {
        return canShape().translated(toQt(scene.place.pose.centre));
    }
};

}  // namespace

const PackagePainter& motorCanPainter() {
    static const MotorCanPainter kPainter;
    return kPainter;
}

}  // namespace tiepoint::ui
