#pragma once
// A table of values by row and column, in one piece of memory. Plain value.

#include <cassert>
#include <cstddef>
#include <vector>

namespace tiepoint {

template <class T>
class Grid {
public:
    Grid() = default;
    Grid(std::size_t rows, std::size_t columns, T value = {})
        : rows_(rows),
          columns_(columns),
          values_(rows * columns, value) {}

    std::size_t rows() const { return rows_; }
    std::size_t columns() const { return columns_; }

    /// Row and column as indices of things, which are never negative.
    T& at(int row, int column) { return values_[place(row, column)]; }
    const T& at(int row, int column) const { return values_[place(row, column)]; }
    std::vector<T>& all() { return values_; }
    const T* row(std::size_t row) const { return values_.data() + row * columns_; }

private:
    std::size_t place(int row, int column) const {
        assert(row >= 0 && column >= 0 && static_cast<std::size_t>(row) < rows_ &&
               static_cast<std::size_t>(column) < columns_);
        return static_cast<std::size_t>(row) * columns_ + static_cast<std::size_t>(column);
    }

    std::size_t rows_ = 0, columns_ = 0;
    std::vector<T> values_;
};

}  // namespace tiepoint
