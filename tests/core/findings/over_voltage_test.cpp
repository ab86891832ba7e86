// over-voltage: 12 V across the open contact of a push button (data sheets named in the catalogue).

#include "support/inspect_bench.h"

namespace tiepoint::test {
namespace {

TEST(OverVoltage, AcrossAnOpenContact) {
    for (const auto& [volt, count] : {std::pair(5.0, 0u), std::pair(12.0, 0u), std::pair(15.0, 1u)}) {
        auto builder = supplied(volt);
        builder.part("R1", "resistor", {{"1", "A.c8"}, {"2", "A.c14"}}, {{"resistance", 2200}})
            .part("S1", "push-button", {{"1a", "A.e14"}, {"1b", "A.f14"}, {"2a", "A.e16"}, {"2b", "A.f16"}})
            .jumper("W1", "A.top+7", "A.a8", "red")
            .jumper("W2", "A.j16", "A.bottom-14", "black");
        const auto findings = inspected(builder.share());
        ASSERT_EQ(findings.size(), count) << volt << told(findings);
        if (count == 0) continue;
        EXPECT_EQ(findings[0].rule, "over-voltage");
        EXPECT_EQ(findings[0].parts, Ids{"S1"});
        EXPECT_NEAR(findings[0].figures[0].second, volt, 1e-3);
        EXPECT_TRUE(afterMend(builder.build(), findings[0]).empty());
    }
}

}  // namespace
}  // namespace tiepoint::test
