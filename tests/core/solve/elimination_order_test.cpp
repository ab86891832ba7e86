// The order of elimination against what its page promises, on random graphs: every node once, an owned node before its parent, and among
// those that may go next one with the fewest neighbours, counted in a plain graph with all fill.

#include "core/solve/elimination_order.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>
#include <set>

namespace tiepoint {
namespace {

class FillGraph {
public:
    FillGraph(int nodes, const std::vector<Edge>& edges) : neighbours_(nodes) {
        for (const Edge& edge : edges) {
            if (edge.a == edge.b) continue;
            neighbours_[edge.a].insert(edge.b);
            neighbours_[edge.b].insert(edge.a);
        }
    }
    std::size_t degree(int node) const { return neighbours_[node].size(); }
    void eliminate(int node) {
        const std::set<int> around = neighbours_[node];
        for (const int a : around) {
            neighbours_[a].erase(node);
            for (const int b : around) {
                if (a != b) neighbours_[a].insert(b);
            }
        }
        neighbours_[node].clear();
    }

private:
    std::vector<std::set<int>> neighbours_;
};

struct DrawnIsland {
    int nodes = 0;
    std::vector<Edge> edges;
    std::vector<ForestSource> sources;
};

DrawnIsland drawIsland(std::mt19937& random) {
    const auto pick = [&](int count) { return static_cast<int>(random() % static_cast<unsigned>(count)); };
    DrawnIsland island;
    island.nodes = 1 + pick(30);
    for (int k = pick(4 * island.nodes); k > 0; --k) island.edges.push_back({pick(island.nodes), pick(island.nodes)});
    for (int k = pick(island.nodes); k > 0; --k) {
        const int from = pick(island.nodes + 1) - 1, to = pick(island.nodes + 1) - 1;
        if (from != to) island.sources.push_back({from, to, pick(2) == 0});
    }
    return island;
}

/// Whether sources, each a pair of nodes, close no loop with each other; node -1 is a node like any other.
bool isForest(int nodes, const std::vector<ForestSource>& sources) {
    std::vector<int> tree(nodes + 1);
    for (int i = 0; i <= nodes; ++i) tree[i] = i;
    for (const ForestSource& source : sources) {
        const int a = tree[source.from + 1], b = tree[source.to + 1];
        if (a == b) return false;
        for (int& each : tree) {
            if (each == b) each = a;
        }
    }
    return true;
}

TEST(SourceForest, GivesEachSourceThatClosesNoLoopANodeOfItsOwn) {
    std::mt19937 random(11);
    int loops = 0, idealLoops = 0;
    for (int round = 0; round < 300; ++round) {
        SCOPED_TRACE(round);
        const DrawnIsland island = drawIsland(random);
        const SourceForest forest = growSourceForest(island.nodes, island.sources);
        ASSERT_EQ(forest.closesLoop.size(), island.sources.size());
        std::vector<int> owned(island.sources.size(), 0);
        std::vector<ForestSource> taken, ideal;
        for (int node = 0; node < island.nodes; ++node) {
            const int source = forest.sourceOfNode[node];
            if (source < 0) {
                EXPECT_EQ(forest.parentOfNode[node], -1);
                continue;
            }
            ++owned[source];
            const ForestSource& s = island.sources[source];
            ASSERT_TRUE(s.from == node || s.to == node);
            EXPECT_EQ(forest.parentOfNode[node], s.from == node ? s.to : s.from);
        }
        for (std::size_t k = 0; k < owned.size(); ++k) {
            EXPECT_EQ(owned[k], forest.closesLoop[k] ? 0 : 1);
            if (forest.closesLoop[k]) ++loops;
            if (!forest.closesLoop[k]) taken.push_back(island.sources[k]);
            if (island.sources[k].ideal) ideal.push_back(island.sources[k]);
        }
        EXPECT_TRUE(isForest(island.nodes, taken));
        // An ideal source is left out only where ideal sources alone close a loop.
        for (std::size_t k = 0; k < owned.size(); ++k) {
            if (!forest.closesLoop[k] || !island.sources[k].ideal) continue;
            EXPECT_FALSE(isForest(island.nodes, ideal));
            ++idealLoops;
        }
    }
    EXPECT_GT(loops, 50);
    EXPECT_GT(idealLoops, 10);
}

TEST(SourceForest, OwnershipLeadsAwayFromTheKnownNodes) {
    // Known - 2 - 0 - 1: each source owns the node farther away.
    const std::vector<ForestSource> sources = {{0, 2, true}, {-1, 2, true}, {1, 0, false}};
    const SourceForest forest = growSourceForest(3, sources);
    EXPECT_EQ(forest.sourceOfNode, (std::vector<int>{0, 2, 1}));
    EXPECT_EQ(forest.parentOfNode, (std::vector<int>{2, 0, -1}));
}

TEST(EliminationOrder, TakesTheFewestNeighboursFirst) {
    std::mt19937 random(12);
    for (int round = 0; round < 300; ++round) {
        SCOPED_TRACE(round);
        const DrawnIsland island = drawIsland(random);
        const SourceForest forest = growSourceForest(island.nodes, island.sources);
        const std::vector<int> order = eliminationOrder(island.nodes, island.edges, forest);
        ASSERT_EQ(std::set<int>(order.begin(), order.end()).size(), static_cast<std::size_t>(island.nodes));
        ASSERT_EQ(order.size(), static_cast<std::size_t>(island.nodes));
        FillGraph graph(island.nodes, island.edges);
        std::vector<char> gone(island.nodes, 0);
        const auto mayGo = [&](int node) {
            if (gone[node]) return false;
            for (int child = 0; child < island.nodes; ++child) {
                if (forest.parentOfNode[child] == node && !gone[child]) return false;
            }
            return true;
        };
        for (const int node : order) {
            ASSERT_TRUE(mayGo(node)) << "an owned node goes before its parent";
            for (int other = 0; other < island.nodes; ++other) {
                if (!mayGo(other)) continue;
                ASSERT_LE(graph.degree(node), graph.degree(other)) << node << " before " << other;
            }
            graph.eliminate(node);
            gone[node] = 1;
        }
    }
}

}  // namespace
}  // namespace tiepoint
