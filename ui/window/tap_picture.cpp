#include "ui/window/tap_picture.h"

#include "ui/theme/panels.h"

#include <QPainterPath>

#include <cmath>
#include <numbers>

namespace tiepoint::ui {
namespace {

constexpr double kPipe = 26, kNarrow = 10;  ///< breadth of the pipe
constexpr double kRingHeight = 190, kRingInset = 45;
constexpr double kRingShare = 0.42;  ///< of the breadth; the words stand beside
constexpr int kBlades = 6;
constexpr double kRow = 2;  ///< of the words: room for two lines

struct Line {
    const char *bench, *water;
};
constexpr Line kLike[] = {
    {"Supply", "a pump: it pushes the water round, and uses none of it up"},
    {"Switch", "a tap: open it and water runs; an open switch stops current"},
    {"Resistor", "a narrow place: it slows the water all round the ring"},
    {"LED", "a wheel that turns while water runs, one way only"},
};
constexpr const char* kFails[] = {
    "An open tap lets water run. An open switch stops current.",
    "Water spills from a cut pipe. Current just stops, everywhere.",
    "A pipe must fill first. Metal is always full: everything starts at once.",
    "Water has weight and runs on. Current stops with its cause.",
};

QColor water(const Theme& theme) { return theme.accent; }

/// A stretch of pipe: dark edge, pale wall, water within.
void paintPipe(QPainter& painter, const Look& look, const QPainterPath& line, double breadth) {
    const Theme& theme = *look.theme;
    const auto stroke = [&](const QColor& colour, double width) {
        painter.strokePath(line, QPen(colour, look.px(width), Qt::SolidLine, Qt::FlatCap, Qt::RoundJoin));
    };
    stroke(theme.text, breadth + 8);
    stroke(theme.card, breadth + 4);
    stroke(mix(theme.card, water(theme), 0.45), breadth);
}

void paintArrowHead(QPainter& painter, const Look& look, QPointF at, double angle) {
    const double size = look.px(8);
    painter.save();
    painter.translate(at);
    painter.rotate(angle);
    QPainterPath head(QPointF(size, 0));
    head.lineTo(-size * 0.7, size * 0.8);
    head.lineTo(-size * 0.2, 0);
    head.lineTo(-size * 0.7, -size * 0.8);
    head.closeSubpath();
    painter.fillPath(head, look.theme->text);
    painter.restore();
}

void paintNamed(QPainter& painter, WordSheet& sheet, const Look& look, QPointF at, const char* what, const char* stands,
                Qt::Alignment side) {
    const double width = look.px(230), line = look.px(26);
    const double left = side & Qt::AlignRight ? at.x() - width : side & Qt::AlignHCenter ? at.x() - width / 2 : at.x();
    sheet.draw(painter, QRectF(left, at.y(), width, line), QString::fromLatin1(what),
               {look.font(text::kSmall + 1, QFont::DemiBold), look.theme->text, side | Qt::AlignVCenter});
    sheet.draw(painter, QRectF(left, at.y() + line, width, line), QString::fromLatin1(stands),
               {look.font(text::kSmall), look.theme->dimText, side | Qt::AlignVCenter});
}

void paintTapRing(QPainter& painter, WordSheet& sheet, const Look& look, const QRectF& ring) {
    const Theme& theme = *look.theme;
    const double radius = look.px(30);
    QPainterPath whole;
    whole.addRoundedRect(ring, radius, radius);
    paintPipe(painter, look, whole, kPipe);
    const QPointF top(ring.center().x(), ring.top()), right(ring.right(), ring.center().y()),
        bottom(ring.center().x(), ring.bottom()), left(ring.left(), ring.center().y());

    // The narrow place, in the upper run.
    const double half = look.px(70);
    QPainterPath gap(top - QPointF(half, 0));
    gap.lineTo(top + QPointF(half, 0));
    painter.strokePath(gap, QPen(theme.card, look.px(kPipe + 9), Qt::SolidLine, Qt::FlatCap));
    paintPipe(painter, look, gap, kNarrow);
    painter.setPen(QPen(theme.text, look.px(2)));
    for (const double side : {-1.0, 1.0})
        painter.drawLine(top + QPointF(side * half, -look.px(kPipe / 2 + 4)),
                         top + QPointF(side * half, look.px(kPipe / 2 + 4)));

    // The pump at the left, the wheel at the right.
    const double pump = look.px(38);
    painter.setPen(QPen(theme.text, look.px(3)));
    painter.setBrush(mix(theme.card, theme.cardEdge, 0.6));
    painter.drawEllipse(left, pump, pump);
    paintArrowHead(painter, look, left, -90);
    painter.setBrush(theme.card);
    painter.drawEllipse(right, pump, pump);
    for (int i = 0; i < kBlades; ++i) {
        const double angle = i * 2 * std::numbers::pi / kBlades;
        painter.drawLine(right, right + QPointF(std::cos(angle), std::sin(angle)) * look.px(32));
    }

    // The tap below: a valve with its handle.
    QPainterPath valve(bottom + QPointF(-look.px(26), -look.px(22)));
    valve.lineTo(bottom + QPointF(look.px(26), look.px(22)));
    valve.lineTo(bottom + QPointF(look.px(26), -look.px(22)));
    valve.lineTo(bottom + QPointF(-look.px(26), look.px(22)));
    valve.closeSubpath();
    painter.setBrush(mix(theme.card, theme.cardEdge, 0.6));
    painter.drawPath(valve);
    painter.drawLine(bottom, bottom - QPointF(0, look.px(34)));
    painter.drawLine(bottom - QPointF(look.px(18), look.px(34)), bottom + QPointF(look.px(18), -look.px(34)));

    for (const double share : {0.25, 0.75}) {
        paintArrowHead(painter, look, {ring.left() + ring.width() * share, ring.top()}, 0);
        paintArrowHead(painter, look, {ring.left() + ring.width() * (1 - share), ring.bottom()}, 180);
    }
    paintNamed(painter, sheet, look, left + QPointF(look.px(52), -look.px(26)), "Pump", "the supply", Qt::AlignLeft);
    paintNamed(painter, sheet, look, right - QPointF(look.px(52), look.px(26)), "Wheel", "the LED", Qt::AlignRight);
    paintNamed(painter, sheet, look, top + QPointF(0, look.px(20)), "Narrow place", "the resistor", Qt::AlignHCenter);
    paintNamed(painter, sheet, look, bottom - QPointF(0, look.px(90)), "Tap", "the switch", Qt::AlignHCenter);
}

}  // namespace

void paintTapPicture(QPainter& painter, WordSheet& sheet, const Look& look, const QRectF& box) {
    painter.save();
    const QRectF ring(box.left() + look.px(kRingInset), box.center().y() - look.px(kRingHeight) / 2,
                      kRingShare * box.width() - 2 * look.px(kRingInset), look.px(kRingHeight));
    paintTapRing(painter, sheet, look, ring);
    const double left = box.left() + kRingShare * box.width() + look.px(10);
    const double top = box.top(), column = (box.right() - left) / 2, line = look.px(27);
    const auto heading = [&](double x, const char* words) {
        sheet.draw(painter, QRectF(x, top, column, line), QString::fromLatin1(words),
                   {look.font(text::kSmall + 1, QFont::DemiBold), look.theme->text, Qt::AlignLeft | Qt::AlignVCenter});
    };
    const auto words = [&](double x, int row, const QString& text) {
        sheet.draw(painter, QRectF(x, top + line * 1.3 + row * line * kRow, column - look.px(18), line * kRow), text,
                   {look.font(text::kSmall - 2), look.theme->dimText, Qt::AlignLeft | Qt::AlignTop, true});
    };
    heading(left, "Where it helps");
    for (int i = 0; i < 4; ++i)
        words(left, i,
              QStringLiteral("%1 \u2013 %2")
                  .arg(QString::fromLatin1(kLike[i].bench), QString::fromLatin1(kLike[i].water)));
    heading(left + column, "Where it fails");
    for (int i = 0; i < 4; ++i) words(left + column, i, QString::fromLatin1(kFails[i]));
    painter.restore();
}

}  // namespace tiepoint::ui
