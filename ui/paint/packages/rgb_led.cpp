// A three-colour LED from above: a milky dome on four legs in line. Unlit, its three chips show, each on the side of its leg; the common leg is
// the broad one, with the sign of the pole that it goes to.

#include "ui/paint/lettering.h"
#include "ui/paint/light_painter.h"
#include "ui/paint/packages/package_painter.h"
#include "ui/paint/palette.h"
#include "ui/paint/shade.h"
#include "ui/paint/wire_painter.h"

#include <numbers>

namespace tiepoint::ui {
namespace {

/// Milky resin, and the light that shines through it.
LedColours milky(const QColor& light) { return {light, QColor(0x54, 0x57, 0x5b)}; }
constexpr std::string_view kCommon = "common";

/// The colour of the chip that a lead feeds.
QColor chipColour(std::string_view lead) { return ledColours(lead == "green" ? "pure-green" : lead).light; }

class RgbLedPainter final : public PackagePainter {
public:
    void paint(QPainter& painter, const PartScene& scene) const override {
        const Theme& theme = scene.theme;
        const QTransform toBench = bodyTransform(scene), toBody = toBench.inverted();
        for (std::size_t lead = 0; lead < scene.place.leadsMm.size(); ++lead) {
            constexpr double kApartMm = 0.55;  // of the common leg's two edges
            const QPointF tip = toBody.map(toQt(scene.place.leadsMm[lead]));
            const QPointF root(tip.x() / kSpread, 0);
            const bool broad = scene.part.kind->leads[lead].name == kCommon;
            for (const double aside : {-kApartMm / 2, kApartMm / 2}) {
                const QPointF off(0, broad ? aside : 0);
                paintBareLead(painter, theme, toBench.map(root + off), toBench.map(tip + off));
                if (!broad) break;
            }
        }
        const BodyFrame frame(painter, scene);
        drawSoftShadow(painter, theme, {0, 0}, kFlangeRadiusMm, fallInBody(scene, {0.75, 0.95}), 0.75);
        paintRgb(painter, scene, Qt::white, 0);
        for (std::size_t lead = 0; lead < scene.place.leadsMm.size(); ++lead) {
            const std::string_view name = scene.part.kind->leads[lead].name;
            const double x = toBody.map(toQt(scene.place.leadsMm[lead])).x() / kSpread;
            constexpr double kChipMm = 0.5;
            if (name == kCommon) continue;
            painter.setPen(Qt::NoPen);
            painter.setBrush(chipColour(name));
            painter.drawRect(QRectF(x - kChipMm / 2, -kChipMm / 2, kChipMm, kChipMm));
        }
    }

    void paintLit(QPainter& painter, const PartScene& scene, double brightness) const override {
        const BodyFrame frame(painter, scene);
        paintRgb(painter, scene, light(scene), brightness);
    }

    QColor light(const PartScene& scene) const override { return scene.light.isValid() ? scene.light : Qt::white; }

    std::vector<PartPath> paths(const PartScene& scene) const override {
        const int count = static_cast<int>(scene.place.leadsMm.size());
        const QTransform toBench = bodyTransform(scene), toBody = toBench.inverted();
        std::vector<PartPath> ways;
        for (int lead = 0; lead < count; ++lead) {
            const QPointF tip = toQt(scene.place.leadsMm[static_cast<std::size_t>(lead)]);
            QPainterPath line(tip);
            line.lineTo(toBench.map(QPointF(toBody.map(tip).x() / kSpread / 2, 0)));
            ways.push_back({line, {lead}, PathLook::OnLight, lead, count});
        }
        return ways;
    }

    QPainterPath body(const PartScene& scene) const override {
        return bodyTransform(scene).map(disc({0, 0}, kFlangeRadiusMm));
    }

private:
    static constexpr double kSpread = 2.6;  ///< from the legs' places in the body to their holes

    static void paintRgb(QPainter& painter, const PartScene& scene, const QColor& light, double brightness) {
        const Theme& theme = scene.theme;
        const LedColours colours = milky(light);
        const double lit = litShare(brightness);
        const QColor rim = blend(colours.dull, colours.light, lit);
        const QColor milk = blend(colours.dull, QColor(0xb9, 0xbc, 0xbf), 0.55);
        painter.setPen(outlinePen(blend(colours.dull, Qt::black, 0.6), theme.outlineMm * 1.2));
        painter.setBrush(blend(milk, colours.light, lit));
        painter.drawPath(disc({0, 0}, kFlangeRadiusMm));
        const QColor core = blend(blend(milk, Qt::white, 0.35), blend(Qt::white, colours.light, 0.6), lit);
        painter.setPen(outlinePen(faded(blend(colours.dull, Qt::black, 0.6), 0.7), theme.outlineMm));
        painter.setBrush(shadeRound(theme, {0, 0}, kDomeRadiusMm, core, blend(milk, rim, lit)));
        painter.drawPath(disc({0, 0}, kDomeRadiusMm));
        paintSign(painter, scene);
    }

    /// Of the pole that the common leg goes to, beside it on the rim; upright.
    static void paintSign(QPainter& painter, const PartScene& scene) {
        const int common = scene.part.kind->leadIndex(kCommon);
        const QTransform toBody = bodyTransform(scene).inverted();
        const double x = toBody.map(toQt(scene.place.leadsMm[static_cast<std::size_t>(common)])).x();
        painter.save();
        painter.translate(std::clamp(x, -0.9, 0.9), kFlangeRadiusMm - 0.55);
        painter.rotate(-scene.place.pose.angle * 180 / std::numbers::pi);
        const bool minus = scene.choice(kCommon) == "cathode";
        drawText(painter, minus ? QStringLiteral("\u2212") : QStringLiteral("+"), {0, 0}, {1.5, QFont::Bold},
                 QColor(0x17, 0x18, 0x1a));
        painter.restore();
    }
};

}  // namespace

const PackagePainter& rgbLedPainter() {
    static const RgbLedPainter kPainter;
    return kPainter;
}

}  // namespace tiepoint::ui
