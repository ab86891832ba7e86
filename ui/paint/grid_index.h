#pragma once
// Where a cell lies in a list of all cells of a grid, row after row.

#include <cstddef>

namespace tiepoint::ui {

/// Of a grid of so many columns; row and column count from 0.
constexpr std::size_t gridIndex(int column, int row, int columns) {
    return static_cast<std::size_t>(row) * static_cast<std::size_t>(columns) + static_cast<std::size_t>(column);
}

/// How many cells there are.
constexpr std::size_t gridSize(int columns, int rows) {
    return static_cast<std::size_t>(columns) * static_cast<std::size_t>(rows);
}

}  // namespace tiepoint::ui
