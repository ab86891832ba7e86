// A potentiometer: a knob with a pointer over a printed track. Seen through: the track from leg 1 to leg 2,
// and the wiper on it.

#include "ui/paint/packages/package_painter.h"
#include "ui/paint/shade.h"

#include <cmath>
#include <numbers>

namespace tiepoint::ui {
namespace {

constexpr double kBodyRadiusMm = 0.7;
constexpr double kKnobMm = 3.1, kTrackMm = 3.85, kTrackBreadthMm = 0.7;
constexpr double kPointerFromMm = 0.9, kPointerToMm = 2.75;
constexpr double kStartDegrees = 225, kSweepDegrees = 270;  ///< counted as a plotter does: 0 right, 90 up
constexpr QRgb kBlueLight = 0xff4f7fb4, kBlueDark = 0xff2d5484, kTrack = 0xff2b2725;
enum Leg { kOne, kWiper, kTwo, kContact };

double degreesAt(double turn) { return kStartDegrees - kSweepDegrees * turn; }

QPointF onRing(double degrees, double radius) {
    const double a = degrees * std::numbers::pi / 180;
    return {radius * std::cos(a), -radius * std::sin(a)};
}

QPainterPath trackBetween(double fromDegrees, double toDegrees) {
    const QRectF ring(-kTrackMm, -kTrackMm, 2 * kTrackMm, 2 * kTrackMm);
    QPainterPath arc;
    arc.arcMoveTo(ring, fromDegrees);
    arc.arcTo(ring, fromDegrees, toDegrees - fromDegrees);
    return arc;
}

class PotentiometerPainter final : public PackagePainter {
public:
    void paint(QPainter& painter, const PartScene& scene) const override {
        const Theme& theme = scene.theme;
        const BodyFrame frame(painter, scene);
        const QRectF box = scene.bodyRect();
        drawSoftShadow(painter, theme, box, kBodyRadiusMm, fallInBody(scene, {0.7, 0.9}), 0.7);
        painter.setPen(outlinePen(theme.furnishing.ink, theme.outlineMm));
        painter.setBrush(shadeDown(theme, box, QColor::fromRgb(kBlueLight), QColor::fromRgb(kBlueDark)));
        painter.drawPath(roundedBox(box, kBodyRadiusMm));
        // Printed scale: the track's two ends, and dots between.
        painter.setPen(Qt::NoPen);
        painter.setBrush(faded(Qt::white, 0.85));
        constexpr int kDots = 10;
        for (int i = 0; i <= kDots; ++i)
            painter.drawPath(
                disc(onRing(degreesAt(i / static_cast<double>(kDots)), kTrackMm), i % 5 == 0 ? 0.24 : 0.14));
        paintKnob(painter, scene);
    }

    bool hasInside() const override { return true; }

    void paintInside(QPainter& painter, const PartScene& scene) const override {
        const Theme& theme = scene.theme;
        const BodyFrame frame(painter, scene);
        paintPaleCase(painter, theme, scene.bodyRect(), kBodyRadiusMm, 0.4);
        painter.setBrush(Qt::NoBrush);
        const double start = degreesAt(0), end = degreesAt(1), now = degreesAt(scene.state("turn"));
        QPainterPath leads;
        leads.moveTo(-2 * kPitchMm, 0), leads.lineTo(onRing(start, kTrackMm));
        leads.moveTo(2 * kPitchMm, 0), leads.lineTo(onRing(end, kTrackMm));
        painter.strokePath(leads, outlinePen(theme.metalEdge, kTrackBreadthMm));
        painter.strokePath(leads, outlinePen(theme.metalLight, kTrackBreadthMm - 2 * theme.outlineMm));
        painter.strokePath(trackBetween(start, end),
                           QPen(theme.dark ? QColor(0x14161a) : QColor::fromRgb(kTrack), kTrackBreadthMm));
        QPainterPath wiper(QPointF(0, 0));
        wiper.lineTo(onRing(now, kTrackMm));
        painter.strokePath(wiper, outlinePen(theme.metalEdge, 0.8));
        painter.strokePath(wiper, outlinePen(blend(theme.metalLight, Qt::white, 0.4), 0.5));
        painter.setBrush(theme.metalLight);
        painter.setPen(outlinePen(theme.metalEdge, theme.outlineMm));
        painter.drawPath(disc({0, 0}, 0.6));
    }

    std::vector<PartPath> paths(const PartScene& scene) const override {
        const QTransform out = bodyTransform(scene);
        const double now = degreesAt(scene.state("turn"));
        const auto trackWay = [&](int leg, double end) {
            QPainterPath line(QPointF(leg == kOne ? -2 * kPitchMm : 2 * kPitchMm, 0));
            line.lineTo(onRing(end, kTrackMm));
            line.connectPath(trackBetween(end, now));
            return PartPath{out.map(line), {leg}, PathLook::OverBody, leg, kContact};
        };
        QPainterPath wiper(QPointF(0, 0));
        wiper.lineTo(onRing(now, kTrackMm));
        return {trackWay(kOne, degreesAt(0)),
                trackWay(kTwo, degreesAt(1)),
                {out.map(wiper), {kWiper}, PathLook::OverBody, kWiper, kContact}};
    }

    QPainterPath control(const PartScene& scene) const override {
        return bodyTransform(scene).map(disc({0, 0}, kKnobMm));
    }

private:
    static void paintKnob(QPainter& painter, const PartScene& scene) {
        const Theme& theme = scene.theme;
        drawSoftShadow(painter, theme, {0, 0}, kKnobMm, {0.4, 0.6}, 0.5);
        painter.setPen(outlinePen(theme.furnishing.ink, theme.outlineMm));
        painter.setBrush(shadeRound(theme, {0, 0}, kKnobMm, blend(theme.furnishing.panelTop, Qt::white, 0.4),
                                    blend(theme.furnishing.panelBottom, Qt::black, theme.dark ? 0 : 0.14)));
        // A fluted rim, for fingers.
        QPainterPath rim;
        constexpr int kFlutes = 24;
        for (int i = 0; i < 2 * kFlutes; ++i) {
            const QPointF at = onRing(i * 180.0 / kFlutes, i % 2 == 0 ? kKnobMm : kKnobMm - 0.16);
            i == 0 ? rim.moveTo(at) : rim.lineTo(at);
        }
        rim.closeSubpath();
        painter.drawPath(rim);
        painter.setBrush(Qt::NoBrush);
        painter.setPen(outlinePen(faded(theme.furnishing.ink, 0.35), theme.outlineMm));
        painter.drawPath(disc({0, 0}, kKnobMm - 0.6));
        const double now = degreesAt(scene.state("turn"));
        painter.setPen(outlinePen(theme.furnishing.panelInk, 0.5));
        painter.drawLine(onRing(now, kPointerFromMm), onRing(now, kPointerToMm));
    }
};

}  // namespace

const PackagePainter& potentiometerPainter() {
    static const PotentiometerPainter kPainter;
    return kPainter;
}

}  // namespace tiepoint::ui
