#pragma once
// Solves a linear program whose structural order of pivots may not be safe: where laws feed back, a matrix is no M-matrix, and a pivot
// may vanish or everything after it grow.
//
// Method: run the program as it stands; look at what is left of every equation against the sizes of its terms (the componentwise
// backward error of W. Oettli and W. Prager, Numerische Mathematik 6 (1964) 405-409); refine with the same factors while that helps;
// and where it doesn't, factor anew with pivots by value (Eigen: dense for few unknowns, sparse for many), refined the same way.
// What was left is looked at in every solve, since the next step's conductances may differ by decades. Tried and rejected: watching the
// sizes of the pivots alone, which neither sees growth that comes in many small steps nor leaves alone what only looks bad.
// Thread rule: one thread at a time.

#include "core/solve/linear_program.h"

#include <span>
#include <vector>

namespace tiepoint {

class WatchedSolve {
public:
    /// As LinearProgram::run, but `values` keeps what it was. False where the matrix is singular to rounding.
    [[nodiscard]] bool run(LinearProgram& program, std::span<const double> values, std::span<double> right);

    /// The same for other right-hand sides, right after a run; `values` are those of that run.
    [[nodiscard]] bool runAgain(LinearProgram& program, std::span<const double> values, std::span<double> right);

    /// How many solves so far had to choose pivots by value.
    int pivotedCount() const { return pivotedCount_; }

private:
    bool refine(const LinearProgram& program, std::span<const double> values, std::span<double> x);
    bool runPivoted(const LinearProgram& program, std::span<const double> values, std::span<double> x);
    /// Fills left_ with what is left of the equations. The largest share of the terms' sizes.
    double leave(const LinearProgram& program, std::span<const double> values, std::span<const double> x);

    std::vector<double> factors_, given_, left_;
    int pivotedCount_ = 0;
    bool lastWasPivoted_ = false;
};

}  // namespace tiepoint
