#pragma once
// A sparse linear system of fixed structure, compiled once into flat lists of indices and then replayed for changing values.
//
// Method: LU without pivoting by value. The caller gives the order of pivots, which follows from the structure of the circuit
// (see elimination_order.h), so the same list serves whatever the conductances are. Rows are stored one after the other in pivot
// order, each as [left of the diagonal][diagonal][right of it], every part ascending and contiguous. Elimination goes row by row;
// each entry left of the diagonal names its pivot and the slots that it changes ("targets"). The forward substitution runs along.
// Tried and rejected: an order chosen by values, which breaks when conductances move by decades; maps in the analysis, which cost
// a visible stall at an edit of a large bench.
// Thread rule: one thread at a time (run() uses inner storage).

#include <span>
#include <vector>

namespace tiepoint {

class LinearProgram {
public:
    /// A place in the matrix by equation and unknown, in the caller's numbers.
    struct Entry {
        int row, column;
    };

    LinearProgram() = default;

    /// Compiles the structure. `pivots` lists every row and column exactly once, in order of elimination.
    LinearProgram(std::span<const Entry> entries, std::span<const Entry> pivots);

    int size() const { return static_cast<int>(diagonal_.size()); }
    int slotCount() const { return slotCount_; }
    /// Slot of the entry of that index in the constructor's list. Equal places share one slot: stamps add.
    int slot(int entry) const { return slotOfEntry_[entry]; }
    /// Where an equation's right-hand side stands.
    int positionOfRow(int row) const { return positionOfRow_[row]; }
    /// Where an unknown's value stands.
    int positionOfColumn(int column) const { return positionOfColumn_[column]; }

    /// Factors and solves. values: slotCount() numbers, destroyed. right: right-hand sides by positionOfRow, replaced by the unknowns
    /// by positionOfColumn. False if a pivot vanished or isn't finite; failedPosition() then says which.
    [[nodiscard]] bool run(std::span<double> values, std::span<double> right);
    int failedPosition() const { return failedPosition_; }

private:
    struct Lower {
        int slot;    ///< of the entry
        int pivot;   ///< its pivot's position
        int first;   ///< first slot right of that pivot
        int length;  ///< how many slots there are
    };

    void numberPivots(std::span<const Entry> pivots);
    void eliminateSymbolically(std::span<const Entry> entries);

    int slotCount_ = 0;
    int failedPosition_ = -1;
    std::vector<int> positionOfRow_, positionOfColumn_, slotOfEntry_;
    std::vector<int> diagonal_;    ///< by position: slot
    std::vector<int> lowerFirst_;  ///< by position, one more at the end: first of its entries in lowers_
    std::vector<Lower> lowers_;
    std::vector<int> targets_;     ///< for each of lowers_, `length` slots
    std::vector<int> upperFirst_;  ///< by position, one more at the end: first of its columns in upperColumn_
    std::vector<int> upperColumn_; ///< positions, ascending
    std::vector<double> inverse_;  ///< by position: 1 / diagonal
};

}  // namespace tiepoint
