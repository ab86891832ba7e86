// gap-crossed: circuits that count on metal across the gap.

#include "support/inspect_bench.h"

namespace tiepoint::test {
namespace {

TEST(GapCrossed, StripsOfOneColumnAreTwo) {
    auto builder = supplied();
    builder.part("R1", "resistor", {{"1", "A.c8"}, {"2", "A.c14"}})
        .part("D1", "led", {{"anode", "A.h14"}, {"cathode", "A.h17"}})
        .jumper("W1", "A.top+7", "A.a8", "red")
        .jumper("W2", "A.j17", "A.bottom-16", "black");
    const auto findings = inspected(builder.share());
    ASSERT_EQ(findings.size(), 1u) << told(findings);
    EXPECT_EQ(findings[0].rule, "gap-crossed");
    EXPECT_EQ(names(findings[0].holes), (Ids{"A.e14", "A.f14"}));
    EXPECT_TRUE(findings[0].text.starts_with("e14 and f14 are not joined")) << findings[0].text;
    EXPECT_TRUE(afterMend(builder.build(), findings[0]).empty());
    EXPECT_GT(brightnessAfterMend(builder.build(), findings[0], "D1"), 0.2);
}

TEST(GapCrossed, SilentWhereThePartItselfBridgesTheGap) { EXPECT_TRUE(found("gap-crossed", beacon().share()).empty()); }

}  // namespace
}  // namespace tiepoint::test
