#pragma once
// Gathers many small rectangles into a region of few: whole cells of a grid, rows of them joined.

#include "ui/paint/grid_index.h"

#include <QRegion>

#include <vector>

namespace tiepoint::ui {

/// Pixels of a region.
int areaOf(const QRegion& region);

class CellGrid {
public:
    CellGrid() = default;
    /// Rectangles outside of `area` are left out. `cell`: side of a cell, in pixels.
    explicit CellGrid(const QRect& area, int cell = 32);
    void add(const QRectF& rect);
    void add(const QRect& rect);
    /// Asks anew for each cell that a rectangle touches whether it is taken: `isTaken(QRect of the cell)`.
    template <class IsTaken>
    void ask(const QRect& rect, IsTaken isTaken) {
        const QRect cells = cellsOf(QRectF(rect)) & cells_;
        for (int y = cells.top(); y <= cells.bottom(); ++y) {
            for (int x = cells.left(); x <= cells.right(); ++x)
                at(x, y) = isTaken(QRect(x * cell_, y * cell_, cell_, cell_));
        }
    }
    QRegion region() const;
    /// Calls `work(QRect)` with the parts of a rectangle, within the area, that lie in taken cells; rows of them joined.
    template <class Work>
    void forTaken(const QRect& rect, Work work) const {
        if (rect.isEmpty()) return;
        const QRect cells = cellsOf(QRectF(rect).adjusted(0, 0, -1, -1)) & cells_;
        for (int y = cells.top(); y <= cells.bottom(); ++y) {
            for (int x = cells.left(); x <= cells.right(); ++x) {
                if (!isTaken(x, y)) continue;
                const int first = x;
                while (x < cells.right() && isTaken(x + 1, y)) ++x;
                work(QRect(first * cell_, y * cell_, (x + 1 - first) * cell_, cell_) & rect);
            }
        }
    }

private:
    void take(const QRect& wanted);
    QRect cellsOf(const QRectF& rect) const;
    std::size_t indexOf(int x, int y) const { return gridIndex(x - cells_.left(), y - cells_.top(), cells_.width()); }
    bool isTaken(int x, int y) const { return taken_[indexOf(x, y)] != 0; }
    char& at(int x, int y) { return taken_[indexOf(x, y)]; }

    int cell_ = 1;
    QRect cells_;              ///< in cells
    std::vector<char> taken_;  ///< by row
};

}  // namespace tiepoint::ui
