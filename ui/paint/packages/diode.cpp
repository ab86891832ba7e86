// Small diodes: a body between two wires, a ring at the cathode. In glass with a black ring, or in black plastic with a pale one.

#include "ui/paint/lettering.h"
#include "ui/paint/packages/package_painter.h"
#include "ui/paint/shade.h"
#include "ui/paint/wire_painter.h"

#include <cmath>

namespace tiepoint::ui {
namespace {

constexpr double kDiodeCornerMm = 0.45;

/// What a diode's body is made of.
struct DiodeLook {
    QRgb light, dark, ring;
    double shine;  ///< opacity of the highlight along it
};
constexpr DiodeLook kInGlass{0xffd67a4c, 0xff8a3f1e, 0xff1c1a19, 0.55};
constexpr DiodeLook kInPlastic{0xff3f4145, 0xff18191c, 0xffcfd3d7, 0.22};

class DiodePainter final : public PackagePainter {
public:
    explicit DiodePainter(const DiodeLook& look) : look_(look) {}

    void paint(QPainter& painter, const PartScene& scene) const override {
        const Theme& theme = scene.theme;
        if (scene.place.pose.standing) {
            paintStanding(painter, scene);
            return;
        }
        paintBareLeads(painter, scene);
        const BodyFrame frame(painter, scene);
        const QRectF box = scene.bodyRect();
        const QPainterPath body = roundedBox(box, kDiodeCornerMm);
        drawSoftShadow(painter, theme, box, kDiodeCornerMm, {0.35, 0.5}, 0.4);
        painter.setPen(Qt::NoPen);
        painter.setBrush(shadeDown(theme, box, QColor::fromRgb(look_.light), QColor::fromRgb(look_.dark)));
        painter.drawPath(body);
        // A fifth of the length, a little before the end.
        constexpr double kRingFrom = 0.425, kRingLength = 0.36;
        painter.fillRect(QRectF(kRingFrom * box.right(), box.top(), kRingLength * box.right(), box.height()),
                         QColor::fromRgb(look_.ring));
        paintVoltage(painter, scene, box);
        if (!theme.flat) {
            painter.setPen(outlinePen(faded(Qt::white, look_.shine), 0.16));
            painter.drawLine(QPointF(0.7 * box.left(), box.top() / 2), QPointF(0.7 * box.right(), box.top() / 2));
        }
        painter.setBrush(Qt::NoBrush);
        painter.setPen(outlinePen(theme.furnishing.ink, theme.outlineMm));
        painter.drawPath(body);
    }

    QPainterPath body(const PartScene& scene) const override {
        if (scene.place.pose.standing) return bodyTransform(scene).map(disc({0, 0}, scene.bodyRect().bottom()));
        return bodyTransform(scene).map(roundedBox(scene.bodyRect(), kDiodeCornerMm));
    }

private:
    /// Of a zener, as it is printed: 5V1.
    static void paintVoltage(QPainter& painter, const PartScene& scene, const QRectF& box) {
        const double volt = scene.value("breakdownVoltage");
        if (!(volt > 0)) return;
        constexpr double kVoltageEmMm = 1.05;
        const int tenths = static_cast<int>(std::lround(volt * 10));
        const QString text = volt < 100 ? QStringLiteral("%1V%2").arg(tenths / 10).arg(tenths % 10)
                                        : QStringLiteral("%1V").arg(tenths / 10);
        painter.save();
        painter.translate(box.left() * 0.3, 0);
        // Along the body, and not upside down.
        if (std::cos(scene.place.pose.angle) < -1e-6) painter.rotate(180);
        drawText(painter, text, {0, 0}, {kVoltageEmMm, QFont::Bold}, QColor::fromRgb(0xff1c1a19));
        painter.restore();
    }

    /// Stands on its anode, so that the ring is on top.
    void paintStanding(QPainter& painter, const PartScene& scene) const {
        const QPointF first = toQt(scene.place.leadsMm[0]), second = toQt(scene.place.leadsMm[1]);
        const double radius = scene.bodyRect().bottom();
        const QPainterPath end = disc(first, radius);
        drawSoftShadow(painter, scene.theme, first, radius, {0.7, 0.9}, 0.5);
        painter.setPen(outlinePen(scene.theme.furnishing.ink, scene.theme.outlineMm));
        painter.setBrush(
            shadeRound(scene.theme, first, radius, QColor::fromRgb(look_.light), QColor::fromRgb(look_.dark)));
        painter.drawPath(end);
        painter.setPen(QPen(QColor::fromRgb(look_.ring), 0.35));
        painter.drawPath(disc(first, radius - 0.28));
        paintBareLead(painter, scene.theme, first, second);
    }

    DiodeLook look_;
};

}  // namespace

const PackagePainter& diodePainter() {
    static const DiodePainter kPainter(kInGlass);
    return kPainter;
}

const PackagePainter& plasticDiodePainter() {
    static const DiodePainter kPainter(kInPlastic);
    return kPainter;
}

}  // namespace tiepoint::ui
