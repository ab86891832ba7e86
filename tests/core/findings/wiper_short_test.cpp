// wiper-short: potentiometers that are dangerous at one end of their travel.

#include "support/inspect_bench.h"

namespace tiepoint::test {
namespace {

/// A knob used as a resistor in an LED's loop, with or without a fixed resistor.
BenchBuilder dimmer(bool fixedResistor) {
    auto builder = supplied();
    builder
        .part("RV1", "potentiometer", {{"1", "A.e7"}, {"wiper", "A.e9"}, {"2", "A.e11"}}, {{"resistance", 1000}},
              {{"turn", 0.4}})
        .part("D1", "led", {{"anode", "A.e17"}, {"cathode", "A.f17"}})
        .jumper("W1", "A.top+6", "A.a7", "red")
        .jumper("W3", "A.j17", "A.bottom-15", "black");
    if (fixedResistor)
        builder.part("R1", "resistor", {{"1", "A.c9"}, {"2", "A.c17"}}, {{"resistance", 220}});
    else
        builder.jumper("W2", "A.c9", "A.c17", "yellow");
    return builder;
}

TEST(WiperShort, LedWithoutAFixedResistor) {
    const auto builder = dimmer(false);
    const auto findings = inspected(builder.share());
    ASSERT_EQ(findings.size(), 1u) << told(findings);
    EXPECT_EQ(findings[0].rule, "wiper-short");
    EXPECT_EQ(findings[0].severity, Severity::Risk);
    EXPECT_EQ(findings[0].parts, (Ids{"RV1", "D1"}));
    EXPECT_TRUE(afterMend(builder.build(), findings[0]).empty());
}

TEST(WiperShort, SupplyShortedAtOneEnd) {
    auto builder = beacon();
    builder
        .part("RV1", "potentiometer", {{"1", "A.e20"}, {"wiper", "A.e22"}, {"2", "A.e24"}}, {{"resistance", 1000}},
              {{"turn", 0.5}})
        .jumper("W3", "A.top+18", "A.a20", "red")
        .jumper("W4", "A.a22", "A.bottom-19", "black");
    const auto findings = found("wiper-short", builder.share());
    ASSERT_EQ(findings.size(), 1u);
    EXPECT_NE(findings[0].text.find("shorts the supply"), std::string::npos) << findings[0].text;
}

TEST(WiperShort, SilentWithAFixedResistor) { EXPECT_TRUE(inspected(dimmer(true).share()).empty()); }

}  // namespace
}  // namespace tiepoint::test
