// rail-halves: rails in two halves that look like one.

#include "support/inspect_bench.h"

namespace tiepoint::test {
namespace {

TEST(RailHalves, OneHalfWithoutCurrent) {
    auto builder = onRails(Rails::Split, "A.top+16", "A.bottom-5", "A.f24");
    const auto findings = inspected(builder.share());
    ASSERT_EQ(findings.size(), 1u) << told(findings);
    EXPECT_EQ(findings[0].rule, "rail-halves");
    EXPECT_EQ(names(findings[0].holes), (Ids{"A.top+12", "A.top+13"}));
    EXPECT_TRUE(afterMend(builder.build(), findings[0]).empty());
    EXPECT_GT(brightnessAfterMend(builder.build(), findings[0], "D1"), 0.2);
}

TEST(RailHalves, SilentOnRailsThatRunThroughAndWithinOneHalf) {
    EXPECT_TRUE(inspected(onRails(Rails::Through, "A.top+16", "A.bottom-20", "A.f24").share()).empty());
    EXPECT_TRUE(inspected(onRails(Rails::Split, "A.top+11", "A.bottom-10", "A.f24").share()).empty());
}

}  // namespace
}  // namespace tiepoint::test
