// The four-legged push button: a dark moulding with a steel plate, a round cap with its letter, and, seen
// through, two bridges that never part and the bar that a press lowers onto both.

#include "ui/paint/lettering.h"
#include "ui/paint/packages/package_painter.h"
#include "ui/paint/palette.h"
#include "ui/paint/shade.h"

#include <numbers>

namespace tiepoint::ui {
namespace {

constexpr double kCapMm = 2.0, kPressedCapMm = 1.78;
constexpr double kFrameRadiusMm = 0.55, kPlateInsetMm = 0.5, kPlateRadiusMm = 0.3;
constexpr Lettering kCapLetter{2.3, QFont::Bold};
constexpr double kLetterRimMm = 0.34;  ///< keeps the letter apart from the arrow under it
constexpr double kBridgeHalfMm = 0.52, kBridgeBeyondMm = 0.45;
constexpr double kBarHalfMm = 0.42, kBarEndMm = 0.72;
constexpr double kBowMm = 1.15;
constexpr double kLightCap = 60;  ///< L* from which a cap's letter is dark
enum ButtonLeg { k1a, k1b, k2a, k2b, kHub1, kHub2 };

QColor letterOn(const QColor& cap) { return lightnessOf(cap) > kLightCap ? QColor(0x23211c) : QColor(Qt::white); }

QRectF frameRect(const PartScene& scene) { return scene.bodyRect(); }

/// Letters stay upright however the body is turned.
void paintLetter(QPainter& painter, const PartScene& scene, QPointF at, const Lettering& lettering,
                 const QColor& colour, const QPen* rim = nullptr) {
    const QString letter = QString::fromStdString(scene.part.cap);
    painter.save();
    painter.translate(at);
    painter.rotate(-scene.place.pose.angle * 180 / std::numbers::pi);
    if (rim) {
        const QPointF baseline(-textWidthMm(letter, lettering) / 2, kCapHeight * lettering.sizeMm / 2);
        painter.strokePath(textPath(letter, baseline, lettering), *rim);
    }
    drawText(painter, letter, {0, 0}, lettering, colour);
    painter.restore();
}

void paintMoulding(QPainter& painter, const PartScene& scene) {
    const Theme& theme = scene.theme;
    const QRectF frame = frameRect(scene),
                 plate = frame.adjusted(kPlateInsetMm, kPlateInsetMm, -kPlateInsetMm, -kPlateInsetMm);
    painter.setPen(outlinePen(theme.furnishing.ink, theme.outlineMm));
    painter.setBrush(shadeDown(theme, frame, theme.furnishing.plasticLight, theme.furnishing.plasticDark));
    painter.drawPath(roundedBox(frame, kFrameRadiusMm));
    const QColor light = blend(theme.furnishing.steelLight, theme.furnishing.steelDark, 0.25);
    painter.setBrush(shadeAlong(theme, plate.topLeft(), plate.bottomRight(), light, theme.furnishing.steelDark));
    painter.setPen(outlinePen(faded(theme.furnishing.ink, 0.8), theme.outlineMm * 0.8));
    painter.drawPath(roundedBox(plate, kPlateRadiusMm));
}

void paintCap(QPainter& painter, const PartScene& scene, double radius) {
    const Theme& theme = scene.theme;
    const QColor colour = capColour(scene.part.cap);
    const bool pressed = radius < kCapMm;
    if (!theme.flat && !pressed) drawSoftShadow(painter, theme, {0, 0}, radius, {0.3, 0.45}, 0.4);
    const QColor lit = blend(colour, Qt::white, pressed ? 0.05 : 0.28),
                 shaded = blend(colour, Qt::black, pressed ? 0.22 : 0.12);
    painter.setBrush(shadeRound(theme, {0, 0}, radius, lit, shaded));
    painter.setPen(outlinePen(blend(colour, Qt::black, 0.62), theme.outlineMm * 1.2));
    painter.drawPath(disc({0, 0}, radius));
    if (theme.flat || pressed) return;
    painter.setBrush(Qt::NoBrush);
    painter.setPen(outlinePen(faded(Qt::white, 0.35), 0.12));
    painter.drawPath(disc({0, 0}, radius - 0.28));
}

void paintSteel(QPainter& painter, const Theme& theme, const QPainterPath& shape) {
    painter.setPen(outlinePen(theme.metalEdge, theme.outlineMm));
    painter.setBrush(shadeAlong(theme, shape.boundingRect().topLeft(), shape.boundingRect().topRight(),
                                blend(theme.metalLight, Qt::white, 0.25), theme.metalDark));
    painter.drawPath(shape);
}

class PushButtonPainter final : public PackagePainter {
public:
    void paint(QPainter& painter, const PartScene& scene) const override {
        paintBareLeads(painter, scene);
        const BodyFrame frame(painter, scene);
        drawSoftShadow(painter, scene.theme, frameRect(scene), kFrameRadiusMm, fallInBody(scene, {0.6, 0.75}), 0.5);
        paintMoulding(painter, scene);
        paintCap(painter, scene, kCapMm);
        paintLetter(painter, scene, {0, 0}, kCapLetter, letterOn(capColour(scene.part.cap)));
    }

    void paintCapLetter(QPainter& painter, const PartScene& scene) const override {
        const BodyFrame frame(painter, scene);
        const QColor cap = capColour(scene.part.cap), letter = letterOn(cap);
        const QPen rim = outlinePen(blend(cap, Qt::black, 0.08), kLetterRimMm);
        paintLetter(painter, scene, {0, 0}, kCapLetter, rim.color(), &rim);
        paintLetter(painter, scene, {0, 0}, kCapLetter, letter);
    }

    void paintPressed(QPainter& painter, const PartScene& scene) const override {
        const BodyFrame frame(painter, scene);
        paintMoulding(painter, scene);
        // The plate around a cap that has gone down lies in its hole's shade.
        painter.setPen(Qt::NoPen);
        painter.setBrush(faded(Qt::black, 0.28));
        painter.drawPath(disc({0, 0}, kCapMm + 0.1));
        paintCap(painter, scene, kPressedCapMm);
        painter.setBrush(Qt::NoBrush);
        painter.setPen(outlinePen(scene.theme.accent, 0.42));
        const QRectF around = frameRect(scene).adjusted(-0.38, -0.38, 0.38, 0.38);
        painter.drawPath(roundedBox(around, kFrameRadiusMm + 0.38));
    }

    bool hasInside() const override { return true; }
    const char* contactWord(const PartScene& scene) const override { return scene.held ? "closed" : "open"; }

    void paintInside(QPainter& painter, const PartScene& scene) const override {
        const Theme& theme = scene.theme;
        const BodyFrame frame(painter, scene);
        const double reachX = kPitchMm, reachY = 1.5 * kPitchMm;
        paintPaleCase(painter, theme, frameRect(scene), kFrameRadiusMm);
        for (double x : {-reachX, reachX}) {
            const QRectF bridge(x - kBridgeHalfMm, -reachY - kBridgeBeyondMm, 2 * kBridgeHalfMm,
                                2 * (reachY + kBridgeBeyondMm));
            paintSteel(painter, theme, roundedBox(bridge, kBridgeHalfMm * 0.9));
        }
        paintContact(painter, scene, reachX);
        const QColor cap = capColour(scene.part.cap);
        painter.setBrush(Qt::NoBrush);
        painter.setPen(
            outlinePen(theme.dark ? blend(cap, Qt::white, 0.25) : blend(cap, Qt::black, 0.35), theme.outlineMm * 1.2));
        painter.drawPath(disc({0, 0}, kCapMm));
        paintLetter(painter, scene, {0, 1.95}, {1.9, QFont::Bold}, theme.text);
    }

    std::vector<PartPath> paths(const PartScene& scene) const override {
        const QTransform out = bodyTransform(scene);
        const QPointF hub1 = out.map(QPointF(-kPitchMm, 0)), hub2 = out.map(QPointF(kPitchMm, 0));
        const auto straight = [](QPointF from, QPointF to) {
            QPainterPath line(from);
            line.lineTo(to);
            return line;
        };
        const auto tip = [&](int leg) { return toQt(scene.place.leadsMm[static_cast<std::size_t>(leg)]); };
        return {{straight(tip(k1a), hub1), {k1a}, PathLook::OverBody, k1a, kHub1},
                {straight(tip(k1b), hub1), {k1b}, PathLook::OverBody, k1b, kHub1},
                {straight(tip(k2a), hub2), {k2a}, PathLook::OverBody, k2a, kHub2},
                {straight(tip(k2b), hub2), {k2b}, PathLook::OverBody, k2b, kHub2},
                {straight(hub1, hub2), {k1a, k1b}, PathLook::Ghost, kHub1, kHub2}};
    }

    QPainterPath body(const PartScene& scene) const override {
        return bodyTransform(scene).map(roundedBox(frameRect(scene), kFrameRadiusMm));
    }
    QPainterPath control(const PartScene& scene) const override {
        return bodyTransform(scene).map(disc({0, 0}, kCapMm + 0.2));
    }

private:
    /// Two pads with the bar on them, or a bow above a gap.
    static void paintContact(QPainter& painter, const PartScene& scene, double reachX) {
        const Theme& theme = scene.theme;
        if (scene.held) {
            paintSteel(painter, theme,
                       roundedBox(QRectF(-reachX + 0.1, -kBarHalfMm, 2 * reachX - 0.2, 2 * kBarHalfMm), 0.2));
        }
        for (double x : {-reachX, reachX}) {
            const QRectF pad(x - kBarEndMm, -kBarEndMm, 2 * kBarEndMm, 2 * kBarEndMm);
            painter.setBrush(scene.held ? Qt::NoBrush : QBrush(theme.metalLight));
            painter.setPen(outlinePen(theme.metalEdge, theme.outlineMm));
            painter.drawPath(roundedBox(pad, 0.3));
            painter.setBrush(scene.held ? QColor(theme.arrow) : theme.boardTop);
            painter.drawPath(disc({x, 0}, 0.26));
        }
        if (scene.held) return;
        const QColor ink = theme.dark ? theme.metalEdge : theme.furnishing.ink;
        painter.setPen(QPen(ink, theme.outlineMm, Qt::DashLine, Qt::FlatCap));
        painter.drawLine(QPointF(-reachX + 0.8, 0), QPointF(reachX - 0.8, 0));
        QPainterPath bow(QPointF(-1.6, -1.5));
        bow.cubicTo(-0.8, -1.5 - kBowMm, 0.8, -1.5 - kBowMm, 1.6, -1.5);
        painter.setBrush(Qt::NoBrush);
        painter.strokePath(bow, QPen(theme.metalEdge, 2 * kBarHalfMm, Qt::SolidLine, Qt::FlatCap));
        painter.strokePath(bow,
                           QPen(theme.metalLight, 2 * kBarHalfMm - 2 * theme.outlineMm, Qt::SolidLine, Qt::FlatCap));
    }
};

}  // namespace

const PackagePainter& pushButtonPainter() {
    static const PushButtonPainter kPainter;
    return kPainter;
}

}  // namespace tiepoint::ui
