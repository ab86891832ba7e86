// open-loop: circuits that nothing leads to.

#include "support/inspect_bench.h"

namespace tiepoint::test {
namespace {

TEST(OpenLoop, NothingComesFromPlus) {
    const auto builder = pairedBeacon(false, true);
    const auto findings = inspected(builder.share());
    ASSERT_FALSE(findings.empty());
    EXPECT_EQ(findings[0].rule, "open-loop") << told(findings);
    EXPECT_TRUE(afterMend(builder.build(), findings[0]).empty());
    EXPECT_GT(brightnessAfterMend(builder.build(), findings[0], "D1"), 0.2);
}

TEST(OpenLoop, NeitherEndIsReached) {
    const auto findings = inspected(pairedBeacon(false, false).share());
    ASSERT_FALSE(findings.empty());
    EXPECT_EQ(findings[0].rule, "open-loop") << told(findings);
}

TEST(OpenLoop, SilentOnAClosedLoopAndOnOneThatAButtonCloses) {
    EXPECT_TRUE(inspected(pairedBeacon(true, true).share()).empty())
        << told(inspected(pairedBeacon(true, true).share()));
    auto builder = supplied();
    builder.part("R1", "resistor", {{"1", "A.c8"}, {"2", "A.c14"}})
        .part("S1", "push-button", {{"1a", "A.e14"}, {"1b", "A.f14"}, {"2a", "A.e16"}, {"2b", "A.f16"}})
        .part("D1", "led", {{"anode", "A.h16"}, {"cathode", "A.h19"}})
        .jumper("W1", "A.top+7", "A.a8", "red")
        .jumper("W2", "A.j19", "A.bottom-18", "black");
    EXPECT_TRUE(inspected(builder.share()).empty());
}

}  // namespace
}  // namespace tiepoint::test
