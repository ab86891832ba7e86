// A dual in-line package from above: a black moulding with a notch in the end where leg 1 stands and a dot beside it, and the shoulders
// of its legs, which turn down at the holes.

#include "ui/paint/lettering.h"
#include "ui/paint/packages/package_painter.h"
#include "ui/paint/shade.h"

#include <cmath>

namespace tiepoint::ui {
namespace {

constexpr double kMouldRadiusMm = 0.35;
constexpr double kNotchMm = 0.9, kDotMm = 0.42, kDotAwayMm = 1.15;
constexpr double kShoulderHalfMm = 0.72, kFootHalfMm = 0.27, kFootMm = 0.3;
constexpr double kRidgeMm = 0.55;  ///< the mould's slanting sides, seen from above
constexpr Lettering kName{0.95, QFont::DemiBold}, kLabel{1.15, QFont::Medium};
constexpr double kNameInMm = 1.0, kNameRoomMm = 2.25, kLeastNameMm = 0.45;
constexpr double kPathInsideMm = 1.1;  ///< how far ways of current are followed into the body

/// Where a leg leaves the body, in the body's frame, and its tip.
struct DipLeg {
    QPointF exit, tip;
};
DipLeg legOf(const PartScene& scene, std::size_t lead) {
    const QPointF tip = bodyTransform(scene).inverted().map(toQt(scene.place.leadsMm[lead]));
    const double edge = scene.bodyRect().height() / 2;
    return {{tip.x(), tip.y() > 0 ? edge : -edge}, tip};
}

/// A shoulder, broad at the body and narrow where it goes down.
QPainterPath legShape(const DipLeg& leg) {
    const double out = leg.tip.y() > 0 ? 1 : -1, narrows = leg.exit.y() + (leg.tip.y() - leg.exit.y()) * 0.45;
    QPainterPath path(leg.exit + QPointF(-kShoulderHalfMm, 0));
    path.lineTo(leg.exit.x() - kShoulderHalfMm, narrows);
    path.lineTo(leg.tip.x() - kFootHalfMm, leg.tip.y() - 0.1 * out);
    path.lineTo(leg.tip.x() - kFootHalfMm, leg.tip.y() + kFootMm * out);
    path.lineTo(leg.tip.x() + kFootHalfMm, leg.tip.y() + kFootMm * out);
    path.lineTo(leg.tip.x() + kFootHalfMm, leg.tip.y() - 0.1 * out);
    path.lineTo(leg.exit.x() + kShoulderHalfMm, narrows);
    path.lineTo(leg.exit.x() + kShoulderHalfMm, leg.exit.y());
    path.closeSubpath();
    return path;
}

class DipPainter final : public PackagePainter {
public:
    void paint(QPainter& painter, const PartScene& scene) const override {
        const Theme& theme = scene.theme;
        const Furnishing& f = theme.furnishing;
        const BodyFrame frame(painter, scene);
        const QRectF box = scene.bodyRect();
        drawSoftShadow(painter, theme, box, kMouldRadiusMm, fallInBody(scene, {0.55, 0.7}), 0.55);
        painter.setPen(outlinePen(f.steelEdge, theme.outlineMm));
        painter.setBrush(shadeDown(theme, box.adjusted(0, -1, 0, 1), f.steelLight, f.steelDark));
        for (std::size_t lead = 0; lead < scene.place.leadsMm.size(); ++lead)
            painter.drawPath(legShape(legOf(scene, lead)));
        painter.setPen(outlinePen(f.ink, theme.outlineMm));
        painter.setBrush(shadeDown(theme, box, f.plasticLight, f.plasticDark));
        painter.drawPath(roundedBox(box, kMouldRadiusMm));
        paintTop(painter, theme, box);
        paintNames(painter, scene);
    }

    std::vector<PartPath> paths(const PartScene& scene) const override {
        const QTransform out = bodyTransform(scene);
        const int count = static_cast<int>(scene.place.leadsMm.size());
        std::vector<PartPath> ways;
        for (int lead = 0; lead < count; ++lead) {
            const DipLeg leg = legOf(scene, static_cast<std::size_t>(lead));
            QPainterPath line(leg.tip);
            line.lineTo(leg.exit.x(), leg.exit.y() > 0 ? leg.exit.y() - kPathInsideMm : leg.exit.y() + kPathInsideMm);
            ways.push_back({out.map(line), {lead}, PathLook::OverBody, lead, count + lead});
        }
        return ways;
    }

    QPainterPath body(const PartScene& scene) const override {
        return bodyTransform(scene).map(roundedBox(scene.bodyRect(), kMouldRadiusMm));
    }

private:
    /// The names of its legs beside them, and what it is in the middle, as far as there is room.
    static void paintNames(QPainter& painter, const PartScene& scene) {
        const QColor print = faded(Qt::white, 0.82);
        const QRectF box = scene.bodyRect();
        const PartKind& kind = *scene.part.kind;
        const double turned = std::cos(scene.place.pose.angle) < -0.5 ? 180 : 0;  // never upside down
        const auto put = [&](const QString& text, QPointF at, Lettering lettering, double mostMm) {
            const double width = textWidthMm(text, lettering);
            if (width > mostMm) lettering.sizeMm *= mostMm / width;
            if (lettering.sizeMm < kLeastNameMm) return;
            painter.save();
            painter.translate(at);
            painter.rotate(turned);
            drawText(painter, text, {0, 0}, lettering, print);
            painter.restore();
        };
        for (std::size_t lead = 0; lead < kind.leads.size(); ++lead) {
            const QPointF exit = legOf(scene, lead).exit;
            const double in = exit.y() > 0 ? -kNameInMm : kNameInMm;
            put(QString::fromStdString(kind.leads[lead].name), {exit.x(), exit.y() + in}, kName, kNameRoomMm);
        }
        put(QString::fromStdString(kind.label), {0, 0}, kLabel, box.width() - 2.6 * kNotchMm);
    }

    static void paintTop(QPainter& painter, const Theme& theme, const QRectF& box) {
        const Furnishing& f = theme.furnishing;
        const QRectF top = box.adjusted(kRidgeMm * 0.6, kRidgeMm, -kRidgeMm * 0.6, -kRidgeMm);
        painter.setPen(outlinePen(faded(Qt::white, theme.flat ? 0.25 : 0.12), theme.outlineMm));
        painter.setBrush(shadeDown(theme, top, blend(f.plasticLight, Qt::white, 0.06), f.plasticDark));
        painter.drawPath(roundedBox(top, kMouldRadiusMm * 0.6));
        QPainterPath notch(QPointF(box.left(), -kNotchMm));
        notch.arcTo(QRectF(box.left() - kNotchMm, -kNotchMm, 2 * kNotchMm, 2 * kNotchMm), 90, -180);
        notch.closeSubpath();
        painter.setPen(outlinePen(faded(Qt::white, 0.28), theme.outlineMm));
        painter.setBrush(blend(f.plasticDark, Qt::black, 0.5));
        painter.drawPath(notch);
        painter.setPen(Qt::NoPen);
        painter.setBrush(faded(Qt::white, 0.75));
        painter.drawPath(disc({box.left() + kDotAwayMm, box.bottom() - kRidgeMm - 0.75}, kDotMm));
    }
};

}  // namespace

const PackagePainter& dipPainter() {
    static const DipPainter kPainter;
    return kPainter;
}

}  // namespace tiepoint::ui
