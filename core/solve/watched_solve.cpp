#include "core/solve/watched_solve.h"

#include <Eigen/Dense>
#include <Eigen/SparseLU>

#include <algorithm>
#include <cmath>
#include <limits>

namespace tiepoint {

namespace {

constexpr double kGoodShare = 1e-14;      ///< what refining aims at: little more than rounding
constexpr double kAcceptedShare = 1e-12;  ///< what is taken from the program as it stands
constexpr double kPivotedShare =
    1e-9;  ///< what is taken where pivots were chosen by value: the next step of the search refines it
constexpr int kMostRefinements = 3;
constexpr int kMostDense = 80;  ///< unknowns

/// Factors of the matrix with each equation divided by its largest entry, so that no choice of units decides about pivots.
template <class Factors, class Matrix>
class Pivoted {
public:
    Pivoted(const Matrix& matrix, const Eigen::VectorXd& scale) : factors_(matrix), scale_(scale) {}
    bool solve(std::span<double> right) {
        Eigen::Map<Eigen::VectorXd> mapped(right.data(), static_cast<Eigen::Index>(right.size()));
        const Eigen::VectorXd x = factors_.solve(scale_.cwiseProduct(mapped));
        if (!x.allFinite()) return false;
        mapped = x;
        return true;
    }
    bool isGood() const {
        if constexpr (requires { factors_.info(); }) return factors_.info() == Eigen::Success;
        return true;
    }

private:
    Factors factors_;
    Eigen::VectorXd scale_;
};

}  // namespace

bool WatchedSolve::run(LinearProgram& program, std::span<const double> values, std::span<double> right) {
    given_.assign(right.begin(), right.end());
    factors_.assign(values.begin(), values.end());
    lastWasPivoted_ = !(program.run(factors_, right) && refine(program, values, right));
    if (!lastWasPivoted_) return true;
    ++pivotedCount_;
    return runPivoted(program, values, right);
}

bool WatchedSolve::runAgain(LinearProgram& program, std::span<const double> values, std::span<double> right) {
    if (lastWasPivoted_) return run(program, values, right);
    given_.assign(right.begin(), right.end());
    program.runAgain(factors_, right);
    return refine(program, values, right) || runPivoted(program, values, right);
}

double WatchedSolve::leave(const LinearProgram& program, std::span<const double> values, std::span<const double> x) {
    left_.resize(x.size());
    double worst = 0;
    for (int row = 0; row < program.size(); ++row) {
        double left = given_[row], size = std::abs(left);
        for (int slot = program.rowStart(row); slot < program.rowStart(row + 1); ++slot) {
            const double term = values[slot] * x[program.columnOfSlot(slot)];
            left -= term;
            size += std::abs(term);
        }
        left_[row] = left;
        if (!std::isfinite(left)) return std::numeric_limits<double>::infinity();
        if (size > 0) worst = std::max(worst, std::abs(left) / size);
    }
    return worst;
}

bool WatchedSolve::refine(const LinearProgram& program, std::span<const double> values, std::span<double> x) {
    double share = leave(program, values, x);
    for (int round = 0; round < kMostRefinements && share > kGoodShare && std::isfinite(share); ++round) {
        program.runAgain(factors_, left_);
        for (std::size_t i = 0; i < x.size(); ++i) x[i] += left_[i];
        const double next = leave(program, values, x);
        const bool helped = next < share / 2;
        share = next;
        if (!helped) break;
    }
    return share <= kAcceptedShare;
}

bool WatchedSolve::runPivoted(const LinearProgram& program, std::span<const double> values, std::span<double> x) {
    const int size = program.size();
    Eigen::VectorXd scale(size);
    std::vector<Eigen::Triplet<double>> entries;
    for (int row = 0; row < size; ++row) {
        double largest = 0;
        for (int slot = program.rowStart(row); slot < program.rowStart(row + 1); ++slot)
            largest = std::max(largest, std::abs(values[slot]));
        if (!(largest > 0) || !std::isfinite(largest)) return false;
        scale[row] = 1 / largest;
        for (int slot = program.rowStart(row); slot < program.rowStart(row + 1); ++slot)
            if (values[slot] != 0) entries.emplace_back(row, program.columnOfSlot(slot), values[slot] / largest);
    }
    Eigen::SparseMatrix<double> matrix(size, size);
    matrix.setFromTriplets(entries.begin(), entries.end());
    const auto solve = [&](auto factors) {
        if (!factors.isGood()) return false;
        std::copy(given_.begin(), given_.end(), x.begin());
        if (!factors.solve(x)) return false;
        double share = leave(program, values, x);
        for (int round = 0; round < kMostRefinements && share > kGoodShare && std::isfinite(share); ++round) {
            const std::vector<double> before(x.begin(), x.end());
            if (!factors.solve(left_)) break;
            for (std::size_t i = 0; i < x.size(); ++i) x[i] += left_[i];
            const double next = leave(program, values, x);
            if (!(next < share)) {
                std::copy(before.begin(), before.end(), x.begin());
                break;
            }
            share = next;
        }
        return share <= kPivotedShare;
    };
    // Partial pivots: full ones take what is small beside the largest for nothing, and conductances differ by decades.
    if (size <= kMostDense) {
        using Dense = Eigen::MatrixXd;
        return solve(Pivoted<Eigen::PartialPivLU<Dense>, Dense>(Dense(matrix), scale));
    }
    using Sparse = Eigen::SparseMatrix<double>;
    return solve(Pivoted<Eigen::SparseLU<Sparse>, Sparse>(matrix, scale));
}

}  // namespace tiepoint
