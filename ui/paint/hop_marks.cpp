#include "ui/paint/hop_marks.h"

#include "ui/paint/lettering.h"
#include "ui/paint/metal_painter.h"
#include "ui/paint/shade.h"

#include <QPainterPath>

#include <algorithm>
#include <cmath>

namespace tiepoint::ui {
namespace {

constexpr double kWrongRingMm = 1.1, kHopLift = 0.35, kLeastLiftMm = 2.2, kHopHeadMm = 1.0, kHopMm = 0.42,
                 kHopCasingMm = 0.9;
constexpr double kColumnRimMm = 0.36, kColumnDashMm = 0.26, kColumnCasingMm = 0.6, kColumnRoomMm = 0.25,
                 kColumnRadiusMm = 0.7;
constexpr double kTint = 0.22;
constexpr double kNumberMm = 2.1, kNumberLiftMm = 1.5, kNumberRoomMm = 0.35;

struct HopMark {
    Point from, to;
    QPainterPath way() const {
        const QPointF a = toQt(from), b = toQt(to);
        const double length = std::hypot(b.x() - a.x(), b.y() - a.y());
        const QPointF over = (a + b) / 2 - QPointF(0, 2 * std::max(kLeastLiftMm, kHopLift * length));
        QPainterPath path(a);
        path.quadTo(over, b);
        return path;
    }
    void paint(QPainter& painter, const Theme& theme) const {
        QPainterPath path = way();
        const double angle = path.angleAtPercent(1) * M_PI / 180;
        const QPointF ahead(std::cos(angle), -std::sin(angle)), aside(-ahead.y(), ahead.x()), tip = toQt(to);
        path.moveTo(tip - kHopHeadMm * ahead + 0.7 * kHopHeadMm * aside);
        path.lineTo(tip);
        path.lineTo(tip - kHopHeadMm * ahead - 0.7 * kHopHeadMm * aside);
        path.addEllipse(toQt(from), kWrongRingMm, kWrongRingMm);
        painter.setBrush(Qt::NoBrush);
        painter.strokePath(path, outlinePen(theme.arrowCasing, kHopCasingMm));
        painter.strokePath(path, outlinePen(theme.accent, kHopMm));
    }
    friend bool operator==(const HopMark&, const HopMark&) = default;
};

/// One column of a board, from its first hole to its last.
struct ColumnMark {
    Point first, last;
    int number = 0;
    bool isRight = false;

    QRectF frame() const {
        const QRectF strip = stripFrame(toQt(first), toQt(last));
        return strip.adjusted(-kColumnRoomMm, -kColumnRoomMm, kColumnRoomMm, kColumnRoomMm);
    }
    QPointF numberAt() const { return {frame().center().x(), frame().top() - kNumberLiftMm}; }
    QString words() const { return QString::number(number); }
    Lettering lettering() const { return {kNumberMm, QFont::DemiBold}; }
    QRectF numberBox() const {
        const double half = textWidthMm(words(), lettering()) / 2 + kNumberRoomMm;
        const double high = kNumberMm * kCapHeight / 2 + kNumberRoomMm;
        return {numberAt() - QPointF(half, high), QSizeF(2 * half, 2 * high)};
    }
    QRectF room() const {
        return (frame() | numberBox()).adjusted(-kColumnCasingMm, -kColumnCasingMm, kColumnCasingMm, kColumnCasingMm);
    }

    void paint(QPainter& painter, const Theme& theme) const {
        const QPainterPath box = roundedBox(frame(), kColumnRadiusMm);
        const QColor ink = isRight ? theme.accent : theme.text;
        if (isRight) painter.fillPath(box, faded(theme.accent, kTint));
        painter.setBrush(Qt::NoBrush);
        const double breadth = isRight ? kColumnRimMm : kColumnDashMm;
        painter.strokePath(box, outlinePen(theme.arrowCasing, breadth + kColumnCasingMm));
        QPen pen = outlinePen(ink, breadth);
        if (!isRight) pen.setDashPattern({3, 2.4});
        pen.setCapStyle(Qt::FlatCap);
        painter.strokePath(box, pen);
        painter.fillPath(roundedBox(numberBox(), kNumberRoomMm), theme.boardTop);
        drawText(painter, words(), numberAt(), lettering(), ink);
    }
    friend bool operator==(const ColumnMark&, const ColumnMark&) = default;
};

/// Rails have no columns: there the arrow says where.
void addColumn(Patches& patches, const Picture& picture, const Hole& hole, bool isRight) {
    if (isRail(hole.line) || !holeMm(picture.bench(), hole)) return;
    const bool upper = hole.line <= Line::E;
    ColumnMark mark;
    mark.first = picture.seenAt({hole.board, upper ? Line::A : Line::F, hole.number});
    mark.last = picture.seenAt({hole.board, upper ? Line::E : Line::J, hole.number});
    mark.number = hole.number;
    mark.isRight = isRight;
    patches.push_back(fixedPatch(mark.room(), mark));
}

}  // namespace

void addHop(Patches& patches, Point from, Point to) {
    const HopMark mark{from, to};
    constexpr double kRoomMm = kWrongRingMm + kHopCasingMm + kHopHeadMm;
    patches.push_back(
        fixedPatch(mark.way().boundingRect().adjusted(-kRoomMm, -kRoomMm, kRoomMm, kRoomMm), HopMark(mark)));
}

void addHopMarks(Patches& patches, const Picture& picture) {
    if (!picture.marks.hop) return;
    const Hop& hop = *picture.marks.hop;
    const bool isOneColumn = hop.is.board == hop.belongs.board && hop.is.number == hop.belongs.number &&
                             (hop.is.line <= Line::E) == (hop.belongs.line <= Line::E);
    if (!hop.isDone && !isOneColumn) addColumn(patches, picture, hop.is, false);
    addColumn(patches, picture, hop.belongs, true);
    if (hop.hasArrow && holeMm(picture.bench(), hop.is) && holeMm(picture.bench(), hop.belongs))
        addHop(patches, picture.seenAt(hop.is), picture.seenAt(hop.belongs));
}

}  // namespace tiepoint::ui
