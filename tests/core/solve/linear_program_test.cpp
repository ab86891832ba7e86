// The compiled linear program against a dense factorisation with full pivoting (Eigen), over the shapes that circuits are made of and
// over random ones.

#include "core/solve/linear_program.h"

#include <Eigen/Dense>
#include <gtest/gtest.h>

#include <algorithm>
#include <numeric>
#include <random>

namespace tiepoint {
namespace {

/// A system with a strong diagonal: it can be eliminated in any order.
struct LinearSystem {
    std::vector<LinearProgram::Entry> entries;
    std::vector<double> values, right;
    int size = 0;

    explicit LinearSystem(int unknowns) : right(unknowns), size(unknowns) {}

    void add(int row, int column, double value) {
        entries.push_back({row, column});
        values.push_back(value);
    }
    Eigen::MatrixXd dense() const {
        Eigen::MatrixXd matrix = Eigen::MatrixXd::Zero(size, size);
        for (std::size_t k = 0; k < entries.size(); ++k) matrix(entries[k].row, entries[k].column) += values[k];
        return matrix;
    }
};

/// Conductances between pairs of nodes, and one from each node to the reference.
LinearSystem conductances(int nodes, const std::vector<std::pair<int, int>>& pairs, std::mt19937& random) {
    std::uniform_real_distribution<double> siemens(0.1, 2.0), ampere(-1, 1);
    LinearSystem system(nodes);
    for (const auto& [a, b] : pairs) {
        const double g = siemens(random);
        system.add(a, a, g);
        system.add(b, b, g);
        system.add(a, b, -g);
        system.add(b, a, -g);
    }
    for (int node = 0; node < nodes; ++node) {
        system.add(node, node, siemens(random));
        system.right[node] = ampere(random);
    }
    return system;
}

void expectSolved(const LinearSystem& system, std::mt19937& random) {
    std::vector<int> order(system.size);
    std::iota(order.begin(), order.end(), 0);
    std::shuffle(order.begin(), order.end(), random);
    std::vector<LinearProgram::Entry> pivots;
    for (const int unknown : order) pivots.push_back({unknown, unknown});
    LinearProgram program(system.entries, pivots);
    ASSERT_EQ(program.size(), system.size);
    const Eigen::VectorXd expected =
        system.dense().fullPivLu().solve(Eigen::Map<const Eigen::VectorXd>(system.right.data(), system.size));
    for (int again = 0; again < 2; ++again) {  // a program serves many times
        std::vector<double> values(program.slotCount(), 0.0), right(system.size);
        for (std::size_t k = 0; k < system.entries.size(); ++k)
            values[program.slot(static_cast<int>(k))] += system.values[k];
        for (int row = 0; row < system.size; ++row) right[program.positionOfRow(row)] = system.right[row];
        ASSERT_TRUE(program.run(values, right));
        for (int unknown = 0; unknown < system.size; ++unknown)
            ASSERT_NEAR(right[program.positionOfColumn(unknown)], expected[unknown], 1e-9) << unknown;
    }
}

TEST(LinearProgram, SolvesTheShapesOfCircuits) {
    std::mt19937 random(3);
    for (int nodes = 1; nodes <= 24; ++nodes) {
        SCOPED_TRACE(nodes);
        std::vector<std::pair<int, int>> chain, ring, star, grid, full;
        for (int i = 1; i < nodes; ++i) {
            chain.emplace_back(i - 1, i);
            star.emplace_back(0, i);
            if (i % 4 != 0) grid.emplace_back(i - 1, i);
            if (i >= 4) grid.emplace_back(i - 4, i);
            for (int j = 0; j < i; ++j) full.emplace_back(j, i);
        }
        ring = chain;
        if (nodes > 2) ring.emplace_back(0, nodes - 1);
        for (const auto& pairs : {chain, ring, star, grid, full})
            expectSolved(conductances(nodes, pairs, random), random);
    }
}

TEST(LinearProgram, SolvesRandomSystemsThatArentSymmetric) {
    std::mt19937 random(4);
    for (int round = 0; round < 100; ++round) {
        SCOPED_TRACE(round);
        const int size = 1 + static_cast<int>(random() % 30);
        const auto any = [&] { return static_cast<int>(random() % static_cast<unsigned>(size)); };
        std::uniform_real_distribution<double> number(-1, 1);
        LinearSystem system(size);
        for (int i = 0; i < size; ++i) {
            system.add(i, i, 40 + number(random));
            system.right[i] = number(random);
        }
        for (int k = 0; k < 3 * size; ++k) system.add(any(), any(), number(random));
        expectSolved(system, random);
    }
}

TEST(LinearProgram, SharesOneSlotForEqualPlaces) {
    const std::vector<LinearProgram::Entry> entries = {{0, 0}, {0, 1}, {0, 0}, {1, 1}, {1, 0}};
    const std::vector<LinearProgram::Entry> pivots = {{1, 1}, {0, 0}};
    const LinearProgram program(entries, pivots);
    EXPECT_EQ(program.slot(0), program.slot(2));
    EXPECT_EQ(program.slotCount(), 4);
    EXPECT_EQ(program.positionOfRow(1), 0);
    EXPECT_EQ(program.positionOfColumn(0), 1);
}

TEST(LinearProgram, PivotsMayLieOffTheDiagonal) {
    // x1 = 3; 2 x0 + x1 = 7: equation 0 gives unknown 1, equation 1 gives unknown 0.
    const std::vector<LinearProgram::Entry> entries = {{0, 1}, {1, 0}, {1, 1}};
    const std::vector<LinearProgram::Entry> pivots = {{0, 1}, {1, 0}};
    LinearProgram program(entries, pivots);
    std::vector<double> values(program.slotCount(), 0.0), right(2);
    values[program.slot(0)] = 1;
    values[program.slot(1)] = 2;
    values[program.slot(2)] = 1;
    right[program.positionOfRow(0)] = 3;
    right[program.positionOfRow(1)] = 7;
    ASSERT_TRUE(program.run(values, right));
    EXPECT_DOUBLE_EQ(right[program.positionOfColumn(1)], 3);
    EXPECT_DOUBLE_EQ(right[program.positionOfColumn(0)], 2);
}

TEST(LinearProgram, SaysWhichPivotVanished) {
    const std::vector<LinearProgram::Entry> entries = {{0, 0}, {1, 1}, {2, 2}, {1, 2}, {2, 1}};
    const std::vector<LinearProgram::Entry> pivots = {{0, 0}, {1, 1}, {2, 2}};
    const double inf = std::numeric_limits<double>::infinity();
    const struct {
        double first, second;
        int failed;
    } cases[] = {{0, 1, 0}, {1, 0, 1}, {1, inf, 1}, {1, std::nan(""), 1}, {1, 1, 2}, {1e-201, 1, 0}, {1e201, 1, 0}};
    for (const auto& c : cases) {
        LinearProgram program(entries, pivots);
        std::vector<double> values(program.slotCount(), 0.0), right(3, 1.0);
        values[program.slot(0)] = c.first;
        // The last two equations are the same where the second pivot is 1: nothing is left for the third.
        for (const int entry : {1, 2, 3, 4}) values[program.slot(entry)] = 1;
        values[program.slot(1)] = c.second;
        EXPECT_FALSE(program.run(values, right)) << c.first << ", " << c.second;
        EXPECT_EQ(program.failedPosition(), c.failed) << c.first << ", " << c.second;
    }
}

}  // namespace
}  // namespace tiepoint
