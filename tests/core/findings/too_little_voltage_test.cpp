// too-little-voltage: forward voltages at 20 mA from the catalogue (red 2.0 V, blue 3.2 V; sources named there).

#include "support/inspect_bench.h"

namespace tiepoint::test {
namespace {

TEST(TooLittleVoltage, BlueOnOneCell) {
    BenchBuilder builder;
    builder.board("A", "half")
        .part("PS1", "cells", {{"+", "A.top+3"}, {"-", "A.bottom-3"}}, {{"count", 1}})
        .part("R1", "resistor", {{"1", "A.c8"}, {"2", "A.c14"}}, {{"resistance", 330}})
        .part("D1", "led", {{"anode", "A.e14"}, {"cathode", "A.f14"}}, {{"colour", "blue"}})
        .jumper("W1", "A.top+7", "A.a8", "red")
        .jumper("W2", "A.j14", "A.bottom-13", "black");
    const auto findings = inspected(builder.share());
    ASSERT_EQ(findings.size(), 1u) << told(findings);
    EXPECT_EQ(findings[0].rule, "too-little-voltage");
    EXPECT_EQ(findings[0].parts, (Ids{"D1", "PS1"}));
    EXPECT_TRUE(afterMend(builder.build(), findings[0]).empty());
}

TEST(TooLittleVoltage, FourRedLedsInARowOnFiveVolts) {
    auto builder = supplied();
    builder.part("R1", "resistor", {{"1", "A.c3"}, {"2", "A.c8"}}, {{"resistance", 330}})
        .part("D1", "led", {{"anode", "A.e8"}, {"cathode", "A.e11"}})
        .part("D2", "led", {{"anode", "A.d11"}, {"cathode", "A.d14"}})
        .part("D3", "led", {{"anode", "A.e14"}, {"cathode", "A.e17"}})
        .part("D4", "led", {{"anode", "A.d17"}, {"cathode", "A.d20"}})
        .jumper("W1", "A.top+5", "A.a3", "red")
        .jumper("W2", "A.a20", "A.bottom-18", "black");
    const auto findings = inspected(builder.share());
    ASSERT_FALSE(findings.empty());
    EXPECT_EQ(findings[0].rule, "too-little-voltage") << told(findings);
    EXPECT_EQ(findings.size(), 1u) << told(findings);
    EXPECT_TRUE(afterMend(builder.build(), findings[0]).empty()) << told(afterMend(builder.build(), findings[0]));
}

TEST(TooLittleVoltage, SilentOnEnough) { EXPECT_TRUE(inspected(beacon({.colour = "blue"}).share()).empty()); }

}  // namespace
}  // namespace tiepoint::test
