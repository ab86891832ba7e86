#include "core/solve/linear_program.h"

#include <algorithm>
#include <cmath>
#include <functional>

namespace tiepoint {

namespace {

constexpr int kAnyLength = -1;

/// Entries sorted into rows by counting: positions of columns, and which entry each came from.
struct Rows {
    std::vector<int> first, column, entry;

    Rows(std::span<const LinearProgram::Entry> entries, std::span<const int> rowPosition,
         std::span<const int> columnPosition)
        : first(rowPosition.size() + 1, 0),
          column(entries.size()),
          entry(entries.size()) {
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

/// Finds fill row by row, then writes the list of operations pivot by pivot. Lives only while a program is compiled.
class LinearProgram::Analysis {
public:
    Analysis(LinearProgram& program, std::span<const Entry> entries)
        : program_(program),
          rows_(entries, program.positionOfRow_, program.positionOfColumn_),
          count_(program.size()),
          seenInRow_(count_, -1),
          slotOfColumn_(count_),
          upperFirst_(1, 0),
          rowsBelow_(count_, 0) {
        program.slotOfEntry_.resize(entries.size());
    }

    void run() {
        for (int row = 0; row < count_; ++row) {
            findRow(row);
            numberSlots(row);
        }
        program_.rowStart_.push_back(program_.slotCount_);
        writeOperations();
    }

private:
    /// A slot left of the diagonal, and where its targets begin.
    struct Lower {
        int row, pivot, slot, targets;
    };

    void meet(int row, int column) {
        if (seenInRow_[column] == row) return;
        seenInRow_[column] = row;
        if (column < row) {
            heap_.push_back(column);
            std::push_heap(heap_.begin(), heap_.end(), std::greater<>());
        } else if (column > row) {
            right_.push_back(column);
        }
    }

    void findRow(int row) {
        left_.clear();
        right_.clear();
        for (int k = rows_.first[row]; k < rows_.first[row + 1]; ++k) meet(row, rows_.column[k]);
        // Every pivot left of the diagonal brings what stands right of it: fill, in ascending order.
        while (!heap_.empty()) {
            std::pop_heap(heap_.begin(), heap_.end(), std::greater<>());
            const int pivot = heap_.back();
            heap_.pop_back();
            left_.push_back(pivot);
            for (int k = upperFirst_[pivot]; k < upperFirst_[pivot + 1]; ++k) meet(row, program_.upperColumn_[k]);
        }
        std::sort(right_.begin(), right_.end());
    }

    void numberSlots(int row) {
        int& next = program_.slotCount_;
        program_.rowStart_.push_back(next);
        std::vector<int>& columns = program_.columnOfSlot_;
        columns.insert(columns.end(), left_.begin(), left_.end());
        columns.push_back(row);
        columns.insert(columns.end(), right_.begin(), right_.end());
        for (int column : left_) slotOfColumn_[column] = next++;
        slotOfColumn_[row] = program_.diagonal_[row] = next++;
        for (int column : right_) slotOfColumn_[column] = next++;
        program_.upperColumn_.insert(program_.upperColumn_.end(), right_.begin(), right_.end());
        upperFirst_.push_back(static_cast<int>(program_.upperColumn_.size()));

        for (int k = rows_.first[row]; k < rows_.first[row + 1]; ++k) {
            program_.slotOfEntry_[rows_.entry[k]] = slotOfColumn_[rows_.column[k]];
        }
        for (int pivot : left_) {
            lowers_.push_back({row, pivot, slotOfColumn_[pivot], static_cast<int>(targets_.size())});
            ++rowsBelow_[pivot];
            for (int k = upperFirst_[pivot]; k < upperFirst_[pivot + 1]; ++k)
                targets_.push_back(slotOfColumn_[program_.upperColumn_[k]]);
        }
    }

    int columnsOf(int pivot) const { return upperFirst_[pivot + 1] - upperFirst_[pivot]; }

    void writeOperations() {
        std::vector<int> first(count_ + 1, 0);  // by pivot, in the sorted list of lowers
        for (int pivot = 0; pivot < count_; ++pivot) first[pivot + 1] = first[pivot] + rowsBelow_[pivot];
        std::vector<int> sorted(lowers_.size()), next(first.begin(), first.end() - 1);
        for (std::size_t k = 0; k < lowers_.size(); ++k) sorted[next[lowers_[k].pivot]++] = static_cast<int>(k);

        std::vector<int>& operations = program_.operations_;
        operations.reserve(targets_.size() + 2 * lowers_.size());
        for (int pivot = 0; pivot < count_; ++pivot) {
            std::vector<Run>& runs = program_.runs_;
            const int rows = rowsBelow_[pivot], columns = columnsOf(pivot);
            if (runs.empty() || runs.back().rows != rows || runs.back().columns != columns) {
                runs.push_back({pivot, 0, rows, columns, static_cast<int>(operations.size()), upperFirst_[pivot]});
            }
            ++runs.back().count;
            for (int k = first[pivot]; k < first[pivot + 1]; ++k) {
                const Lower& lower = lowers_[sorted[k]];
                operations.push_back(lower.slot);
                operations.push_back(lower.row);
                operations.insert(operations.end(), targets_.begin() + lower.targets,
                                  targets_.begin() + lower.targets + columns);
            }
        }
    }

    LinearProgram& program_;
    Rows rows_;
    int count_;
    std::vector<int> seenInRow_, slotOfColumn_, upperFirst_, rowsBelow_;
    std::vector<int> left_, right_, heap_, targets_;
    std::vector<Lower> lowers_;
};

LinearProgram::LinearProgram(std::span<const Entry> entries, std::span<const Entry> pivots)
    : positionOfRow_(pivots.size()),
      positionOfColumn_(pivots.size()),
      diagonal_(pivots.size()),
      inverse_(pivots.size()) {
    for (std::size_t i = 0; i < pivots.size(); ++i) {
        positionOfRow_[pivots[i].row] = static_cast<int>(i);
        positionOfColumn_[pivots[i].column] = static_cast<int>(i);
    }
    Analysis(*this, entries).run();
}

template <int kRows, int kColumns>
bool LinearProgram::eliminate(const Run& run, double* values, double* right) {
    constexpr double kSmallestPivot = 1e-200;  // far below any conductance; only a structural zero gets here
    constexpr double kLargestPivot = 1e200;
    const int rows = kRows == kAnyLength ? run.rows : kRows;
    const int columns = kColumns == kAnyLength ? run.columns : kColumns;
    const int* operation = operations_.data() + run.operations;
    for (int position = run.first; position < run.first + run.count; ++position) {
        const double* const pivot = values + diagonal_[position];
        const double size = std::abs(*pivot);
        if (!(size > kSmallestPivot && size < kLargestPivot)) {
            failedPosition_ = position;
            return false;
        }
        const double inverse = inverse_[position] = 1 / *pivot;
        const double above = right[position];
        for (int i = 0; i < rows; ++i) {
            const double factor = values[operation[0]] * inverse;
            right[operation[1]] -= factor * above;
            operation += 2;
            for (int k = 0; k < columns; ++k) values[operation[k]] -= factor * pivot[1 + k];
            operation += columns;
        }
    }
    return true;
}

template <int kColumns>
void LinearProgram::substitute(const Run& run, const double* values, double* right) const {
    const int columns = kColumns == kAnyLength ? run.columns : kColumns;
    const int* column = upperColumn_.data() + run.upperColumns + run.count * columns;
    for (int position = run.first + run.count - 1; position >= run.first; --position) {
        column -= columns;
        const double* const upper = values + diagonal_[position] + 1;
        double sum = right[position];
        for (int k = 0; k < columns; ++k) sum -= upper[k] * right[column[k]];
        right[position] = sum * inverse_[position];
    }
}

bool LinearProgram::run(std::span<double> values, std::span<double> right) {
    double* const a = values.data();
    double* const y = right.data();
    for (const Run& run : runs_) {
        const bool square = run.rows == run.columns;
        bool good;
        if (square && run.rows == 1)
            good = eliminate<1, 1>(run, a, y);
        else if (square && run.rows == 2)
            good = eliminate<2, 2>(run, a, y);
        else if (square && run.rows == 3)
            good = eliminate<3, 3>(run, a, y);
        else
            good = eliminate<kAnyLength, kAnyLength>(run, a, y);
        if (!good) return false;
    }
    for (auto run = runs_.rbegin(); run != runs_.rend(); ++run) {
        if (run->columns == 1)
            substitute<1>(*run, a, y);
        else if (run->columns == 2)
            substitute<2>(*run, a, y);
        else if (run->columns == 3)
            substitute<3>(*run, a, y);
        else
            substitute<kAnyLength>(*run, a, y);
    }
    return true;
}

void LinearProgram::runAgain(std::span<const double> values, std::span<double> right) const {
    for (const Run& run : runs_) {
        const int* operation = operations_.data() + run.operations;
        for (int position = run.first; position < run.first + run.count; ++position) {
            if (right[position] == 0) {  // a right-hand side has often but one entry
                operation += run.rows * (2 + run.columns);
                continue;
            }
            const double above = right[position] * inverse_[position];
            for (int i = 0; i < run.rows; ++i) {
                right[operation[1]] -= values[operation[0]] * above;
                operation += 2 + run.columns;
            }
        }
    }
    for (auto run = runs_.rbegin(); run != runs_.rend(); ++run)
        substitute<kAnyLength>(*run, values.data(), right.data());
}

}  // namespace tiepoint
