// Whole numbers in place of flows: balanced at every node, none further than one from its flow, equal ones equal where they may be.

#include "core/snapshot/whole_flows.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace tiepoint {
namespace {

/// What leaves each node, less what comes there.
std::vector<std::int64_t> defectsOf(int nodes, const std::vector<FlowEdge>& edges,
                                    const std::vector<std::int64_t>& whole) {
    std::vector<std::int64_t> sum(static_cast<std::size_t>(nodes), 0);
    for (std::size_t e = 0; e < edges.size(); ++e) {
        sum[edges[e].from] += whole[e];
        sum[edges[e].to] -= whole[e];
    }
    return sum;
}

void checkWhole(int nodes, const std::vector<FlowEdge>& edges) {
    const auto whole = wholeFlows(nodes, edges);
    ASSERT_EQ(whole.size(), edges.size());
    for (const std::int64_t defect : defectsOf(nodes, edges, whole)) EXPECT_EQ(defect, 0);
    constexpr double kGrain = 1e-3;
    for (std::size_t e = 0; e < edges.size(); ++e)
        EXPECT_LE(std::abs(static_cast<double>(whole[e]) - edges[e].flow), 1 + kGrain) << e;
}

TEST(WholeFlows, OneLoopIsRoundedToTheNearest) {
    const std::vector<FlowEdge> loop{{0, 1, 9.37}, {1, 2, 9.37}, {0, 2, -9.37}};
    EXPECT_EQ(wholeFlows(3, loop), (std::vector<std::int64_t>{9, 9, -9}));
}

TEST(WholeFlows, EqualBranchesStayEqual) {
    // Two times 468.5: the sum is shown as 938, one more than the nearest, so that both branches show the same.
    const std::vector<FlowEdge> pair{{0, 1, 937}, {1, 0, 468.5}, {1, 0, 468.5}};
    const auto whole = wholeFlows(2, pair);
    EXPECT_EQ(whole[1], whole[2]);
    checkWhole(2, pair);
}

TEST(WholeFlows, ManyBranchesDontMoveTheSum) {
    std::vector<FlowEdge> many{{0, 1, 0}};
    for (int branch = 0; branch < 40; ++branch) {
        many.push_back({1, 0, 10.4});
        many.front().flow += 10.4;
    }
    checkWhole(2, many);  // each branch nearest would make 400 of 416
}

TEST(WholeFlows, RandomNetworksAreBalanced) {
    std::mt19937 random(5);
    std::uniform_real_distribution<double> size(-40, 40);
    int sizes = 0;
    for (int round = 0; round < 400; ++round) {
        SCOPED_TRACE(round);
        const int nodes = 2 + static_cast<int>(random() % 30);
        const auto node = [&] { return static_cast<int>(random() % static_cast<unsigned>(nodes)); };
        // Loops of any flow, laid over each other: whatever they are, every node is balanced.
        std::vector<FlowEdge> edges;
        for (int loop = 0, loops = 1 + static_cast<int>(random() % 40); loop < loops; ++loop) {
            const double flow = size(random);
            const int start = node();
            int at = start;
            for (int step = 0, steps = static_cast<int>(random() % 6); step < steps; ++step) {
                const int next = node();
                edges.push_back({at, next, flow});
                at = next;
            }
            edges.push_back({start, at, -flow});
        }
        sizes += static_cast<int>(edges.size());
        checkWhole(nodes, edges);
    }
    EXPECT_GT(sizes, 10000);
}

TEST(WholeFlows, NothingIsNothing) {
    EXPECT_TRUE(wholeFlows(0, {}).empty());
    const std::vector<FlowEdge> still{{0, 1, 0}, {1, 1, 0.2}};
    EXPECT_EQ(wholeFlows(2, still), (std::vector<std::int64_t>{0, 0}));
}

}  // namespace
}  // namespace tiepoint
