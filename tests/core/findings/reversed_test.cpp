// reversed: LEDs, diodes and supplies that block because they are turned.

#include "support/inspect_bench.h"

namespace tiepoint::test {
namespace {

TEST(Reversed, LedIsToldWithBothVoltagesAndTurned) {
    const auto builder = beacon({"A.f14", "A.e14"});
    const auto findings = inspected(builder.share());
    ASSERT_EQ(findings.size(), 1u) << told(findings);
    EXPECT_EQ(findings[0].rule, "reversed");
    EXPECT_EQ(findings[0].severity, Severity::Fault);
    EXPECT_EQ(findings[0].parts, Ids{"D1"});
    EXPECT_NEAR(findings[0].figures[0].second, 0, 1e-3);
    EXPECT_NEAR(findings[0].figures[1].second, 5, 1e-3);
    EXPECT_TRUE(afterMend(builder.build(), findings[0]).empty());
    EXPECT_GT(brightnessAfterMend(builder.build(), findings[0], "D1"), 0.2);
}

TEST(Reversed, SupplyIsNamedRatherThanTheLedsItDrivesBackwards) {
    BenchBuilder builder;
    builder.board("A", "half")
        .part("PS1", "bench-supply", {{"+", "A.bottom-3"}, {"-", "A.top+3"}})
        .part("R1", "resistor", {{"1", "A.c8"}, {"2", "A.c14"}})
        .part("D1", "led", {{"anode", "A.e14"}, {"cathode", "A.f14"}})
        .jumper("W1", "A.top+7", "A.a8", "red")
        .jumper("W2", "A.j14", "A.bottom-13", "black");
    const auto findings = inspected(builder.share());
    ASSERT_FALSE(findings.empty());
    EXPECT_EQ(findings[0].rule, "reversed");
    EXPECT_EQ(findings[0].parts, Ids{"PS1"});
    EXPECT_TRUE(afterMend(builder.build(), findings[0]).empty());
}

TEST(Reversed, DiodeThatKeepsALedDark) {
    auto builder = supplied();
    builder.part("R1", "resistor", {{"1", "A.c8"}, {"2", "A.c14"}})
        .part("D2", "diode", {{"anode", "A.b18"}, {"cathode", "A.b14"}})
        .part("D1", "led", {{"anode", "A.e18"}, {"cathode", "A.f18"}})
        .jumper("W1", "A.top+7", "A.a8", "red")
        .jumper("W2", "A.j18", "A.bottom-16", "black");
    const auto findings = inspected(builder.share());
    ASSERT_FALSE(findings.empty());
    EXPECT_EQ(findings[0].rule, "reversed");
    EXPECT_EQ(findings[0].parts, Ids{"D2"});
    EXPECT_TRUE(afterMend(builder.build(), findings[0]).empty());
}

TEST(Reversed, SilentWhereADiodeIsMeantToBlock) {
    auto builder = beacon();
    builder.part("D2", "diode", {{"anode", "A.g14"}, {"cathode", "A.g18"}}).jumper("W3", "A.i18", "A.top+16", "red");
    EXPECT_TRUE(found("reversed", builder.share()).empty());
    EXPECT_TRUE(found("reversed", beacon().share()).empty());
}

TEST(Reversed, SeenThroughAButton) {
    auto builder = supplied();
    builder.part("R1", "resistor", {{"1", "A.c8"}, {"2", "A.c14"}})
        .part("S1", "push-button", {{"1a", "A.e14"}, {"1b", "A.f14"}, {"2a", "A.e16"}, {"2b", "A.f16"}})
        .part("D1", "led", {{"anode", "A.h19"}, {"cathode", "A.h16"}})
        .jumper("W1", "A.top+7", "A.a8", "red")
        .jumper("W2", "A.j19", "A.bottom-18", "black");
    const auto findings = inspected(builder.share());
    ASSERT_EQ(findings.size(), 1u) << told(findings);
    EXPECT_EQ(findings[0].rule, "reversed");
    EXPECT_GT(brightnessAfterMend(builder.build(), findings[0], "D1", {"S1"}), 0.2);
}

}  // namespace
}  // namespace tiepoint::test
