// A small relay from above, under a clear lid: its coil, the armature at the coil's end, and the contact's blade, which lies at one pin at
// rest and at the other while it is pulled in.

#include "ui/paint/lettering.h"
#include "ui/paint/packages/package_painter.h"
#include "ui/paint/shade.h"

namespace tiepoint::ui {
namespace {

constexpr double kRelayRadiusMm = 0.9, kRelayWallMm = 0.9;
constexpr QRectF kRelayCoil(-7.6, -3.1, 6.6, 6.2);
constexpr QRectF kRelayContactRoom(0.2, -4.0, 7.8, 8.0);
constexpr QPointF kRelayPivot(1.3, 0), kRelayBladeTip(6.3, 0);
constexpr double kRelayPinYMm = 2.3, kRelayRestTipYMm = 1.55, kRelayBladeBreadthMm = 0.7;
constexpr QRgb kRelayCopperLight = 0xffd58a4a, kRelayCopperDark = 0xff8f4e20, kRelayBaseLight = 0xff3f5f86,
               kRelayBaseDark = 0xff263c58;
constexpr Lettering kRelayWord{1.7, QFont::DemiBold};
constexpr std::string_view kRelayPulled = "pulled in";

/// Side of the body on which a lead's leg stands in the unturned frame: 1 below, -1 above.
double sideOf(const PartScene& scene, std::string_view lead) {
    const int index = scene.part.kind->leadIndex(lead);
    if (index < 0) return 1;
    const QPointF tip = bodyTransform(scene).inverted().map(toQt(scene.place.leadsMm[static_cast<std::size_t>(index)]));
    return tip.y() > 0 ? 1 : -1;
}

void paintContact(QPainter& painter, const PartScene& scene, bool pulled) {
    const Theme& theme = scene.theme;
    const Furnishing& f = theme.furnishing;
    painter.setPen(Qt::NoPen);
    painter.setBrush(QColor::fromRgb(kRelayBaseDark));
    painter.drawRect(kRelayContactRoom);
    const double open = sideOf(scene, "open");
    painter.setPen(outlinePen(f.ink, theme.outlineMm));
    painter.setBrush(shadeDown(theme, kRelayContactRoom, f.steelLight, f.steelDark));
    for (const double side : {open, -open})
        painter.drawPath(roundedBox(QRectF(kRelayBladeTip.x() - 0.9, side * kRelayPinYMm - 0.55, 1.8, 1.1), 0.4));
    const QPointF tip = kRelayBladeTip + QPointF(0, (pulled ? open : -open) * kRelayRestTipYMm);
    painter.setPen(QPen(f.ink, kRelayBladeBreadthMm + 2 * theme.outlineMm, Qt::SolidLine, Qt::RoundCap));
    painter.drawLine(kRelayPivot, tip);
    painter.setPen(QPen(blend(f.steelLight, Qt::white, 0.4), kRelayBladeBreadthMm, Qt::SolidLine, Qt::RoundCap));
    painter.drawLine(kRelayPivot, tip);
    // The armature: drawn to the coil while pulled in, a gap away at rest.
    const double gap = pulled ? 0.0 : 0.75;
    painter.setPen(outlinePen(f.ink, theme.outlineMm));
    painter.setBrush(shadeDown(theme, kRelayContactRoom, f.steelLight, f.steelDark));
    painter.drawRect(QRectF(kRelayCoil.right() + 0.25 + gap, -2.6, 0.9, 5.2));
}

class RelayChangeoverPainter final : public PackagePainter {
public:
    void paint(QPainter& painter, const PartScene& scene) const override {
        const Theme& theme = scene.theme;
        const Furnishing& f = theme.furnishing;
        const BodyFrame frame(painter, scene);
        const QRectF box = scene.bodyRect();
        drawSoftShadow(painter, theme, box, kRelayRadiusMm, fallInBody(scene, {0.9, 1.15}), 0.9);
        painter.setPen(outlinePen(f.ink, theme.outlineMm * 1.2));
        painter.setBrush(shadeDown(theme, box, QColor::fromRgb(kRelayBaseLight), QColor::fromRgb(kRelayBaseDark)));
        painter.drawPath(roundedBox(box, kRelayRadiusMm));
        painter.setBrush(QColor::fromRgb(kRelayBaseDark));
        painter.drawPath(
            roundedBox(box.adjusted(kRelayWallMm, kRelayWallMm, -kRelayWallMm, -kRelayWallMm), kRelayRadiusMm / 2));
        paintCoil(painter, theme);
        paintContact(painter, scene, false);
        if (theme.flat) return;
        painter.setPen(outlinePen(faded(Qt::white, 0.22), 0.3));
        painter.drawLine(box.topLeft() + QPointF(1.4, 1.3), box.topRight() + QPointF(-1.4, 1.3));
    }

    QRectF figures(const PartScene& scene) const override {
        return bodyTransform(scene).mapRect(scene.bodyRect().adjusted(-0.3, -3.2, 0.3, 3.2));
    }

    std::optional<DisplayFigures> figuresAt(const Snapshot& instant, int part, int) const override {
        if (instant.status() != Status::Solved) return std::nullopt;
        for (const ElementState element : instant.solution.elements())
            if (element.part == part && element.told > 0) return DisplayFigures{std::string(kRelayPulled)};
        return std::nullopt;
    }

    void paintFigures(QPainter& painter, const PartScene& scene, const DisplayFigures& shown) const override {
        {
            const BodyFrame frame(painter, scene);
            paintContact(painter, scene, true);
        }
        const QRectF body = bodyTransform(scene).mapRect(scene.bodyRect());
        const QPointF at(body.center().x(), body.bottom() + 1.5);  // its name stands above
        const QString word = QString::fromStdString(shown.figure);
        const double width = textWidthMm(word, kRelayWord) + 1.0;
        painter.setPen(Qt::NoPen);
        painter.setBrush(faded(scene.theme.boardTop, 0.92));
        painter.drawPath(roundedBox(QRectF(at.x() - width / 2, at.y() - 1.1, width, 2.2), 0.5));
        drawText(painter, word, at, kRelayWord, scene.theme.text);
    }

    /// Through the coil, and from each leg of the contact to the blade.
    std::vector<PartPath> paths(const PartScene& scene) const override {
        const auto& leads = scene.place.leadsMm;
        const int inside = static_cast<int>(leads.size());
        if (inside < 5) return {};
        const QPointF pivot = bodyTransform(scene).map(kRelayPivot);
        QPainterPath coil(toQt(leads[0]));
        coil.lineTo(toQt(leads[1]));
        std::vector<PartPath> ways{{coil, {0}, PathLook::Ghost, 0, 1}};
        for (int lead = 2; lead < 5; ++lead) {
            QPainterPath line(toQt(leads[static_cast<std::size_t>(lead)]));
            line.lineTo(pivot);
            ways.push_back({line, {lead}, PathLook::Ghost, lead, inside});
        }
        return ways;
    }

    QPainterPath body(const PartScene& scene) const override {
        return bodyTransform(scene).map(roundedBox(scene.bodyRect(), kRelayRadiusMm));
    }

private:
    static void paintCoil(QPainter& painter, const Theme& theme) {
        painter.setPen(outlinePen(theme.furnishing.ink, theme.outlineMm));
        painter.setBrush(
            shadeDown(theme, kRelayCoil, QColor::fromRgb(kRelayCopperLight), QColor::fromRgb(kRelayCopperDark)));
        painter.drawPath(roundedBox(kRelayCoil, 0.5));
        painter.setPen(outlinePen(faded(QColor::fromRgb(kRelayCopperDark), 0.9), theme.outlineMm));
        for (double x = kRelayCoil.left() + 0.8; x < kRelayCoil.right() - 0.4; x += 0.7)
            painter.drawLine(QPointF(x, kRelayCoil.top() + 0.3), QPointF(x, kRelayCoil.bottom() - 0.3));
    }
};

}  // namespace

const PackagePainter& relayChangeoverPainter() {
    static const RelayChangeoverPainter kPainter;
    return kPainter;
}

}  // namespace tiepoint::ui
