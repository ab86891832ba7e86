// coil-spike: coils that are cut off with and without a way for their current.

#include "support/build_bench.h"
#include "support/inspect_bench.h"

#include <gtest/gtest.h>

namespace tiepoint::test {
namespace {

/// A button switches a relay's coil at 5 V; the diode lies across the coil, its ring towards plus, or not at all.
std::shared_ptr<const Bench> switchedCoil(bool diode) {
    BenchBuilder builder;
    builder.board("A", "half")
        .part("PS1", "bench-supply", {{"+", "A.top+3"}, {"-", "A.bottom-3"}}, {{"voltage", 5}})
        .part("S1", "push-button", {{"1a", "A.e7"}, {"1b", "A.f7"}, {"2a", "A.e9"}, {"2b", "A.f9"}})
        .part("K1", "relay",
              {{"coil1", "A.f15"}, {"coil2", "A.e15"}, {"common", "A.f18"}, {"open", "A.f20"}, {"closed", "A.e20"}})
        .part("R1", "resistor", {{"1", "A.h20"}, {"2", "A.h25"}}, {{"resistance", 330}})
        .part("D1", "led", {{"anode", "A.g25"}, {"cathode", "A.g27"}})
        .jumper("W1", "A.top+6", "A.a7", "red")
        .jumper("W2", "A.j9", "A.j15", "yellow")
        .jumper("W3", "A.a15", "A.top-13", "black")
        .jumper("W4", "A.top+20", "A.i18", "red")
        .jumper("W5", "A.j27", "A.bottom-23", "black")
        .jumper("W6", "A.top-25", "A.bottom-25", "black");
    if (diode) builder.part("D2", "diode", {{"cathode", "A.i15"}, {"anode", "A.i12"}}).jumper("W7", "A.b15", "A.j12");
    return builder.share();
}

TEST(CoilSpike, ToldWhereNothingLetsTheCurrentRunOn) {
    const auto bare = found("coil-spike", switchedCoil(false));
    ASSERT_EQ(bare.size(), 1u) << told(inspected(switchedCoil(false)));
    EXPECT_EQ(bare[0].severity, Severity::Fault);
    EXPECT_EQ(bare[0].parts, std::vector<std::string>{"K1"});
    // Air breaks down at 330 V; the supply's 5 V stand on the contact's other side.
    EXPECT_GT(bare[0].figures[0].second, 200);
    EXPECT_LT(bare[0].figures[0].second, 360);
    EXPECT_TRUE(found("coil-spike", switchedCoil(true)).empty()) << told(inspected(switchedCoil(true)));
}

}  // namespace
}  // namespace tiepoint::test
