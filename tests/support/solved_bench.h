#pragma once
// Snapshots for tests: of a bench in one line of text, and of circuits made up at random.

#include "core/snapshot/snapshot.h"
#include "support/compact_bench.h"
#include "support/lay_out.h"

#include <cmath>
#include <memory>
#include <random>
#include <string_view>
#include <vector>

namespace tiepoint::test {

inline std::shared_ptr<const Snapshot> solveCompact(std::string_view text, const Inputs& inputs = {}) {
    return evaluate(std::make_shared<const Bench>(compactBench(text)), inputs);
}

/// One or two supplies, some of them held back by their limit, over resistors of 3 ohm to 300 kilohm and LEDs of all colours.
inline std::shared_ptr<const Snapshot> solveAtRandom(std::mt19937& random) {
    const auto pick = [&](int count) { return static_cast<int>(random() % static_cast<unsigned>(count)); };
    std::uniform_real_distribution<double> exponent(0.5, 5.5);
    const int nodes = 3 + pick(9);
    const auto node = [&] { return fmt::format("n{}", pick(nodes)); };
    std::vector<Piece2> pieces{
        {"PS1", "bench-supply", "n0", "n1", {{"voltage", 1 + pick(24)}, {"currentLimit", pick(3) ? 0.5 : 0.02}}}};
    if (pick(3) == 0) pieces.push_back({"PS2", "bench-supply", node(), node(), {{"voltage", 1 + pick(12)}}});
    for (int k = 1, parts = nodes + pick(3 * nodes); k <= parts; ++k) {
        const std::string first = node(), second = node();
        if (pick(4) != 0)
            pieces.push_back(
                {fmt::format("R{}", k), "resistor", first, second, {{"resistance", std::pow(10, exponent(random))}}});
        else
            pieces.push_back({fmt::format("D{}", k), "led", first, second, {{"colour", pick(8)}}});
    }
    return evaluate(std::make_shared<const Bench>(layOut(pieces)));
}

}  // namespace tiepoint::test
