#pragma once
// A sparse linear system of fixed structure, compiled once into flat lists of indices and then replayed for changing values.
//
// Method: LU without pivoting by value. (Where that isn't safe, watched_solve.h looks after it.) The caller gives the order of pivots, which follows from the structure of the circuit
// (see elimination_order.h), so the same list serves whatever the conductances are. Rows are stored one after the other in pivot
// order, each as [left of the diagonal][diagonal][right of it], every part ascending and contiguous. Each pivot has a list of
// the slots below it and, for each of those, of the slots that its row changes ("targets"); the right-hand side goes along.
// Neighbouring pivots with equally many slots form a run, and runs of the small shapes that circuits are made of have loops of
// fixed length: at 200 unknowns mispredicted loop ends cost more than the arithmetic.
// Tried and rejected: an order chosen by values, which breaks when conductances move by decades; maps in the analysis, which cost
// a visible stall at an edit of a large bench; elimination row by row, whose short loops are predicted badly.
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
    /// Solves for another right-hand side with the factors that the last run left in `values`.
    void runAgain(std::span<const double> values, std::span<double> right) const;

    /// The place of a slot, by position of its equation and of its unknown.
    int rowStart(int position) const { return rowStart_[position]; }  ///< size() + 1 of them
    int columnOfSlot(int slot) const { return columnOfSlot_[slot]; }

private:
    /// Pivots of one shape that follow each other.
    struct Run {
        int first, count;   ///< positions
        int rows, columns;  ///< slots below, and right of, each pivot
        int operations;     ///< where its part of operations_ begins
        int upperColumns;   ///< where its part of upperColumn_ begins
    };
    class Analysis;

    template <int kRows, int kColumns>
    bool eliminate(const Run& run, double* values, double* right);
    template <int kColumns>
    void substitute(const Run& run, const double* values, double* right) const;

    int slotCount_ = 0;
    int failedPosition_ = -1;
    std::vector<int> positionOfRow_, positionOfColumn_, slotOfEntry_;
    std::vector<int> diagonal_;                 ///< by position: slot
    std::vector<int> rowStart_, columnOfSlot_;  ///< by position: its first slot; by slot: position
    std::vector<Run> runs_;
    std::vector<int>
        operations_;  ///< for each pivot and each row below: its slot, its position, then a target for each column
    std::vector<int> upperColumn_;  ///< for each pivot: the positions right of it, ascending
    std::vector<double> inverse_;   ///< by position: 1 / diagonal
};

}  // namespace tiepoint
