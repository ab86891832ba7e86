// The flow against a dense solve of the net's Laplacian by a general-purpose linear algebra library, and against Kirchhoff's law.

#include "core/flow/flow.h"

#include "support/build_bench.h"
#include "support/metal.h"

#include <Eigen/Dense>
#include <fmt/format.h>
#include <gtest/gtest.h>

#include <cmath>
#include <random>
#include <set>

namespace tiepoint {
namespace {

constexpr double kFlowDefectAmpere = 1e-16;

/// Currents of all pieces from the potentials of all joints; each net's first joint is at 0 V. In long double: the oracle's
/// currents are differences of nearly equal numbers.
std::vector<double> denseCurrents(const Layout& layout, std::span<const double> injection) {
    using Matrix = Eigen::Matrix<long double, Eigen::Dynamic, Eigen::Dynamic>;
    using Vector = Eigen::Matrix<long double, Eigen::Dynamic, 1>;
    const auto size = static_cast<Eigen::Index>(layout.joints.size());
    Matrix laplacian = Matrix::Zero(size, size);
    Vector drawn = Vector::Zero(size);
    for (const Piece& piece : layout.pieces) {
        const long double siemens = 1 / static_cast<long double>(piece.ohm);
        laplacian(piece.from, piece.from) += siemens;
        laplacian(piece.to, piece.to) += siemens;
        laplacian(piece.from, piece.to) -= siemens;
        laplacian(piece.to, piece.from) -= siemens;
    }
    for (int lead = 0; lead < layout.leadCount(); ++lead) {
        const int hub = layout.hubOfLead[lead];
        drawn[hub >= 0 ? hub : layout.jointOfLead[lead]] -= static_cast<long double>(injection[lead]);
    }
    std::set<int> grounded;
    for (Eigen::Index joint = 0; joint < size; ++joint) {
        if (!grounded.insert(layout.joints[static_cast<std::size_t>(joint)].net).second) continue;
        laplacian.row(joint).setZero();
        laplacian.col(joint).setZero();
        laplacian(joint, joint) = 1;
        drawn[joint] = 0;
    }
    const Vector volt = laplacian.partialPivLu().solve(drawn);
    std::vector<double> current;
    for (const Piece& piece : layout.pieces) {
        current.push_back(
            static_cast<double>((volt[piece.from] - volt[piece.to]) / static_cast<long double>(piece.ohm)));
    }
    return current;
}

void expectFlow(const std::shared_ptr<const Layout>& layout, std::span<const double> injection) {
    constexpr double kApartAmpere = 1e-13;
    Flow flow(layout);
    std::vector<double> current(layout->pieces.size(), std::nan(""));
    flow.solve(injection, current);
    const std::vector<double> expected = denseCurrents(*layout, injection);
    for (std::size_t p = 0; p < current.size(); ++p)
        ASSERT_NEAR(current[p], expected[p], kApartAmpere) << "piece " << p;
    EXPECT_LE(flow.worstDefect(injection, current), kFlowDefectAmpere);
}

TEST(Flow, MatchesADenseSolve) {
    struct Case {
        int holes, loops, trials;
    };
    // Above 64 loops the flow factors the whole net instead of the loops.
    for (const Case& c : {Case{1, 0, 1}, Case{2, 1, 20}, Case{5, 0, 20}, Case{20, 1, 100}, Case{40, 3, 60},
                          Case{60, 20, 30}, Case{80, 64, 5}, Case{80, 65, 5}, Case{60, 150, 5}}) {
        std::mt19937 random(static_cast<unsigned>(100 * c.holes + c.loops));
        for (int trial = 0; trial < c.trials; ++trial) {
            SCOPED_TRACE(fmt::format("{} holes, {} loops, trial {}", c.holes, c.loops, trial));
            const auto layout = test::oneNet(c.holes, c.loops, random);
            expectFlow(layout, test::balancedInjection(*layout, random));
        }
    }
}

/// Boards full of leads, buttons and jumpers: many nets at once, some with loops.
std::shared_ptr<const Layout> crowdedBoard(std::mt19937& random, int jumpers) {
    std::vector<Hole> holes;
    for (int column = 1; column <= 30; ++column) {
        for (Line line : {Line::A, Line::B, Line::C, Line::D, Line::G, Line::H, Line::I, Line::J})
            holes.push_back({"A", line, column});
    }
    for (int n = 1; n <= 25; ++n) holes.push_back({"A", Line::TopPlus, n});
    std::shuffle(holes.begin(), holes.end(), random);
    Bench bench = test::BenchBuilder()
                      .board("A", "half")
                      .part("S1", "push-button", {{"1a", "A.e4"}, {"1b", "A.f4"}, {"2a", "A.e6"}, {"2b", "A.f6"}})
                      .part("S2", "push-button", {{"1a", "A.e14"}, {"2a", "A.e16"}, {"2b", "A.f16"}})
                      .build();
    for (int i = 0; i < 20; ++i) {
        Part part = makePart(*findKind("resistor"), fmt::format("R{}", i));
        for (auto& lead : part.leads) {
            lead = holes.back();
            holes.pop_back();
        }
        bench.parts.push_back(std::move(part));
    }
    for (int i = 0; i < jumpers; ++i) {
        const Hole a = holes.back();
        holes.pop_back();
        bench.jumpers.push_back({fmt::format("W{}", i), {a, holes.back()}, 0, false, {}});
        holes.pop_back();
    }
    return buildLayout(std::make_shared<const Bench>(std::move(bench)));
}

TEST(Flow, HoldsOnCrowdedBoards) {
    for (int jumpers : {0, 15, 40, 80}) {
        std::mt19937 random(static_cast<unsigned>(jumpers));
        for (int trial = 0; trial < 10; ++trial) {
            SCOPED_TRACE(fmt::format("{} jumpers, trial {}", jumpers, trial));
            const auto layout = crowdedBoard(random, jumpers);
            expectFlow(layout, test::balancedInjection(*layout, random));
        }
    }
}

TEST(Flow, ParallelJumpersShareByTheirResistance) {
    // Two jumpers between the same two strips: currents in inverse proportion to the resistances of the two ways (current divider).
    const auto layout = buildLayout(test::BenchBuilder()
                                        .board("A", "full")
                                        .part("R1", "resistor", {{"1", "A.e1"}, {"2", "A.e11"}})
                                        .jumper("A.a1", "A.a11")
                                        .jumper("A.b1", "A.b11")
                                        .share());
    Flow flow(layout);
    std::vector<double> current(layout->pieces.size());
    flow.solve(std::vector<double>{0.01, -0.01}, current);
    const double first = current[layout->pieceOfJumper[0]], second = current[layout->pieceOfJumper[1]];
    EXPECT_NEAR(first + second, -0.01, 1e-17);
    constexpr double kClipOhm = 0.3e-3;  // the way from b to a and back, at both ends
    const double throughA = layout->pieces[layout->pieceOfJumper[0]].ohm + 2 * kClipOhm;
    const double throughB = layout->pieces[layout->pieceOfJumper[1]].ohm;
    EXPECT_NEAR(first / second, throughB / throughA, 1e-12);
}

TEST(Flow, EveryFrameStandsAlone) {
    std::mt19937 random(3);
    const auto layout = test::oneNet(50, 5, random);
    const auto first = test::balancedInjection(*layout, random), second = test::balancedInjection(*layout, random);
    Flow used(layout), fresh(layout);
    std::vector<double> a(layout->pieces.size()), b(layout->pieces.size());
    used.solve(first, a);
    used.solve(second, a);
    fresh.solve(second, b);
    EXPECT_EQ(a, b);
}

TEST(Flow, DefectIsSeen) {
    std::mt19937 random(8);
    const auto layout = test::oneNet(20, 2, random);
    const auto injection = test::balancedInjection(*layout, random);
    Flow flow(layout);
    std::vector<double> current(layout->pieces.size());
    flow.solve(injection, current);
    current.back() += 1e-6;
    EXPECT_NEAR(flow.worstDefect(injection, current), 1e-6, 1e-12);
}

}  // namespace
}  // namespace tiepoint
