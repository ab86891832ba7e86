#include "ui/view/cell_grid.h"

#include <QList>

#include <cmath>

namespace tiepoint::ui {

int areaOf(const QRegion& region) {
    int area = 0;
    for (const QRect& rect : region) area += rect.width() * rect.height();
    return area;
}

QRect CellGrid::cellsOf(const QRectF& rect) const {
    const auto cell = [this](double x) { return static_cast<int>(std::floor(x / cell_)); };
    return {QPoint(cell(rect.left()), cell(rect.top())), QPoint(cell(rect.right()), cell(rect.bottom()))};
}

CellGrid::CellGrid(const QRect& area, int cell)
    : cell_(cell),
      cells_(area.isEmpty() ? QRect() : cellsOf(QRectF(area).adjusted(0, 0, -1, -1))),
      taken_(gridSize(cells_.width(), cells_.height()), 0) {}

void CellGrid::add(const QRectF& rect) { take(cellsOf(rect)); }

void CellGrid::add(const QRect& rect) {
    if (!rect.isEmpty()) take(cellsOf(QRectF(rect).adjusted(0, 0, -1, -1)));
}

void CellGrid::take(const QRect& wanted) {
    const QRect cells = wanted & cells_;
    for (int y = cells.top(); y <= cells.bottom(); ++y) {
        for (int x = cells.left(); x <= cells.right(); ++x) at(x, y) = 1;
    }
}

QRegion CellGrid::region() const {
    QList<QRect> rects;
    qsizetype lastRow = 0;  // where the rectangles of the row above begin
    for (int y = 0; y < cells_.height(); ++y) {
        QList<QRect> row;
        for (int x = 0; x < cells_.width(); ++x) {
            if (!taken_[gridIndex(x, y, cells_.width())]) continue;
            const int first = x;
            while (x < cells_.width() && taken_[gridIndex(x, y, cells_.width())]) ++x;
            row << QRect((cells_.left() + first) * cell_, (cells_.top() + y) * cell_, (x - first) * cell_, cell_);
        }
        const QList<QRect> above = rects.mid(lastRow);
        bool same = !row.isEmpty() && above.size() == row.size();
        for (qsizetype i = 0; same && i < row.size(); ++i)
            same = above[i].left() == row[i].left() && above[i].width() == row[i].width() &&
                   above[i].bottom() + 1 == row[i].top();
        if (same) {
            for (qsizetype i = lastRow; i < rects.size(); ++i) rects[i].setBottom(rects[i].bottom() + cell_);
        } else {
            lastRow = rects.size();
            rects << row;
        }
    }
    QRegion region;
    region.setRects(rects.constData(), static_cast<int>(rects.size()));
    return region;
}

}  // namespace tiepoint::ui
