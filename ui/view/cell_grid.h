#pragma once
// Gathers many small rectangles into a region of few: whole cells of a grid, rows of them joined.

#include <QRegion>

#include <vector>

namespace tiepoint::ui {

class CellGrid {
public:
    CellGrid() = default;
    /// Rectangles outside of `area` are left out. `cell`: side of a cell, in pixels.
    explicit CellGrid(const QRect& area, int cell = 32);
    void add(const QRectF& rect);
    /// Asks anew for each cell that a rectangle touches whether it is taken: `isTaken(QRect of the cell)`.
    template <class IsTaken>
    void ask(const QRect& rect, IsTaken isTaken) {
        const QRect cells = cellsOf(QRectF(rect)) & cells_;
        for (int y = cells.top(); y <= cells.bottom(); ++y) {
            for (int x = cells.left(); x <= cells.right(); ++x) at(x, y) = isTaken(QRect(x * cell_, y * cell_, cell_, cell_));
        }
    }
    QRegion region() const;

private:
    QRect cellsOf(const QRectF& rect) const;
    char& at(int x, int y) { return taken_[static_cast<std::size_t>((y - cells_.top()) * cells_.width() + x - cells_.left())]; }

    int cell_ = 1;
    QRect cells_;  ///< in cells
    std::vector<char> taken_;  ///< by row
};

}  // namespace tiepoint::ui
