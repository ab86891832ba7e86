// Which elements stand in one loop: told by hand for a few graphs, and for random ones against a search through every loop.

#include "core/solve/loops.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <functional>
#include <random>

namespace tiepoint {
namespace {

Circuit wired(int nodes, const std::vector<std::pair<int, int>>& wires) {
    Circuit circuit;
    for (int node = 0; node < nodes; ++node) circuit.addNode();
    for (const auto& [from, to] : wires) circuit.addConductor(from, to, 1);
    return circuit;
}

std::vector<int> blocksOf(const Circuit& circuit) {
    return loopBlocks(circuit, std::vector<char>(static_cast<std::size_t>(circuit.elementCount()), 1));
}

TEST(LoopBlocks, SharedGroundIsNoSharedLoop) {
    // Two loops that meet at node 0, a dead end, and an element whose ends metal joins.
    const Circuit circuit = wired(6, {{1, 0}, {1, 2}, {2, 0}, {3, 0}, {3, 0}, {2, 4}, {5, 5}});
    EXPECT_EQ(blocksOf(circuit), (std::vector<int>{0, 0, 0, 1, 1, -1, -1}));
}

TEST(LoopBlocks, WhatIsNotThereOpensLoops) {
    const Circuit circuit = wired(3, {{0, 1}, {1, 2}, {2, 0}});
    EXPECT_EQ(loopBlocks(circuit, std::vector<char>{1, 0, 1}), (std::vector<int>{-1, -1, -1}));
}

TEST(LoopBlocks, LongChainsNeedNoDeepStack) {
    constexpr int kNodes = 200000;
    std::vector<std::pair<int, int>> ring;
    for (int node = 0; node < kNodes; ++node) ring.emplace_back(node, (node + 1) % kNodes);
    const auto blocks = blocksOf(wired(kNodes, ring));
    EXPECT_TRUE(std::ranges::all_of(blocks, [](int block) { return block == 0; }));
}

/// Whether a simple loop runs through both wires: searched for in every order, so for small graphs only.
bool shareALoop(int nodes, const std::vector<std::pair<int, int>>& wires, std::size_t a, std::size_t b) {
    std::vector<char> seen(static_cast<std::size_t>(nodes), 0);
    const std::function<bool(int, bool)> walk = [&](int at, bool met) -> bool {
        for (std::size_t w = 0; w < wires.size(); ++w) {
            const auto [from, to] = wires[w];
            if (w == a || from == to || (from != at && to != at)) continue;
            const int next = from == at ? to : from;
            const bool now = met || w == b;
            if (next == wires[a].first && now) return true;
            if (next == wires[a].first || seen[next]) continue;
            seen[next] = 1;
            if (walk(next, now)) return true;
            seen[next] = 0;
        }
        return false;
    };
    seen[wires[a].second] = 1;
    return walk(wires[a].second, false);
}

TEST(LoopBlocks, AgreeWithEveryLoopOfRandomGraphs) {
    std::mt19937 random(8);
    int together = 0;
    for (int round = 0; round < 200; ++round) {
        const int nodes = 2 + static_cast<int>(random() % 5);
        std::vector<std::pair<int, int>> wires;
        for (int w = 0, count = 1 + static_cast<int>(random() % 7); w < count; ++w)
            wires.emplace_back(random() % nodes, random() % nodes);
        const auto blocks = blocksOf(wired(nodes, wires));
        for (std::size_t a = 0; a < wires.size(); ++a) {
            for (std::size_t b = 0; b < wires.size(); ++b) {
                if (a == b || wires[a].first == wires[a].second || wires[b].first == wires[b].second) continue;
                const bool same = blocks[a] >= 0 && blocks[a] == blocks[b];
                EXPECT_EQ(same, shareALoop(nodes, wires, a, b)) << round << ' ' << a << ' ' << b;
                together += same;
            }
        }
    }
    EXPECT_GT(together, 500);
}

}  // namespace
}  // namespace tiepoint
