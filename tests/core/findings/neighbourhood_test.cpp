// What hangs together: parts and jumpers carry on, rails and supplies end it, a meter that only looks on joins nothing.

#include "core/findings/neighbourhood.h"

#include "core/nets/layout.h"
#include "support/build_bench.h"

#include <gtest/gtest.h>

namespace tiepoint {
namespace {

using namespace test;

/// Two lamps, each with its resistor, fed from the same rails: the one up to column 12, the other from column 20 on.
BenchBuilder twoLamps() {
    return BenchBuilder()
        .board("A", "half")
        .part("PS1", "bench-supply", {{"+", "A.top+3"}, {"-", "A.bottom-3"}}, {{"voltage", 5.0}}, {{"on", 1.0}})
        .jumper("W1", "A.top+4", "A.a5")
        .part("R1", "resistor", {{"1", "A.c5"}, {"2", "A.c10"}})
        .part("D1", "led", {{"anode", "A.d10"}, {"cathode", "A.d12"}})
        .jumper("W2", "A.top+18", "A.a20")
        .part("R2", "resistor", {{"1", "A.c20"}, {"2", "A.c25"}})
        .part("D2", "led", {{"anode", "A.d25"}, {"cathode", "A.d27"}});
}

struct Reached {
    bool own, ownLine, other;
};

/// What the first lamp's neighbourhood holds: its own column, the column before its resistor, the other lamp's column.
Reached reachOf(BenchBuilder builder) {
    const auto layout = buildLayout(builder.share());
    int lamp = -1;
    for (int part = 0; part < static_cast<int>(layout->bench->parts.size()); ++part) {
        if (layout->bench->parts[static_cast<std::size_t>(part)].id == "D1") lamp = part;
    }
    const Neighbourhood near(*layout, lamp);
    return {near.holds({"A", Line::E, 12}), near.holds({"A", Line::E, 5}), near.holds({"A", Line::E, 25})};
}

TEST(Neighbourhood, EndsAtTheRails) {
    const Reached reach = reachOf(twoLamps());
    EXPECT_TRUE(reach.own);
    EXPECT_TRUE(reach.ownLine);
    EXPECT_FALSE(reach.other);
}

TEST(Neighbourhood, GoesOnThroughAJumper) { EXPECT_TRUE(reachOf(twoLamps().jumper("W3", "A.e12", "A.e25")).other); }

TEST(Neighbourhood, AVoltmeterJoinsNothingButAnAmmeterDoes) {
    const auto with = [](const char* dial) {
        return reachOf(twoLamps().part("M1", "multimeter", {{"+", "A.e12"}, {"com", "A.e25"}}, {}, {{"dial", dial}}))
            .other;
    };
    EXPECT_FALSE(with("volts"));
    EXPECT_TRUE(with("amperes"));
}

}  // namespace
}  // namespace tiepoint
