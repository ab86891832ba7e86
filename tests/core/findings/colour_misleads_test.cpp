// colour-misleads: black jumpers in plus and red ones in minus.

#include "support/inspect_bench.h"

namespace tiepoint::test {
namespace {

// Common practice: red is plus, black is minus, other colours lie between.
TEST(ColourMisleads, BlackInPlusAndRedInMinus) {
    struct Case {
        const char* plus;
        const char* minus;
        std::vector<std::string> told;
    };
    for (const Case& each : {Case{"red", "black", {}}, Case{"black", "black", {"W1"}}, Case{"red", "red", {"W2"}},
                             Case{"black", "red", {"W1", "W2"}}, Case{"yellow", "blue", {}}}) {
        auto builder = supplied();
        builder.part("R1", "resistor", {{"1", "A.c8"}, {"2", "A.c14"}})
            .jumper("W1", "A.top+7", "A.a8", each.plus)
            .jumper("W2", "A.a14", "A.bottom-13", each.minus);
        const auto findings = inspected(builder.share());
        ASSERT_EQ(findings.size(), each.told.size()) << each.plus << each.minus << told(findings);
        for (std::size_t i = 0; i < findings.size(); ++i) {
            EXPECT_EQ(findings[i].rule, "colour-misleads");
            EXPECT_EQ(findings[i].severity, Severity::Remark);
            EXPECT_EQ(findings[i].parts, Ids{each.told[i]});
            EXPECT_EQ(afterMend(builder.build(), findings[i]).size(), each.told.size() - 1);
        }
    }
}

}  // namespace
}  // namespace tiepoint::test
