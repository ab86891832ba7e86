// The multimeter, lying on the table: a waisted box with a display, a dial that points at what is measured, and two sockets from whose
// plugs the test leads run to probes in holes. What the display shows is read off the bench by core/meter.

#include "core/meter/meter.h"
#include "ui/paint/lettering.h"
#include "ui/paint/packages/supply_parts.h"
#include "ui/paint/probe_painter.h"
#include "ui/paint/shade.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace tiepoint::ui {
namespace {

// Places on the face, from its top left corner.
constexpr QRectF kMeterPanel(2.5, 2.2, 29, 49.6), kMeterDisplay(4, 3.8, 26, 14);
constexpr double kMeterRadiusMm = 5, kWaistMm = 0.9, kPanelRadiusMm = 3.2;
constexpr double kInsetMm = 1.5;  ///< from the rim of the display to what stands in it
constexpr double kDigitsY = 9.1, kUnitY = 15.2;
constexpr Lettering kMeterDigits{7.4, QFont::DemiBold}, kUnit{3.0, QFont::DemiBold}, kQuantity{1.95, QFont::Normal},
    kWhy{1.6, QFont::Medium};
constexpr double kWhyLineMm = 2.1;
constexpr QPointF kBeepAt(16, kUnitY);
/// A beep is seen from the back of a room too: its sound spreads beside the box, towards the boards.
constexpr QPointF kSoundFrom(-0.6, 10.8);
constexpr double kSoundScale = 2.4, kStrongMm = 1.3, kWeakMm = 0.55;
constexpr std::array kSoundRadii{1.06, 1.98, 2.9};
constexpr QRectF kSound(-8.6, 4.6, 8, 12.4);

constexpr QPointF kDial(17, 33);
constexpr double kDialMm = 7, kHubMm = 2, kTickFromMm = 7.7, kTickToMm = 8.7, kNamesMm = 10.8, kDialReachMm = 12;
/// Degrees clockwise from the top, in the order of the dial's positions.
constexpr std::array kPositionDegrees{-100.0, -50.0, 0.0, 50.0, 100.0};
constexpr Lettering kSign{2.9, QFont::Medium}, kSignChosen{2.9, QFont::Bold}, kWord{2.0, QFont::Medium},
    kWordChosen{2.0, QFont::Bold};

constexpr double kMeterSocketMm = 2.6, kSocketWordX = 10.2, kUpperWordY = 43.2;
constexpr QPointF kIdAt(27.4, 48);
constexpr Lettering kSocketWord{2.0, QFont::DemiBold}, kId{1.7, QFont::Medium};

/// What stands at a position of the dial; the one that beeps has a mark instead.
struct Position {
    std::string_view choice;
    const char* sign;
};
constexpr std::array kPositions{Position{"off", "off"}, Position{"volts", "V"}, Position{"amperes", "A"},
                                Position{"ohms", "\u03a9"}, Position{"continuity", ""}};

QPointF onDial(double degrees, double radius) {
    const double a = degrees * std::numbers::pi / 180;
    return kDial + QPointF(std::sin(a), -std::cos(a)) * radius;
}

const ValueSpec& dialOf(const PartScene& scene) { return scene.part.kind->state.front(); }
std::size_t positionOf(const PartScene& scene) { return static_cast<std::size_t>(scene.part.stateValue(0)); }

/// A box that is a little narrower about its middle, for a hand.
QPainterPath caseShape(QSizeF size) {
    const double w = size.width(), h = size.height(), r = kMeterRadiusMm;
    QPainterPath path(QPointF(r, 0));
    path.lineTo(w - r, 0);
    path.cubicTo(w - 0.36 * r, 0, w, 0.36 * r, w, r);
    path.cubicTo(w, 0.2 * h, w - kWaistMm, 0.3 * h, w - kWaistMm, 0.41 * h);
    path.cubicTo(w - kWaistMm, 0.6 * h, w, 0.74 * h, w, h - r);
    path.cubicTo(w, h - 0.36 * r, w - 0.36 * r, h, w - r, h);
    path.lineTo(r, h);
    path.cubicTo(0.36 * r, h, 0, h - 0.36 * r, 0, h - r);
    path.cubicTo(0, 0.74 * h, kWaistMm, 0.6 * h, kWaistMm, 0.41 * h);
    path.cubicTo(kWaistMm, 0.3 * h, 0, 0.2 * h, 0, r);
    path.cubicTo(0, 0.36 * r, 0.36 * r, 0, r, 0);
    path.closeSubpath();
    return path;
}

/// One of the three arcs of a sound that spreads from a point, towards 0 (the right) or 180 degrees.
QPainterPath soundArc(QPointF from, double scale, double towards, std::size_t index) {
    constexpr double kSpreadDegrees = 45;
    const double r = kSoundRadii[index] * scale;
    const QRectF ring(from.x() - r, from.y() - r, 2 * r, 2 * r);
    QPainterPath arc;
    arc.arcMoveTo(ring, towards - kSpreadDegrees);
    arc.arcTo(ring, towards - kSpreadDegrees, 2 * kSpreadDegrees);
    return arc;
}

/// A point with its sound.
void paintBeepMark(QPainter& painter, QPointF at, double scale, const QColor& colour) {
    painter.setPen(Qt::NoPen);
    painter.setBrush(colour);
    painter.drawPath(disc(at, 0.36 * scale));
    for (std::size_t arc = 0; arc < kSoundRadii.size(); ++arc)
        painter.strokePath(soundArc(at, scale, 0, arc), outlinePen(colour, 0.42 * scale));
}

/// The sound beside the box, on the side of the boards: while it lasts, one arc after the other is the strong one, so that it runs outwards.
void paintSound(QPainter& painter, const PartScene& scene, int beat) {
    const double towards = scene.place.mirrored ? 0 : 180;
    for (std::size_t arc = 0; arc < kSoundRadii.size(); ++arc) {
        const bool strong = arc == static_cast<std::size_t>(beat);
        painter.strokePath(soundArc(faced(scene, kSoundFrom), kSoundScale, towards, arc),
                           outlinePen(scene.theme.accent, strong ? kStrongMm : kWeakMm));
    }
}

void paintCase(QPainter& painter, const PartScene& scene) {
    const Theme& theme = scene.theme;
    const Furnishing& f = theme.furnishing;
    const QRectF box(QPointF(0, 0), scene.bodyRect().size());
    drawSoftShadow(painter, theme, box, kMeterRadiusMm, {1.7, 2.1}, 1.9);
    painter.setPen(outlinePen(f.caseEdge, theme.outlineMm * 1.3));
    painter.setBrush(shadeDown(theme, box, f.caseTop, f.caseBottom));
    painter.drawPath(caseShape(box.size()));
    if (!theme.flat) {
        painter.setPen(QPen(faded(Qt::white, 0.34), 0.28, Qt::SolidLine, Qt::RoundCap));
        painter.drawLine(QPointF(kMeterRadiusMm, 0.45), QPointF(box.right() - kMeterRadiusMm, 0.45));
    }
    painter.setPen(QPen(faded(f.caseEdge, theme.flat ? 1 : 0.6), theme.outlineMm * 2));
    for (const double y : {21.0, 22.6, 24.2, 25.8, 27.4}) {  // ribs under a thumb
        painter.drawLine(QPointF(1.15, y), QPointF(2.1, y));
        painter.drawLine(QPointF(box.right() - 2.1, y), QPointF(box.right() - 1.15, y));
    }
    painter.setPen(outlinePen(faded(f.caseEdge, theme.flat ? 1 : 0.85), theme.outlineMm));
    painter.setBrush(shadeDown(theme, kMeterPanel, f.panelTop, f.panelBottom));
    painter.drawPath(roundedBox(kMeterPanel, kPanelRadiusMm));
}

void paintMeterDisplay(QPainter& painter, const PartScene& scene) {
    const Theme& theme = scene.theme;
    const Furnishing& f = theme.furnishing;
    painter.setPen(outlinePen(blend(f.display, Qt::black, 0.5), theme.outlineMm * 1.6));
    painter.setBrush(shadeDown(theme, kMeterDisplay, f.display, f.displayLow));
    painter.drawPath(roundedBox(kMeterDisplay, 1.1));
    if (theme.flat) return;
    QPainterPath sheen(kMeterDisplay.topLeft());
    sheen.lineTo(kMeterDisplay.left() + 9.2, kMeterDisplay.top());
    sheen.lineTo(kMeterDisplay.left() + 3.2, kMeterDisplay.bottom());
    sheen.lineTo(kMeterDisplay.bottomLeft());
    painter.fillPath(sheen.intersected(roundedBox(kMeterDisplay.adjusted(0.25, 0.25, -0.25, -0.25), 0.9)),
                     faded(Qt::white, 0.045));
}

void paintPositions(QPainter& painter, const PartScene& scene) {
    const Furnishing& f = scene.theme.furnishing;
    const auto& choices = dialOf(scene).choices;
    for (std::size_t i = 0; i < std::min(choices.size(), kPositionDegrees.size()); ++i) {
        const bool chosen = i == positionOf(scene);
        const QColor ink = chosen ? f.panelInk : f.panelDim;
        painter.setPen(outlinePen(f.panelInk, chosen ? 0.42 : 0.22));
        painter.drawLine(onDial(kPositionDegrees[i], kTickFromMm), onDial(kPositionDegrees[i], kTickToMm));
        const auto named = std::ranges::find(kPositions, std::string_view(choices[i].name), &Position::choice);
        if (named == kPositions.end()) continue;
        const QString sign = QString::fromUtf8(named->sign);
        const QPointF at = onDial(kPositionDegrees[i], kNamesMm);
        if (sign.isEmpty())
            paintBeepMark(painter, at - QPointF(0.9, 0), chosen ? 0.88 : 0.75, ink);
        else if (sign.size() == 1)
            drawText(painter, sign, at, chosen ? kSignChosen : kSign, ink);
        else
            drawText(painter, sign, at, chosen ? kWordChosen : kWord, ink);
    }
}

void paintKnob(QPainter& painter, const PartScene& scene) {
    const Theme& theme = scene.theme;
    const Furnishing& f = theme.furnishing;
    drawSoftShadow(painter, theme, kDial, kDialMm, {0.8, 1.0}, 0.9);
    painter.setPen(outlinePen(f.ink, theme.outlineMm));
    painter.setBrush(shadeRound(theme, kDial, kDialMm, f.plasticLight, f.plasticDark));
    painter.drawPath(disc(kDial, kDialMm));
    painter.save();
    painter.translate(kDial);
    painter.rotate(kPositionDegrees[std::min(positionOf(scene), kPositionDegrees.size() - 1)]);
    QPainterPath grip(QPointF(-1.7, -5.2));
    grip.cubicTo({-1.5, -6.6}, {1.5, -6.6}, {1.7, -5.2});
    grip.lineTo(2.1, 4.6);
    grip.cubicTo({1.8, 6.2}, {-1.8, 6.2}, {-2.1, 4.6});
    grip.closeSubpath();
    painter.setBrush(blend(f.plasticLight, Qt::white, theme.flat ? 0.25 : 0.06));
    painter.drawPath(grip);
    painter.setPen(outlinePen(theme.dark || theme.flat ? QColor(Qt::white) : f.digits, 0.66));
    painter.drawLine(QPointF(0, -5.7), QPointF(0, -2.4));
    painter.restore();
}

void paintMeterSockets(QPainter& painter, const PartScene& scene) {
    const Theme& theme = scene.theme;
    const auto& places = scene.part.kind->package->footprint;
    const auto side = scene.place.mirrored ? Qt::AlignRight : Qt::AlignLeft;
    drawText(painter, QString::fromUtf8("V \u03a9 mA"), faced(scene, QPointF(kSocketWordX, kUpperWordY)), kSocketWord,
             theme.plusLine, side);
    drawText(painter, QStringLiteral("com"), faced(scene, QPointF(kSocketWordX, places[1].y)), kSocketWord,
             theme.furnishing.panelInk, side);
    for (const Point place : places) paintSocket(painter, theme, faced(scene, toQt(place)), kMeterSocketMm);
    drawText(painter, QString::fromStdString(scene.part.id), faced(scene, kIdAt), kId, theme.furnishing.panelDim);
}

/// The word beside the number, or the reason why there is none.
void paintWhy(QPainter& painter, const QString& why, const QColor& ink) {
    const QRectF room = kMeterDisplay.adjusted(kInsetMm, 0, -kInsetMm, 0);
    // Two lines of about the same length; long ids make them smaller.
    qsizetype cut = why.size();
    for (qsizetype i = why.indexOf(QLatin1Char(' ')); i >= 0; i = why.indexOf(QLatin1Char(' '), i + 1)) {
        if (std::abs(2 * i - why.size()) < std::abs(2 * cut - why.size())) cut = i;
    }
    const QStringList lines{why.left(cut), why.mid(cut + 1)};
    Lettering lettering = kWhy;
    for (const QString& line : lines)
        lettering.sizeMm = std::min(lettering.sizeMm, kWhy.sizeMm * room.width() / textWidthMm(line, kWhy));
    for (int i = 0; i < 2; ++i)
        drawText(painter, lines[i], {room.left(), kUnitY + (i - 0.5) * kWhyLineMm}, lettering, ink, Qt::AlignLeft);
}

class MultimeterPainter final : public PackagePainter {
public:
    void paint(QPainter& painter, const PartScene& scene) const override {
        painter.save();
        painter.translate(cornerMm(scene));
        paintCase(painter, scene);
        paintMeterDisplay(painter, scene);
        paintPositions(painter, scene);
        paintKnob(painter, scene);
        paintMeterSockets(painter, scene);
        painter.restore();
        if (scene.compact) return;
        for (const int lead : {0, 1})
            paintTestLead(painter, scene, lead, {leadColour(scene.theme, lead == 0), kMeterSocketMm});
    }

    QRectF figures(const PartScene& scene) const override {
        return kMeterDisplay.united(faced(scene, kSound)).translated(cornerMm(scene));
    }
    double figuresEmMm() const override { return kMeterDigits.sizeMm; }

    std::optional<DisplayFigures> figuresAt(const Snapshot& instant, int part, int beat) const override {
        const auto reading = meterReading(instant, part);
        if (!reading || !reading->on) return std::nullopt;
        if (!reading->why.empty()) return DisplayFigures{reading->digits, {}, {}, reading->why};
        const Part& meter = instant.layout->bench->parts[static_cast<std::size_t>(part)];
        const std::string average = reading->average.empty() ? std::string() : ", " + std::string(reading->average);
        return DisplayFigures{reading->digits,
                              reading->unit,
                              dialLabel(meter) + average,
                              {},
                              reading->beeps ? beat % static_cast<int>(kSoundRadii.size()) : -1};
    }

    void paintFigures(QPainter& painter, const PartScene& scene, const DisplayFigures& shown) const override {
        const Furnishing& f = scene.theme.furnishing;
        const double left = kMeterDisplay.left() + kInsetMm, right = kMeterDisplay.right() - kInsetMm;
        painter.save();
        painter.translate(cornerMm(scene));
        const QString figure = QString::fromStdString(shown.figure);
        Lettering digits = kMeterDigits;  // a minus before four figures stands closer
        digits.sizeMm *= std::min(1.0, (right - left) / textWidthMm(figure, digits));
        drawText(painter, figure, {right, kDigitsY}, digits, f.digits, Qt::AlignRight);
        if (shown.why.empty()) {
            drawText(painter, QString::fromStdString(shown.quantity), {left, kUnitY}, kQuantity, f.digitsDim,
                     Qt::AlignLeft);
            drawText(painter, QString::fromStdString(shown.unit), {right, kUnitY}, kUnit, f.digits, Qt::AlignRight);
            if (shown.beat >= 0) paintBeepMark(painter, kBeepAt, 0.9, f.digits);
            if (shown.beat >= 0) paintSound(painter, scene, shown.beat);
        } else {
            paintWhy(painter, QString::fromStdString(shown.why), f.digitsDim);
        }
        painter.restore();
    }

    std::vector<PartPath> paths(const PartScene& scene) const override { return supplyPaths(scene); }

    QPainterPath body(const PartScene& scene) const override {
        return caseShape(scene.bodyRect().size()).translated(cornerMm(scene));
    }

    QPainterPath control(const PartScene& scene) const override {
        return disc(kDial, kDialReachMm).translated(cornerMm(scene));
    }

    std::optional<int> dialPosition(const PartScene& scene, QPointF at) const override {
        const QPointF away = at - cornerMm(scene) - kDial;
        if (std::hypot(away.x(), away.y()) < kHubMm) return std::nullopt;
        const double degrees = std::atan2(away.x(), -away.y()) * 180 / std::numbers::pi;
        const auto farness = [degrees](double position) { return std::abs(std::remainder(position - degrees, 360.0)); };
        return static_cast<int>(std::ranges::min_element(kPositionDegrees, {}, farness) - kPositionDegrees.begin());
    }
};

}  // namespace

const PackagePainter& multimeterPainter() {
    static const MultimeterPainter kPainter;
    return kPainter;
}

}  // namespace tiepoint::ui
