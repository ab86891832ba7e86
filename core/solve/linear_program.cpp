#include "core/solve/linear_program.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <queue>

namespace tiepoint {

LinearProgram::LinearProgram(std::span<const Entry> entries, std::span<const Entry> pivots) {
    numberPivots(pivots);
    eliminateSymbolically(entries);
    inverse_.resize(size());
}

void LinearProgram::numberPivots(std::span<const Entry> pivots) {
    const int count = static_cast<int>(pivots.size());
    diagonal_.resize(count);
    positionOfRow_.resize(count);
    positionOfColumn_.resize(count);
    for (int i = 0; i < count; ++i) {
        positionOfRow_[pivots[i].row] = i;
        positionOfColumn_[pivots[i].column] = i;
    }
}

namespace {

/// Entries sorted into rows by counting: positions of columns, and which entry each came from.
struct Rows {
    std::vector<int> first, column, entry;

    Rows(std::span<const LinearProgram::Entry> entries, std::span<const int> rowPosition, std::span<const int> columnPosition)
        : first(rowPosition.size() + 1, 0), column(entries.size()), entry(entries.size()) {
        for (const auto& e : entries) ++first[rowPosition[e.row] + 1];
        for (std::size_t i = 1; i < first.size(); ++i) first[i] += first[i - 1];
        std::vector<int> next(first.begin(), first.end() - 1);
        for (std::size_t k = 0; k < entries.size(); ++k) {
            const int place = next[rowPosition[entries[k].row]]++;
            column[place] = columnPosition[entries[k].column];
            entry[place] = static_cast<int>(k);
        }
    }
};

}  // namespace

void LinearProgram::eliminateSymbolically(std::span<const Entry> entries) {
    const int count = size();
    const Rows rows(entries, positionOfRow_, positionOfColumn_);
    slotOfEntry_.resize(entries.size());
    lowerFirst_.assign(1, 0);
    upperFirst_.assign(1, 0);
    std::vector<int> seenInRow(count, -1), slotOfColumn(count), upperSlot(count);
    std::vector<int> left, right, heap;

    for (int row = 0; row < count; ++row) {
        left.clear();
        right.clear();
        const auto meet = [&](int column) {
            if (seenInRow[column] == row) return;
            seenInRow[column] = row;
            if (column < row) {
                heap.push_back(column);
                std::push_heap(heap.begin(), heap.end(), std::greater<>());
            } else if (column > row) {
                right.push_back(column);
            }
        };
        for (int k = rows.first[row]; k < rows.first[row + 1]; ++k) meet(rows.column[k]);
        // Every pivot left of the diagonal brings what stands right of it: fill, in ascending order.
        while (!heap.empty()) {
            std::pop_heap(heap.begin(), heap.end(), std::greater<>());
            const int pivot = heap.back();
            heap.pop_back();
            left.push_back(pivot);
            for (int k = upperFirst_[pivot]; k < upperFirst_[pivot + 1]; ++k) meet(upperColumn_[k]);
        }
        std::sort(right.begin(), right.end());

        for (int column : left) slotOfColumn[column] = slotCount_++;
        slotOfColumn[row] = diagonal_[row] = slotCount_++;
        upperSlot[row] = slotCount_;
        for (int column : right) slotOfColumn[column] = slotCount_++;
        upperColumn_.insert(upperColumn_.end(), right.begin(), right.end());
        upperFirst_.push_back(static_cast<int>(upperColumn_.size()));

        for (int k = rows.first[row]; k < rows.first[row + 1]; ++k) slotOfEntry_[rows.entry[k]] = slotOfColumn[rows.column[k]];
        for (int pivot : left) {
            const int length = upperFirst_[pivot + 1] - upperFirst_[pivot];
            lowers_.push_back({slotOfColumn[pivot], pivot, upperSlot[pivot], length});
            for (int k = upperFirst_[pivot]; k < upperFirst_[pivot + 1]; ++k) targets_.push_back(slotOfColumn[upperColumn_[k]]);
        }
        lowerFirst_.push_back(static_cast<int>(lowers_.size()));
    }
}

bool LinearProgram::run(std::span<double> values, std::span<double> right) {
    constexpr double kSmallestPivot = 1e-200;  // far below any conductance; only a structural zero gets here
    double* const a = values.data();
    double* const y = right.data();
    const Lower* lower = lowers_.data();
    const int* target = targets_.data();
    const int count = size();

    for (int row = 0; row < count; ++row) {
        double sum = y[row];
        for (const Lower* end = lowers_.data() + lowerFirst_[row + 1]; lower != end; ++lower) {
            const double factor = a[lower->slot] * inverse_[lower->pivot];
            const double* const source = a + lower->first;
            for (int k = 0; k < lower->length; ++k) a[target[k]] -= factor * source[k];
            target += lower->length;
            sum -= factor * y[lower->pivot];
        }
        y[row] = sum;
        const double pivot = a[diagonal_[row]];
        if (!(std::abs(pivot) > kSmallestPivot) || !std::isfinite(pivot)) {
            failedPosition_ = row;
            return false;
        }
        inverse_[row] = 1 / pivot;
    }
    for (int row = count - 1; row >= 0; --row) {
        double sum = y[row];
        const double* slot = a + diagonal_[row] + 1;
        for (int k = upperFirst_[row]; k < upperFirst_[row + 1]; ++k) sum -= *slot++ * y[upperColumn_[k]];
        y[row] = sum * inverse_[row];
    }
    return true;
}

}  // namespace tiepoint
