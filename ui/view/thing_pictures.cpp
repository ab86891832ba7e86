#include "ui/view/thing_pictures.h"

#include "ui/paint/bench_painter.h"
#include "ui/theme/panels.h"
#include "ui/tray/sample.h"

#include <algorithm>

namespace tiepoint::ui {
namespace {

constexpr double kMostPixelsPerMm = 5;
constexpr double kPaleThing = 0.3;

TrayItem itemOf(const Pictured& thing) {
    TrayItem item;
    item.part = thing.part;
    item.jumperColour = thing.jumperColour.value_or(0);
    return item;
}

void paintThing(QPainter& painter, const Look& look, const Pictured& thing, const QRectF& box) {
    paintItem(painter, *look.theme, itemOf(thing), box, look.px(kMostPixelsPerMm));
}

/// A pen as broad as a line of the 1080-line layout.
QPen penOf(const Look& look, const QColor& colour, double at1080) {
    return {colour, look.px(at1080), Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin};
}

void paintOpening(QPainter& painter, const Look& look, QPointF at) {
    const double half = look.px(2.6);
    painter.fillRect(QRectF(at.x() - half, at.y() - half, 2 * half, 2 * half),
                     look.theme->dark ? look.theme->bevelLight : look.theme->hole);
}

}  // namespace

RowPicture turnedPicture(const Pictured& thing) {
    return [thing](QPainter& painter, const Look& look, const QRectF& box) {
        const double side = std::min(box.width(), box.height() * 1.25);
        const QRectF square(box.center() - QPointF(side, side) / 2, QSizeF(side, side));
        painter.save();
        painter.setOpacity(kPaleThing);
        paintThing(painter, look, thing, square);
        painter.setOpacity(1);
        painter.translate(box.center());
        painter.rotate(90);
        const double less = box.height();
        paintThing(painter, look, thing, QRectF(-less / 2, -less / 2, less, less));
        painter.restore();
    };
}

RowPicture twicePicture(const Pictured& thing) {
    return [thing](QPainter& painter, const Look& look, const QRectF& box) {
        const QSizeF size(box.width() * 0.62, box.height() * 0.72);
        paintThing(painter, look, thing, {box.topLeft(), size});
        paintThing(painter, look, thing, {box.bottomRight() - QPointF(size.width(), size.height()), size});
    };
}

RowPicture emptyHolesPicture() {
    return [](QPainter& painter, const Look& look, const QRectF& box) {
        constexpr int kColumns = 4, kRows = 2;
        const QSizeF size(std::min(box.width(), look.px(42)), std::min(box.height(), look.px(26)));
        const QRectF board(box.center() - QPointF(size.width(), size.height()) / 2, size);
        painter.setPen(penOf(look, look.theme->dark ? look.theme->dimText : look.theme->boardEdge, 1.6));
        painter.setBrush(look.theme->boardTop);
        painter.drawRoundedRect(board, look.px(2), look.px(2));
        for (int column = 0; column < kColumns; ++column)
            for (int row = 0; row < kRows; ++row)
                paintOpening(painter, look,
                             {board.left() + board.width() * (column + 0.5) / kColumns,
                              board.top() + board.height() * (row + 0.5) / kRows});
    };
}

RowPicture openContactPicture() {
    return [](QPainter& painter, const Look& look, const QRectF& box) {
        const QPointF middle = box.center();
        const double reach = look.px(21), contact = look.px(9);
        painter.setPen(penOf(look, look.theme->text, 2.6));
        painter.drawLine(middle - QPointF(reach, 0), middle - QPointF(contact, 0));
        painter.drawLine(middle + QPointF(contact, 0), middle + QPointF(reach, 0));
        painter.drawLine(middle - QPointF(contact, 0), middle + QPointF(contact * 0.72, -look.px(9)));
        painter.setBrush(look.theme->card);
        for (const double side : {-1.0, 1.0})
            painter.drawEllipse(middle + QPointF(side * contact, 0), look.px(2.6), look.px(2.6));
    };
}

RowPicture sheetPicture() {
    return [](QPainter& painter, const Look& look, const QRectF& box) {
        constexpr int kLines = 3;
        const QSizeF size(look.px(28), look.px(28));
        const QRectF sheet(box.center() - QPointF(size.width(), size.height()) / 2, size);
        painter.setPen(penOf(look, look.theme->dimText, 1.8));
        painter.setBrush(look.theme->card);
        painter.drawRoundedRect(sheet, look.px(2), look.px(2));
        for (int line = 1; line <= kLines; ++line) {
            const double y = sheet.top() + sheet.height() * line / (kLines + 1);
            painter.drawLine(QPointF(sheet.left() + look.px(5), y), QPointF(sheet.right() - look.px(5), y));
        }
    };
}

RowPicture tagPicture() {
    return [](QPainter& painter, const Look& look, const QRectF& box) {
        const QRectF tag(box.center().x() - look.px(18), box.top() + look.px(1), look.px(36), look.px(17));
        const QPointF ring(box.center().x(), box.bottom() - look.px(5));
        painter.setPen(penOf(look, look.theme->text, 2));
        painter.drawLine(QPointF(ring.x(), tag.bottom()), ring - QPointF(0, look.px(4)));
        painter.setBrush(look.theme->card);
        painter.drawRoundedRect(tag, look.px(3), look.px(3));
        painter.drawLine(tag.center() - QPointF(look.px(9), 0), tag.center() + QPointF(look.px(9), 0));
        painter.drawEllipse(ring, look.px(4), look.px(4));
    };
}

RowPicture twoHolesPicture() {
    return [](QPainter& painter, const Look& look, const QRectF& box) {
        const double away = look.px(16);
        QPen dotted = penOf(look, look.theme->text, 2);
        dotted.setDashPattern({0.1, 2});
        painter.setPen(dotted);
        painter.drawLine(box.center() - QPointF(away, 0), box.center() + QPointF(away, 0));
        painter.setPen(penOf(look, look.theme->text, 2));
        painter.setBrush(look.theme->card);
        for (const double side : {-1.0, 1.0}) {
            painter.drawEllipse(box.center() + QPointF(side * away, 0), look.px(6), look.px(6));
            paintOpening(painter, look, box.center() + QPointF(side * away, 0));
        }
    };
}

RowPicture laidPicture(int jumperColour, bool flat) {
    return [jumperColour, flat](QPainter& painter, const Look& look, const QRectF& box) {
        if (!flat) return paintThing(painter, look, {std::nullopt, jumperColour}, box);
        const QPointF half(look.px(21), 0), coat(look.px(16), 0);
        painter.setPen(penOf(look, look.theme->metalEdge, 3));
        painter.drawLine(box.center() - half, box.center() + half);
        painter.setPen(QPen(look.theme->text, look.px(8), Qt::SolidLine, Qt::FlatCap));
        painter.drawLine(box.center() - coat - QPointF(look.px(0.8), 0),
                         box.center() + coat + QPointF(look.px(0.8), 0));
        painter.setPen(
            QPen(look.theme->jumpers[static_cast<std::size_t>(jumperColour)], look.px(6), Qt::SolidLine, Qt::FlatCap));
        painter.drawLine(box.center() - coat, box.center() + coat);
    };
}

}  // namespace tiepoint::ui
