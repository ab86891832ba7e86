// rails-apart: rails of one sign that are not one net.

#include "support/inspect_bench.h"

namespace tiepoint::test {
namespace {

TEST(RailsApart, TopMinusIsNotBottomMinus) {
    auto builder = onRails(Rails::Through, "A.top+16", "A.top-23", "A.e27");
    const auto findings = inspected(builder.share());
    ASSERT_EQ(findings.size(), 1u) << told(findings);
    EXPECT_EQ(findings[0].rule, "rails-apart");
    EXPECT_TRUE(afterMend(builder.build(), findings[0]).empty());
    EXPECT_GT(brightnessAfterMend(builder.build(), findings[0], "D1"), 0.2);
}

}  // namespace
}  // namespace tiepoint::test
