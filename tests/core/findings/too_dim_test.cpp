// too-dim: lights far below a visible current; bands after IEC 60062 (10 kilohm: brown black orange, 330 ohm: orange orange brown).

#include "support/inspect_bench.h"

namespace tiepoint::test {
namespace {

TEST(TooDim, ByResistance) {
    for (const auto& [ohm, count] :
         {std::pair(330.0, 0u), std::pair(4700.0, 0u), std::pair(10e3, 1u), std::pair(100e3, 1u)}) {
        const auto builder = beacon({.ohm = ohm});
        const auto findings = inspected(builder.share());
        ASSERT_EQ(findings.size(), count) << ohm << told(findings);
        if (count == 0) continue;
        EXPECT_EQ(findings[0].rule, "too-dim");
        EXPECT_EQ(findings[0].severity, ohm > 30e3 ? Severity::Fault : Severity::Remark) << ohm;  // 30 uA can't be seen
        EXPECT_EQ(findings[0].parts, (Ids{"D1", "R1"}));
        EXPECT_NEAR(findings[0].figures[1].second, ohm, 1e-9);
        EXPECT_TRUE(afterMend(builder.build(), findings[0]).empty());
        EXPECT_GT(brightnessAfterMend(builder.build(), findings[0], "D1"), 0.5);
    }
}

TEST(TooDim, SaysTheBandsThatAreThereAndThoseThatSuit) {
    const auto findings = found("too-dim", beacon({.ohm = 10e3}).share());
    ASSERT_EQ(findings.size(), 1u);
    EXPECT_NE(findings[0].text.find("brown black orange"), std::string::npos) << findings[0].text;
    ASSERT_TRUE(findings[0].mend);
    EXPECT_NE(findings[0].mend->text.find("orange orange brown"), std::string::npos) << findings[0].mend->text;
}

}  // namespace
}  // namespace tiepoint::test
