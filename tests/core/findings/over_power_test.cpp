// over-power: a quarter-watt resistor bears 0.25 W up to 70 degrees (data sheets named in the catalogue).

#include "support/inspect_bench.h"

namespace tiepoint::test {
namespace {

TEST(OverPower, ByResistance) {
    for (const auto& [ohm, count] :
         {std::pair(330.0, 0u), std::pair(110.0, 0u), std::pair(91.0, 1u), std::pair(22.0, 1u)}) {
        auto builder = supplied();
        builder.part("R1", "resistor", {{"1", "A.c4"}, {"2", "A.c9"}}, {{"resistance", ohm}})
            .jumper("W1", "A.top+4", "A.a4", "red")
            .jumper("W2", "A.a9", "A.bottom-8", "black");
        const auto findings = inspected(builder.share());
        ASSERT_EQ(findings.size(), count) << ohm << told(findings);
        if (count == 0) continue;
        EXPECT_EQ(findings[0].rule, "over-power");
        EXPECT_EQ(findings[0].severity, Severity::Fault);
        EXPECT_NEAR(findings[0].figures[0].second, 25 / ohm, 0.02 * 25 / ohm);  // P = U^2 / R
        EXPECT_TRUE(afterMend(builder.build(), findings[0]).empty());
    }
}

}  // namespace
}  // namespace tiepoint::test
