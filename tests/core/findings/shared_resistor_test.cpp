// shared-resistor: LEDs side by side behind one resistor.

#include "support/inspect_bench.h"

namespace tiepoint::test {
namespace {

BenchBuilder pair(const char* colour, bool ownResistor) {
    auto builder = beacon();
    builder.part("D2", "led", {{"anode", ownResistor ? "A.e20" : "A.d14"}, {"cathode", "A.g14"}}, {{"colour", colour}});
    if (ownResistor) builder.part("R2", "resistor", {{"1", "A.b8"}, {"2", "A.b20"}});
    return builder;
}

TEST(SharedResistor, UnequalCurrentsWithFigures) {
    const auto findings = found("shared-resistor", pair("amber", false).share());
    ASSERT_EQ(findings.size(), 1u);
    EXPECT_EQ(findings[0].parts, (Ids{"D1", "D2", "R1"}));
    EXPECT_EQ(findings[0].severity, Severity::Remark);
    EXPECT_GT(findings[0].figures[0].second, 1.5 * findings[0].figures[1].second);
    EXPECT_GT(findings[0].figures[1].second, 0);
}

TEST(SharedResistor, OneThatStaysDarkIsAFault) {
    const auto findings = inspected(pair("blue", false).share());
    ASSERT_FALSE(findings.empty());
    EXPECT_EQ(findings[0].rule, "shared-resistor") << told(findings);
    EXPECT_EQ(findings[0].severity, Severity::Fault);
}

TEST(SharedResistor, SilentWithOneResistorEach) { EXPECT_TRUE(inspected(pair("amber", true).share()).empty()); }

}  // namespace
}  // namespace tiepoint::test
