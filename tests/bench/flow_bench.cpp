// Currents inside a 200-hole net, each frame, against a general library's sparse factorisation (LDLT) of the net's Laplacian, made
// once and solved for each frame's currents. Both ways begin at the injections by lead and end at the current of every piece.

#include "bench/stopwatch.h"
#include "core/flow/flow.h"
#include "support/metal.h"

#include <Eigen/Dense>
#include <Eigen/SparseCholesky>

#include <cstdio>
#include <random>

namespace tiepoint::test {
namespace {

constexpr int kHoles = 200;

/// The general way: potentials of all joints but the first, then the current of each piece by Ohm's law.
class Laplacian {
public:
    explicit Laplacian(const Layout& layout) : layout_(layout) {
        const auto size = static_cast<Eigen::Index>(layout.joints.size()) - 1;
        std::vector<Eigen::Triplet<double>> entries;
        for (const Piece& piece : layout.pieces) {
            const int a = piece.from - 1, b = piece.to - 1;
            if (a >= 0) entries.emplace_back(a, a, 1 / piece.ohm);
            if (b >= 0) entries.emplace_back(b, b, 1 / piece.ohm);
            if (a >= 0 && b >= 0) entries.emplace_back(std::max(a, b), std::min(a, b), -1 / piece.ohm);
        }
        Eigen::SparseMatrix<double> lower(size, size);
        lower.setFromTriplets(entries.begin(), entries.end());
        factors_.compute(lower);
        right_.resize(size);
        volt_.setZero(size + 1);
    }

    void solve(std::span<const double> injection, std::span<double> pieceCurrent) {
        right_.setZero();
        for (int lead = 0; lead < layout_.leadCount(); ++lead) {
            const int joint = layout_.jointOfLead[lead];
            if (joint > 0) right_[joint - 1] -= injection[lead];
        }
        volt_.tail(right_.size()) = factors_.solve(right_);
        for (std::size_t p = 0; p < layout_.pieces.size(); ++p) {
            const Piece& piece = layout_.pieces[p];
            pieceCurrent[p] = (volt_[piece.from] - volt_[piece.to]) / piece.ohm;
        }
    }

private:
    const Layout& layout_;
    Eigen::SimplicialLDLT<Eigen::SparseMatrix<double>> factors_;
    Eigen::VectorXd right_, volt_;
};

struct Case {
    const char* name;
    int loops;
    double bar;
};

void race(const Case& c, Gate& gate) {
    std::mt19937 random(7);
    const auto layout = oneNet(kHoles, c.loops, random);
    const auto injection = balancedInjection(*layout, random);
    std::vector<double> current(layout->pieces.size()), general(layout->pieces.size());
    Flow flow(layout);
    Laplacian laplacian(*layout);

    SideBySide sides;
    sides.add("flow", [&] {
        flow.solve(injection, current);
        keep(current.data());
    });
    sides.add("sparse LDLT of the Laplacian", [&] {
        laplacian.solve(injection, general);
        keep(general.data());
    });
    std::printf("a net of %d holes, %s\n", kHoles, c.name);
    const auto seconds = sides.run();
    gate.atLeast("times faster than sparse LDLT", seconds[1] / seconds[0], c.bar);

    double apart = 0;
    for (std::size_t p = 0; p < current.size(); ++p) apart = std::max(apart, std::abs(current[p] - general[p]));
    gate.atMost("A apart from the general solution", apart, 1e-12);
    gate.atMost("A worst defect of Kirchhoff's law", flow.worstDefect(injection, current), 1e-16);
}

}  // namespace
}  // namespace tiepoint::test

int main() {
    using namespace tiepoint::test;
    Gate gate;
    const Case cases[] = {{"a tree", 0, 5}, {"three loops", 3, 4}, {"twenty loops", 20, 2.5}};
    for (const Case& c : cases) race(c, gate);
    return gate.exitCode();
}
