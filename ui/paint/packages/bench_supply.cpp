// The bench supply: the hero at the left edge, and the only "on". Display with set volts and present current,
// bat lever, one plus and two minus sockets, two leads.

#include "core/snapshot/readings.h"
#include "ui/paint/lettering.h"
#include "ui/paint/packages/face_parts.h"
#include "ui/paint/packages/supply_parts.h"
#include "ui/paint/shade.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace tiepoint::ui {
namespace {

// Places on the face, from its top left corner.
constexpr QRectF kPanel(1.75, 1.75, 26.5, 47.5);
constexpr QRectF kDisplay(4.5, 4.4, 21, 15.1);
constexpr QRectF kLeverPlate(5.6, 25.9, 8, 16.8);
constexpr double kDividerY = 12.65, kDigitsRight = 23.9, kWordsLeft = 6.1;
constexpr double kSetY = 8.3, kFlowY = 16.2, kSetWordY = 7.6, kFlowWordY = 14.3;
constexpr double kSetMm = 5.5, kMostSetMm = 7.2, kFlowMm = 3.5,
                 kMostFlowMm = 5.4;  ///< em, at a desk and at most for a room
constexpr int kDisplayDigits = 4;    ///< as instruments have
constexpr Lettering kDisplayWord{1.75, QFont::Normal};
constexpr double kFlowRoomMm = 14.2, kWholeRoomMm = kDigitsRight - kWordsLeft;
constexpr double kSwitchWordMm = 2.15, kMostOnMm = 4, kMostOffMm = 3.4, kIdMm = 1.7, kMostIdMm = 2.9;
constexpr QPointF kNut(9.6, 34.2);
constexpr double kNutMm = 3.05, kBushMm = 1.9;
constexpr double kLeverMm = 7.6, kLeverThinMm = 0.62, kLeverThickMm = 1.6;
constexpr double kSignX = 17.2, kSocketX = 22.5, kSocketMm = 2.75;
constexpr double kPlusY = 26.5, kMinusY = 36.0, kLowerMinusY = 44.5;

/// Set volts as the knob has them; one digit after the point at least.
QString voltsText(double volts) {
    const bool tenths = std::abs(volts * 10 - std::round(volts * 10)) < 1e-6;
    return QString::number(volts, 'f', tenths ? 1 : 2) + QStringLiteral(" V");
}

QPainterPath nutShape() {
    QPainterPath hexagon;
    for (int i = 0; i < 6; ++i) {
        const double a = (60 * i + 30) * std::numbers::pi / 180;
        const QPointF corner = kNut + QPointF(std::cos(a), std::sin(a)) * kNutMm;
        i == 0 ? hexagon.moveTo(corner) : hexagon.lineTo(corner);
    }
    hexagon.closeSubpath();
    return hexagon;
}

/// The lever from its bush, up when on.
QPainterPath leverShape(bool on) {
    const double way = on ? -1 : 1;
    const QPointF tip = kNut + QPointF(0, way * (kLeverMm - kLeverThickMm));
    QPainterPath lever(kNut + QPointF(-kLeverThinMm, 0));
    lever.lineTo(tip + QPointF(-kLeverThickMm, 0));
    lever.cubicTo(tip + QPointF(-kLeverThickMm, way * 2.1), tip + QPointF(kLeverThickMm, way * 2.1),
                  tip + QPointF(kLeverThickMm, 0));
    lever.lineTo(kNut + QPointF(kLeverThinMm, 0));
    lever.cubicTo(kNut + QPointF(kLeverThinMm, -way * 0.9), kNut + QPointF(-kLeverThinMm, -way * 0.9),
                  kNut + QPointF(-kLeverThinMm, 0));
    return lever;
}

/// Words on the display that a room can't read make place for figures that it can: their units tell these apart.
bool hasDisplayWords(const PartScene& scene) { return scene.leastWordMm <= kDisplayWord.sizeMm; }

/// Many figures stand closer rather than over what is beside them.
Lettering digitsFor(const PartScene& scene, const QString& figure, double sizeMm) {
    const double room = hasDisplayWords(scene) ? kFlowRoomMm : kWholeRoomMm;
    const Lettering digits{sizeMm, QFont::DemiBold};
    return {sizeMm * std::min(1.0, room / textWidthMm(figure, digits)), QFont::DemiBold};
}

void paintDisplay(QPainter& painter, const PartScene& scene) {
    const Theme& theme = scene.theme;
    const Furnishing& f = theme.furnishing;
    const QPainterPath window = roundedBox(kDisplay, 1.1);
    painter.setPen(outlinePen(blend(f.display, Qt::black, 0.5), theme.outlineMm * 1.6));
    painter.setBrush(shadeDown(theme, kDisplay, f.display, f.displayLow));
    painter.drawPath(window);
    if (!theme.flat) {
        QPainterPath sheen(kDisplay.topLeft());
        sheen.lineTo(kDisplay.left() + 9.2, kDisplay.top());
        sheen.lineTo(kDisplay.left() + 3.2, kDisplay.bottom());
        sheen.lineTo(kDisplay.bottomLeft());
        painter.fillPath(sheen.intersected(roundedBox(kDisplay.adjusted(0.25, 0.25, -0.25, -0.25), 0.9)),
                         faded(Qt::white, 0.045));
    }
    painter.setPen(QPen(faded(f.digitsDim, 0.45), 0.14));
    painter.drawLine(QPointF(kWordsLeft - 0.1, kDividerY), QPointF(kDigitsRight, kDividerY));
    const bool on = scene.state("on") > 0.5;
    if (hasDisplayWords(scene)) {
        drawText(painter, QStringLiteral("set"), {kWordsLeft, kSetWordY}, kDisplayWord, f.digitsDim, Qt::AlignLeft);
        drawText(painter, QStringLiteral("out"), {kWordsLeft, kFlowWordY}, kDisplayWord, f.digitsDim, Qt::AlignLeft);
    }
    const QString volts = voltsText(scene.value("voltage"));
    drawText(painter, volts, {kDigitsRight, kSetY}, digitsFor(scene, volts, scene.figureMm(kSetMm, kMostSetMm)),
             on ? f.digits : f.digitsDim, Qt::AlignRight);
}

void paintLever(QPainter& painter, const PartScene& scene) {
    const Theme& theme = scene.theme;
    const Furnishing& f = theme.furnishing;
    const bool on = scene.state("on") > 0.5;
    painter.setPen(outlinePen(faded(f.ink, theme.flat ? 1 : 0.38), theme.outlineMm));
    painter.setBrush(theme.flat ? QColor(Qt::white) : blend(f.panelBottom, Qt::black, theme.dark ? 0.22 : 0.08));
    painter.drawPath(roundedBox(kLeverPlate, 0.9));
    painter.setPen(outlinePen(f.steelEdge, theme.outlineMm));
    painter.setBrush(shadeAlong(theme, kNut - QPointF(kNutMm, kNutMm), kNut + QPointF(kNutMm, kNutMm), f.steelLight,
                                blend(f.steelDark, Qt::black, 0.12)));
    painter.drawPath(nutShape());
    painter.setBrush(blend(f.steelEdge, Qt::black, 0.12));
    painter.drawPath(disc(kNut, kBushMm));
    const QPainterPath lever = leverShape(on);
    drawSoftShadow(painter, theme, lever.boundingRect(), kLeverThickMm, {1.0, 0.9}, 0.5);
    const QRectF reach = lever.boundingRect();
    painter.setPen(outlinePen(blend(f.steelEdge, Qt::black, 0.3), theme.outlineMm));
    painter.setBrush(shadeAlong(theme, reach.topLeft(), reach.topRight(), f.steelLight, f.steelDark));
    painter.drawPath(lever);
    if (!theme.flat) {
        painter.setPen(Qt::NoPen);
        painter.setBrush(faded(Qt::white, 0.75));
        painter.drawEllipse(kNut + QPointF(-0.4, on ? -kLeverMm + 1.5 : kLeverMm - 1.8), 0.5, 0.42);
    }
    const auto addWord = [&](const QString& word, double fromPlate, double sizeMm, bool chosen) {
        drawText(painter, word, {kNut.x(), fromPlate}, {sizeMm, chosen ? QFont::Bold : QFont::Normal},
                 chosen ? f.panelInk : f.panelDim);
    };
    const double onMm = scene.wordMm(kSwitchWordMm, kMostOnMm), offMm = scene.wordMm(kSwitchWordMm, kMostOffMm);
    addWord(QStringLiteral("on"), kLeverPlate.top() - 0.67 * onMm, onMm, on);
    addWord(QStringLiteral("off"), kLeverPlate.bottom() + 0.81 * kSwitchWordMm + 0.4 * (offMm - kSwitchWordMm), offMm,
            !on);
}

void paintSockets(QPainter& painter, const PartScene& scene) {
    for (const auto& [y, plus] : {std::pair{kPlusY, true}, std::pair{kMinusY, false}, std::pair{kLowerMinusY, false}}) {
        paintSupplySign(painter, scene.theme, {faced(scene, kSignX), y}, plus, 1.15);
        paintSocket(painter, scene.theme, {faced(scene, kSocketX), y}, kSocketMm);
    }
}

class BenchSupplyPainter final : public PackagePainter {
public:
    void paint(QPainter& painter, const PartScene& scene) const override {
        painter.save();
        painter.translate(cornerMm(scene));
        paintFaceCase(painter, scene, kPanel);
        paintDisplay(painter, scene);
        painter.save();
        painter.translate(faced(scene, kNut.x()) - kNut.x(), 0);
        paintLever(painter, scene);
        painter.restore();
        paintSockets(painter, scene);
        const double idMm = scene.wordMm(kIdMm, kMostIdMm);
        drawText(painter, QString::fromStdString(scene.part.id),
                 faced(scene, QPointF(5.6, 47.8 - 0.2 * (idMm - kIdMm))), {idMm, QFont::Medium},
                 scene.theme.furnishing.panelDim, scene.place.mirrored ? Qt::AlignRight : Qt::AlignLeft);
        painter.restore();
        if (scene.compact) return;
        for (int lead : {1, 0}) {
            paintSupplyLead(painter, scene, lead, lead == 0);
            const Place start = Polyline::of(supplyLead(scene, lead).path()).at(1);
            paintPlug(painter, scene.theme, toQt(scene.place.exitsMm[static_cast<std::size_t>(lead)]), kSocketMm,
                      leadColour(scene.theme, lead == 0), start.angle);
        }
    }

    QRectF figures(const PartScene& scene) const override { return kDisplay.translated(cornerMm(scene)); }
    std::optional<DisplayFigures> figuresAt(const Snapshot& instant, int part, int) const override {
        if (instant.status() != Status::Solved) return std::nullopt;
        const int plus = instant.layout->leadIndex(part, 0);
        return DisplayFigures{(-instant.shown().leadCurrent(plus)).onDisplay(kDisplayDigits)};
    }
    void paintFigures(QPainter& painter, const PartScene& scene, const DisplayFigures& shown) const override {
        const QString figure = QString::fromStdString(shown.figure);
        drawText(painter, figure, cornerMm(scene) + QPointF(kDigitsRight, kFlowY),
                 digitsFor(scene, figure, scene.figureMm(kFlowMm, kMostFlowMm)), scene.theme.furnishing.digits,
                 Qt::AlignRight);
    }

    std::vector<PartPath> paths(const PartScene& scene) const override { return supplyPaths(scene); }

    QPainterPath body(const PartScene& scene) const override {
        return bodyTransform(scene).map(roundedBox(scene.bodyRect(), 2.1));
    }

    QPainterPath control(const PartScene& scene) const override {
        return roundedBox(faced(scene, kLeverPlate).adjusted(0, -2.6, 0, 2.8), 0.9).translated(cornerMm(scene));
    }
};

}  // namespace

const PackagePainter& benchSupplyPainter() {
    static const BenchSupplyPainter kPainter;
    return kPainter;
}

}  // namespace tiepoint::ui
