// one-wire: circuits that nothing leads back from.

#include "support/inspect_bench.h"

namespace tiepoint::test {
namespace {

TEST(OneWire, NothingReturnsToMinus) {
    const auto builder = pairedBeacon(true, false);
    const auto findings = inspected(builder.share());
    ASSERT_FALSE(findings.empty());
    EXPECT_EQ(findings[0].rule, "one-wire") << told(findings);
    EXPECT_EQ(findings[0].severity, Severity::Fault);
    EXPECT_EQ(findings[0].parts, Ids{"D1"});
    EXPECT_NE(findings[0].text.find("open circuit: no complete path"), std::string::npos);
    EXPECT_TRUE(afterMend(builder.build(), findings[0]).empty());
    EXPECT_GT(brightnessAfterMend(builder.build(), findings[0], "D1"), 0.2);
}

}  // namespace
}  // namespace tiepoint::test
