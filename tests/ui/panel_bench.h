#pragma once
// A crowded bench: the lamps of a harbour panel, 35 parts and 30 jumpers on two boards, one below the other.

#include "support/build_bench.h"

namespace tiepoint::ui {

inline Bench harbourPanel() {
    test::BenchBuilder bench;
    constexpr double kBelowPitches = 22;
    bench.title("Harbour panel").board("A", "full").board("B", "full", 0, kBelowPitches);
    bench.part("PS1", "bench-supply", {{"+", "A.top+1"}, {"-", "A.bottom-1"}}, {{"voltage", 5}});
    constexpr int kBranches = 13, kOnBoard = 7, kApart = 8, kFirst = 4;
    for (int i = 0; i < kBranches; ++i) {
        const std::string board = i < kOnBoard ? "A." : "B.", n = std::to_string(i + 1);
        const int column = kFirst + kApart * (i % kOnBoard);
        const auto hole = [&](const char* line, int number) { return board + line + std::to_string(number); };
        const int rail = 2 + column * 5 / 6;
        const bool switched = i % 3 == 1;
        bench.jumper("P" + n, hole("top+", rail), hole("a", column), "red");
        bench.part("R" + n, "resistor", {{"1", hole("c", column)}, {"2", hole("c", column + 4)}},
                   {{"resistance", 150 + 90 * i}});
        if (switched) {
            bench.part("S" + n, "push-button",
                       {{"1a", hole("e", column + 4)},
                        {"1b", hole("f", column + 4)},
                        {"2a", hole("e", column + 6)},
                        {"2b", hole("f", column + 6)}});
            bench.cap(std::string(1, static_cast<char>('A' + i)));
            bench.part("L" + n, "led", {{"anode", hole("h", column + 6)}, {"cathode", hole("h", column + 9)}},
                       {{"colour", "green"}});
            bench.part("Q" + n, "resistor", {{"1", hole("b", column)}, {"2", hole("b", column + 4)}},
                       {{"resistance", 1000}});
            bench.jumper("M" + n, hole("j", column + 9), hole("bottom-", rail + 5), "black");
        } else {
            bench.part("L" + n, "led", {{"anode", hole("e", column + 4)}, {"cathode", hole("f", column + 4)}},
                       {{"colour", i % 2 ? "amber" : "red"}});
            bench.jumper("M" + n, hole("j", column + 4), hole("bottom-", rail + 2), "black");
        }
    }
    bench.jumper("X1", "A.top+50", "B.top+50", "red").jumper("X2", "A.bottom-50", "B.bottom-50", "black");
    bench.jumper("X3", "A.g61", "A.g63", "white").jumper("X4", "B.g61", "B.g63", "white");
    return bench.build();
}

}  // namespace tiepoint::ui
