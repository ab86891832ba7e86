// Linear systems whose structural order of pivots isn't safe, against Eigen in long double: random stamps that aren't symmetric, and loops of
// high gain, over nine decades.

#include "core/solve/watched_solve.h"

#include "core/solve/circuit_solver.h"
#include "core/solve/elimination_order.h"

#include <Eigen/Dense>
#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace tiepoint {
namespace {

using Wide = Eigen::Matrix<long double, Eigen::Dynamic, Eigen::Dynamic>;
using WideVector = Eigen::Matrix<long double, Eigen::Dynamic, 1>;

/// Conductances and controlled sources between nodes at random; the matrix of what leaves each node.
struct DrawnStamps {
    int size;
    std::vector<LinearProgram::Entry> entries, pivots;
    std::vector<double> values;
    std::vector<Edge> edges;
    Eigen::MatrixXd summed;  ///< as the program sums its stamps up: what that rounds is no matter of solving
    Wide dense;

    DrawnStamps(int nodes, std::mt19937& random) : size(nodes), summed(Eigen::MatrixXd::Zero(nodes, nodes)) {
        const auto pick = [&](int count) { return static_cast<int>(random() % static_cast<unsigned>(count)); };
        const auto siemens = [&] { return std::pow(10.0, std::uniform_real_distribution<double>(-9, 0)(random)); };
        for (int node = 0; node < size; ++node) {
            add(node, node, 0);
            conduct(node, pick(2) ? pick(size) : -1, siemens());
        }
        for (int k = 0; k < 2 * size; ++k) conduct(pick(size), pick(size), siemens());
        for (int k = 0; k < size; ++k) {
            const int out = pick(size), back = pick(size + 1) - 1, plus = pick(size), minus = pick(size + 1) - 1;
            const double g = (pick(2) ? 1 : -1) * siemens();
            stamp(out, plus, g), stamp(out, minus, -g), stamp(back, plus, -g), stamp(back, minus, g);
        }
        for (int node : eliminationOrder(size, edges, growSourceForest(size, {}))) pivots.push_back({node, node});
        dense = summed.cast<long double>();
    }

    void conduct(int a, int b, double g) {
        if (a == b) return;
        stamp(a, a, g), stamp(b, b, g), stamp(a, b, -g), stamp(b, a, -g);
    }
    void stamp(int row, int column, double g) {
        if (row >= 0 && column >= 0) add(row, column, g);
    }
    void add(int row, int column, double g) {
        entries.push_back({row, column});
        values.push_back(g);
        summed(row, column) += g;
        if (row != column) edges.push_back({row, column});
    }
    std::vector<double> slots(const LinearProgram& program) const {
        std::vector<double> slotted(program.slotCount(), 0.0);
        for (std::size_t k = 0; k < entries.size(); ++k) slotted[program.slot(static_cast<int>(k))] += values[k];
        return slotted;
    }
};

/// The worst share that is left of any equation of the sizes of its terms.
double leftOver(const Wide& matrix, const WideVector& x, const WideVector& right) {
    const WideVector left = (right - matrix * x).cwiseAbs();
    const WideVector size = matrix.cwiseAbs() * x.cwiseAbs() + right.cwiseAbs();
    double worst = 0;
    for (Eigen::Index i = 0; i < left.size(); ++i) {
        if (!std::isfinite(static_cast<double>(left[i]))) return INFINITY;
        if (size[i] > 0) worst = std::max(worst, static_cast<double>(left[i] / size[i]));
    }
    return worst;
}

TEST(WatchedSolve, SolvesStampsThatArentSymmetricOverNineDecades) {
    std::mt19937 random(1964);
    int plainWrong = 0, pivoted = 0, rounds = 0;
    for (int round = 0; round < 4000; ++round) {
        const int size = 2 + static_cast<int>(random() % (round % 40 == 0 ? 140U : 14U));
        const DrawnStamps drawn(size, random);
        LinearProgram program(drawn.entries, drawn.pivots);
        WideVector right(size);
        std::vector<double> placed(size);
        for (int i = 0; i < size; ++i) {
            const double ampere = std::uniform_real_distribution<double>(-1, 1)(random);
            right[i] = ampere;
            placed[program.positionOfRow(i)] = ampere;
        }
        const auto unplaced = [&](const std::vector<double>& x) {
            WideVector volt(size);
            for (int i = 0; i < size; ++i) volt[i] = x[program.positionOfColumn(i)];
            return volt;
        };
        const Eigen::FullPivLU<Wide> exact(drawn.dense);
        if (!exact.isInvertible()) continue;
        const WideVector expected = exact.solve(right);
        const Wide inverse = exact.inverse();
        // What rounding of the entries alone may move (R. D. Skeel, J. ACM 26 (1979) 494-526), per unknown.
        const WideVector moved = inverse.cwiseAbs() * (drawn.dense.cwiseAbs() * expected.cwiseAbs() + right.cwiseAbs());
        if (!(moved.maxCoeff() * 1e-13L < expected.cwiseAbs().maxCoeff())) continue;  // singular to rounding
        ++rounds;

        std::vector<double> plain = placed, plainSlots = drawn.slots(program);
        if (!program.run(plainSlots, plain) || leftOver(drawn.dense, unplaced(plain), right) > 1e-9) ++plainWrong;

        WatchedSolve watched;
        ASSERT_TRUE(watched.run(program, drawn.slots(program), placed)) << round;
        pivoted += watched.pivotedCount();
        const WideVector volt = unplaced(placed);
        EXPECT_LE(leftOver(drawn.dense, volt, right), watched.pivotedCount() == 0 ? 1.1e-12 : 1e-9) << round;
        for (int i = 0; i < size; ++i) {
            const long double apart = std::abs(volt[i] - expected[i]);
            EXPECT_LE(apart, 1e-9L * moved[i]) << round << " " << i;
        }
        if (HasFailure()) return;
    }
    EXPECT_GT(rounds, 3000);
    EXPECT_GT(plainWrong, 20) << "the structural order alone would have done";
    EXPECT_GT(pivoted, 0) << "refining alone would have done";
    EXPECT_LT(pivoted, rounds / 2) << "the structural order hardly ever serves";
}

TEST(WatchedSolve, ChoosesPivotsWhereTheStructureHasNone) {
    // Two controlled sources face to face (a gyrator): nothing stands on the diagonal.
    Circuit circuit;
    for (int i = 0; i < 3; ++i) circuit.addNode();
    circuit.addSupply(1, 0, 1, 1e3, 1);
    const auto source = [](double siemens) { return ControlledSourceLaw(std::vector<double>{siemens}); };
    circuit.add(source(1e-3), {2, 0, 1, 0});
    circuit.add(source(-1e-3), {1, 0, 2, 0});
    CircuitSolver solver(circuit);
    const CircuitSolution& s = solver.solve(std::vector<char>(3, 1), 0);
    // Nothing may flow into node 2 but what node 1 drives there, so node 1 is at 0 V and node 2 takes the supply's 1 mA.
    ASSERT_TRUE(s.solved()) << static_cast<int>(s.trouble);
    EXPECT_NEAR(s.nodeVolt[1], 0, 1e-12);
    EXPECT_NEAR(s.nodeVolt[2], -1, 1e-12);
}

/// Amplifier stages one after the other, each inverting, an odd number of them fed back to the first through a divider.
TEST(WatchedSolve, SolvesLoopsOfHighGain) {
    std::mt19937 random(1927);
    const auto between = [&](double least, double most) {
        return least * std::pow(most / least, std::uniform_real_distribution<double>(0, 1)(random));
    };
    for (int round = 0; round < 2000; ++round) {
        const int stages = 1 + 2 * static_cast<int>(random() % 2U);
        Circuit circuit;
        const int ground = circuit.addNode(), in = circuit.addNode(), sum = circuit.addNode();
        std::vector<std::array<int, 2>> ends;
        std::vector<double> siemens;
        const auto conduct = [&](int a, int b, double ohm) {
            circuit.addConductor(a, b, ohm);
            ends.push_back({a, b});
            siemens.push_back(1 / ohm);
        };
        const double volt = between(1e-3, 10);
        circuit.addSupply(in, ground, volt);
        conduct(in, sum, between(1e2, 1e6));
        struct Source {
            int out, in;
            double g;
        };
        std::vector<Source> sources;
        int last = sum;
        for (int stage = 0; stage < stages; ++stage) {
            const int out = circuit.addNode();
            const double load = between(1e1, 1e6), gain = between(1, 1e9 / std::pow(1e3, stages - 1));
            conduct(out, ground, load);
            sources.push_back({out, last, gain / load});
            circuit.add(ControlledSourceLaw(std::vector<double>{gain / load}), {out, ground, last, ground});
            last = out;
        }
        conduct(last, sum, between(1e2, 1e6));
        CircuitSolver solver(circuit);
        const CircuitSolution& s = solver.solve(std::vector<char>(circuit.elementCount(), 1), ground);
        ASSERT_TRUE(s.solved()) << round << " " << static_cast<int>(s.trouble);

        const int count = circuit.nodeCount;
        Wide matrix = Wide::Zero(count, count);
        WideVector right = WideVector::Zero(count);
        for (std::size_t k = 0; k < ends.size(); ++k) {
            const auto [a, b] = ends[k];
            matrix(a, a) += siemens[k], matrix(b, b) += siemens[k];
            matrix(a, b) -= siemens[k], matrix(b, a) -= siemens[k];
        }
        for (const Source& each : sources) matrix(each.out, each.in) += each.g;
        for (int known : {ground, in}) {
            matrix.row(known).setZero();
            matrix(known, known) = 1;
            right[known] = known == in ? volt : 0;
        }
        const WideVector expected = matrix.fullPivLu().solve(right);
        const double largest = static_cast<double>(expected.cwiseAbs().maxCoeff());
        for (int node = 0; node < count; ++node)
            EXPECT_NEAR(s.nodeVolt[node], static_cast<double>(expected[node]), 1e-9 * largest) << round << " " << node;
        if (HasFailure()) return;
    }
}

}  // namespace
}  // namespace tiepoint
