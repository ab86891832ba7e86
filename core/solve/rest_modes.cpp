#include "core/solve/rest_modes.h"

#include <Eigen/Dense>
#include <Eigen/SparseLU>

#include <cmath>

namespace tiepoint {

namespace {

constexpr double kGrows = 1e-9;       ///< of the fastest mode: less is rounding
constexpr double kOscillates = 0.25;  ///< imaginary part against real part beyond which a mode oscillates

using Matrix = Eigen::MatrixXd;
using Sparse = Eigen::SparseMatrix<double>;

/// Numbers for equations or unknowns: the chosen ones on one side, the others on the other.
struct Sides {
    std::vector<int> place;  ///< >= 0: among the chosen; else -1 - place among the others
    int others = 0;

    Sides(int size, std::span<const int> chosen) : place(size, 0) {
        for (std::size_t i = 0; i < chosen.size(); ++i) place[chosen[i]] = static_cast<int>(i) + 1;
        for (int& p : place) p = p > 0 ? p - 1 : -1 - others++;
    }
};

/// The equations of the chosen nodes after all others are eliminated.
bool reduce(int size, std::span<const ModeEntry> entries, std::span<const int> equations, std::span<const int> unknowns,
            Matrix& reduced) {
    const Sides rows(size, equations), columns(size, unknowns);
    const auto count = static_cast<Eigen::Index>(equations.size());
    reduced = Matrix::Zero(count, count);
    if (rows.others != columns.others) return false;
    Matrix right = Matrix::Zero(rows.others, count), left = Matrix::Zero(count, rows.others);
    std::vector<Eigen::Triplet<double>> rest;
    for (const ModeEntry& e : entries) {
        const int row = rows.place[e.row], column = columns.place[e.column];
        if (row >= 0 && column >= 0)
            reduced(row, column) += e.value;
        else if (row >= 0)
            left(row, -1 - column) += e.value;
        else if (column >= 0)
            right(-1 - row, column) += e.value;
        else
            rest.emplace_back(-1 - row, -1 - column, e.value);
    }
    if (rows.others == 0) return true;
    Sparse inner(rows.others, rows.others);
    inner.setFromTriplets(rest.begin(), rest.end());
    Eigen::SparseLU<Sparse> factors(inner);
    if (factors.info() != Eigen::Success) return false;
    reduced -= left * factors.solve(right);
    return reduced.allFinite();
}

/// How much each node moves in the mode that grows fastest without oscillating; empty if none does.
std::vector<double> fastestMode(const Matrix& rates) {
    const Eigen::EigenSolver<Matrix> modes(rates);
    const double slowest = kGrows * modes.eigenvalues().cwiseAbs().maxCoeff();
    Eigen::Index fastest = -1;
    for (Eigen::Index k = 0; k < rates.rows(); ++k) {
        const std::complex<double> rate = modes.eigenvalues()[k];
        if (rate.real() >= -slowest || std::abs(rate.imag()) > kOscillates * std::abs(rate.real())) continue;
        if (fastest < 0 || rate.real() < modes.eigenvalues()[fastest].real()) fastest = k;
    }
    if (fastest < 0) return {};
    const Eigen::VectorXd moves =
        modes.eigenvectors().col(fastest).cwiseAbs() / modes.eigenvectors().col(fastest).cwiseAbs().maxCoeff();
    return {moves.data(), moves.data() + moves.size()};
}

}  // namespace

std::vector<double> growingMode(int size, std::span<const ModeEntry> entries, std::span<const int> equations,
                                std::span<const int> unknowns) {
    Matrix reduced;
    if (equations.empty() || !reduce(size, entries, equations, unknowns, reduced)) return {};
    Matrix scaled = reduced;
    for (Eigen::Index node = 0; node < reduced.rows(); ++node) {
        const double own = std::max(std::abs(reduced(node, node)), 1e-15 * reduced.cwiseAbs().maxCoeff());
        if (own > 0) scaled.row(node) /= own;
    }
    std::vector<double> mode = fastestMode(scaled);
    // With equal capacitances what is slow is lost beside what is fast, so an odd number of modes is told by their product's sign.
    if (mode.empty() || scaled.determinant() < 0 || !fastestMode(reduced).empty()) return mode;
    return {};
}

}  // namespace tiepoint
