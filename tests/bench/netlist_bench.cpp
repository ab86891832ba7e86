// Circuits without places: two benches of 50 parts compared, from the benches on (nets, circuits, equality); the digest of a circuit of 1,000 parts;
// and symmetric circuits. Beside a general graph library's search for an isomorphism on the same small circuits.

#include "bench/full_boards.h"
#include "bench/stopwatch.h"
#include "core/netlist/bench_netlist.h"
#include "core/netlist/equality.h"
#include "support/graph_oracle.h"
#include "support/netlists.h"

#include <cstdio>

namespace tiepoint::test {
namespace {

Netlist circuitOf(const std::shared_ptr<const Bench>& bench) { return netlistOf(*buildLayout(bench)); }

Netlist ladder(int parts) {
    NetlistBuilder builder;
    const auto name = [](const char* rail, int i) { return rail + std::to_string(i); };
    for (int i = 0; 3 * i < parts; ++i)
        builder.resistor(name("a", i), name("b", i))
            .resistor(name("a", i), name("a", i + 1))
            .resistor(name("b", i), name("b", i + 1));
    return builder.build();
}

Netlist mesh(int nets) {
    NetlistBuilder builder;
    for (int i = 0; i < nets; ++i) {
        for (int j = 0; j < i; ++j) builder.resistor("n" + std::to_string(i), "n" + std::to_string(j));
    }
    return builder.build();
}

/// The same bench with its parts and jumpers listed backwards.
Bench backwards(Bench bench) {
    std::ranges::reverse(bench.parts);
    std::ranges::reverse(bench.jumpers);
    return bench;
}

int run() {
    std::mt19937 random(5);
    const auto bench = std::make_shared<const Bench>(crowdedBoards(1, kFullBoard));
    const auto other = std::make_shared<const Bench>(backwards(*bench));
    const auto large = std::make_shared<const Bench>(crowdedBoards(20, kFullBoard));
    const Netlist thousand = circuitOf(large), thousandAgain = disguised(thousand, random);
    const Netlist first = circuitOf(bench), second = circuitOf(other);
    const Netlist rungs = ladder(1000), rungsAgain = disguised(rungs, random);
    const Netlist meshed = mesh(30), meshedAgain = disguised(meshed, random);
    std::printf("%zu parts compared; %zu parts digested\n", first.parts.size(), thousand.parts.size());

    bool equal = true;
    const auto compareBoth = [&](const Netlist& a, const Netlist& b) {
        const bool same = compareCircuits(a, b).verdict == Verdict::Equal;
        equal = equal && same;
        keep(same);
    };
    SideBySide race;
    race.add("two benches, from the bench on", [&] { compareBoth(circuitOf(bench), circuitOf(other)); });
    race.add("the same, circuits at hand", [&] { compareBoth(first, second); });
    race.add("the same by a graph library", [&] { keep(oracleEqual(first, second)); });
    race.add("digest of 1,000 parts", [&] { keep(canonicalHash(thousand)); });
    race.add("1,000 parts compared", [&] { compareBoth(thousand, thousandAgain); });
    race.add("a ladder of 1,000 resistors compared", [&] { compareBoth(rungs, rungsAgain); });
    race.add("its digest", [&] { keep(canonicalHash(rungs)); });
    race.add("a mesh of 435 resistors compared", [&] { compareBoth(meshed, meshedAgain); });
    race.add("its digest", [&] { keep(canonicalHash(meshed)); });
    const auto seconds = race.run();

    Gate gate;
    gate.atLeast("equal circuits found equal (1: yes)", equal, 1);
    gate.atMost("ms for two benches of 50 parts", seconds[0] * 1e3, 5);
    gate.atMost("ms for the digest of 1,000 parts", seconds[3] * 1e3, 50);
    return gate.exitCode();
}

}  // namespace
}  // namespace tiepoint::test

int main() { return tiepoint::test::run(); }
