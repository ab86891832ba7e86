// The truth table of ten switches: all 1024 combinations solved, and the shortest expressions for two lamps. Beside it the same
// combinations solved each from scratch, as the command line solves one.

#include "bench/stopwatch.h"
#include "core/snapshot/lit.h"
#include "core/truth/truth_table.h"
#include "support/switch_network.h"

#include <cstdio>
#include <random>

namespace tiepoint::test {
namespace {

constexpr int kSwitches = 10;
constexpr double kBarSecond = 0.2;

/// How many lights are lit, over all combinations, each solved from scratch.
int litFromScratch(const Bench& bench) {
    const auto throws = throwsOf(bench);
    int lit = 0;
    for (unsigned row = 0; row < 1u << kSwitches; ++row) {
        auto thrown = std::make_shared<Bench>(bench);
        Inputs inputs;
        for (int s = 0; s < kSwitches; ++s) {
            const int digit = static_cast<int>(row >> (kSwitches - 1 - s) & 1);
            Part& part = thrown->parts[throws[s].part];
            if (!throws[s].isCap())
                part.state[throws[s].state] = digit;
            else if (digit != 0)
                inputs.held.insert(part.id);
        }
        const auto snapshot = evaluate(std::move(thrown), inputs);
        for (int part = 0; part < static_cast<int>(bench.parts.size()); ++part) lit += isLit(*snapshot, part);
    }
    return lit;
}

int litOf(const TruthTable& table) {
    int lit = 0;
    for (const TruthRow& row : table.rows) {
        for (const LampState& lamp : row.lamps) lit += lamp.lit;
    }
    return lit;
}

void measure(const char* what, const SwitchNetwork& network, Gate& gate) {
    const auto bench = std::make_shared<const Bench>(network.bench());
    SideBySide race;
    race.add("the table of one bench", [&] { keep(makeTruthTable(bench)->rows.size()); });
    race.add("each combination from scratch", [&] { keep(litFromScratch(*bench)); });
    std::printf("ten switches, %s\n", what);
    const auto seconds = race.run();
    gate.atLeast("the same lights lit (1: yes)", litOf(*makeTruthTable(bench)) == litFromScratch(*bench), 1);
    gate.atMost("seconds of the whole table", seconds[0], kBarSecond);
    std::printf("     %.1f times faster than from scratch\n", seconds[1] / seconds[0]);
}

int run() {
    Gate gate;
    std::mt19937 random(4);
    measure("all push buttons", randomNetwork(random, kSwitches, false), gate);
    measure("buttons and slides", randomNetwork(random, kSwitches, true), gate);
    SwitchNetwork slides = randomNetwork(random, kSwitches, true);
    for (auto& each : slides.switches) each.changeover = true;
    measure("all slides", slides, gate);

    TruthFunction function(kSwitches);
    for (Truth& row : function.rows) row = random() % 2 ? Truth::Yes : Truth::No;
    SideBySide race;
    race.add("expression of a random function", [&] { keep(shortestExpression(function).exact); });
    std::printf("ten switches, no network: a function by chance, whose search is cut short\n");
    gate.atMost("seconds of the expression", race.run()[0], kBarSecond);
    return gate.exitCode();
}

}  // namespace
}  // namespace tiepoint::test

int main() { return tiepoint::test::run(); }
