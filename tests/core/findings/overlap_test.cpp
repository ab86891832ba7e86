// overlap: bodies that hands couldn't place so.

#include "support/inspect_bench.h"

namespace tiepoint::test {
namespace {

TEST(Overlap, ResistorsOverEachOther) {
    for (const auto& [row, count] : {std::pair("A.c", 1u), std::pair("A.e", 0u)}) {
        auto builder = supplied();
        const std::string first = std::string(row) + "9", second = std::string(row) + "15";
        builder.part("R1", "resistor", {{"1", "A.c8"}, {"2", "A.c14"}})
            .part("R2", "resistor", {{"1", first}, {"2", second}})
            .jumper("W1", "A.top+7", "A.a8", "red")
            .jumper("W2", "A.a14", "A.bottom-13", "black")
            .jumper("W3", "A.top+8", "A.a9", "red")
            .jumper("W4", "A.a15", "A.bottom-14", "black");
        const auto findings = inspected(builder.share());
        ASSERT_EQ(findings.size(), count) << told(findings);
        if (count == 0) continue;
        EXPECT_EQ(findings[0].rule, "overlap");
        EXPECT_EQ(findings[0].severity, Severity::Risk);
        EXPECT_EQ(findings[0].parts, (Ids{"R1", "R2"}));
        EXPECT_TRUE(afterMend(builder.build(), findings[0]).empty());
    }
}

}  // namespace
}  // namespace tiepoint::test
