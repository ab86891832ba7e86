#pragma once
// Crowded boards for the benchmarks: full boards with LED branches, pressed buttons and plain resistors, all of them live.

#include "support/build_bench.h"

#include <fmt/format.h>

#include <cstdlib>
#include <set>
#include <string>

namespace tiepoint::test {

/// How many branches of each kind stand on one board.
struct Branches {
    int led, button, plain;
};

constexpr Branches kFullBoard{15, 8, 2};     ///< 25 resistors, 15 LEDs, 8 buttons, 40 jumpers
constexpr Branches kHalfFullBoard{8, 4, 0};  ///< 25 parts with the supply: ten such boards hold 250

/// Gives out the holes of one rail, the nearest to a column first.
class RailHoles {
public:
    RailHoles(std::string board, std::string line) : board_(std::move(board)), line_(std::move(line)) {}
    std::string near(int column) {
        const BoardKind& kind = *findBoardKind("full");
        int best = 0;
        for (int n = 1; n <= kind.railHoles; ++n) {
            if (taken_.contains(n)) continue;
            if (best == 0 || std::abs(kind.railColumn(n) - column) < std::abs(kind.railColumn(best) - column)) best = n;
        }
        taken_.insert(best);
        return fmt::format("{}.{}{}", board_, line_, best);
    }

private:
    std::string board_, line_;
    std::set<int> taken_;
};

inline void addBranches(BenchBuilder& bench, const std::string& board, const std::string& supply,
                        const Branches& branches, int& number) {
    RailHoles plus(board, "top+"), minus(board, "bottom-");
    bench.part(supply, "bench-supply", {{"+", plus.near(3)}, {"-", minus.near(3)}},
               {{"voltage", 5}, {"currentLimit", 5}});
    const auto hole = [&](char row, int column) { return fmt::format("{}.{}{}", board, row, column); };
    const char* const colours[] = {"red", "amber", "green", "blue", "white"};
    for (int i = 0; i < branches.led; ++i, ++number) {
        const int column = 1 + 2 * i;
        bench.jumper(fmt::format("WA{}", number), plus.near(column), hole('a', column));
        bench.part(fmt::format("R{}", number), "resistor", {{"1", hole('c', column)}, {"2", hole('h', column)}},
                   {{"resistance", 220 + 20 * i}});
        bench.part(fmt::format("D{}", number), "led",
                   {{"anode", hole('i', column)}, {"cathode", hole('i', column + 1)}}, {{"colour", colours[i % 5]}});
        bench.jumper(fmt::format("WB{}", number), hole('j', column + 1), minus.near(column + 1), "black");
    }
    for (int i = 0; i < branches.button; ++i, ++number) {
        const int column = 32 + 3 * i;
        bench.part(fmt::format("R{}", number), "resistor", {{"1", plus.near(column)}, {"2", hole('c', column)}},
                   {{"resistance", 470 + 100 * i}});
        bench.part(fmt::format("S{}", number), "push-button",
                   {{"1a", hole('e', column)},
                    {"1b", hole('f', column)},
                    {"2a", hole('e', column + 2)},
                    {"2b", hole('f', column + 2)}});
        bench.jumper(fmt::format("WC{}", number), hole('j', column + 2), minus.near(column + 2), "blue");
    }
    for (int i = 0; i < branches.plain; ++i, ++number) {
        const int column = 58 + 3 * i;
        bench.part(fmt::format("R{}", number), "resistor", {{"1", plus.near(column)}, {"2", hole('c', column)}},
                   {{"resistance", 1000}});
        bench.jumper(fmt::format("WD{}", number), hole('e', column), minus.near(column), "green");
    }
}

/// So many full-size boards side by side and below each other, each with these branches and a supply of its own.
inline Bench crowdedBoards(int count, const Branches& branches) {
    BenchBuilder bench;
    int number = 1;
    const auto idOf = [](int board) { return std::string(1, static_cast<char>('A' + board)); };
    for (int i = 0; i < count; ++i) bench.board(idOf(i), "full", (i % 2) * 66, (i / 2) * 23);
    for (int i = 0; i < count; ++i) addBranches(bench, idOf(i), fmt::format("PS{}", i + 1), branches, number);
    return bench.build();
}

}  // namespace tiepoint::test
