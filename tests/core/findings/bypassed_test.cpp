// bypassed: parts with all legs in one net.

#include "support/inspect_bench.h"

namespace tiepoint::test {
namespace {

TEST(Bypassed, LedWithBothLegsInOneStrip) {
    auto builder = supplied();
    builder.part("R1", "resistor", {{"1", "A.c8"}, {"2", "A.c14"}})
        .part("D1", "led", {{"anode", "A.d14"}, {"cathode", "A.e14"}})
        .jumper("W1", "A.top+7", "A.a8", "red")
        .jumper("W2", "A.b14", "A.bottom-13", "black");
    const auto findings = inspected(builder.share());
    ASSERT_FALSE(findings.empty());
    EXPECT_EQ(findings[0].rule, "bypassed");
    EXPECT_EQ(findings[0].parts, Ids{"D1"});
    EXPECT_EQ(findings[0].severity, Severity::Fault);
}

TEST(Bypassed, ResistorThatAJumperGoesRound) {
    auto builder = beacon();
    builder.part("R2", "resistor", {{"1", "A.b20"}, {"2", "A.b25"}})
        .part("R3", "resistor", {{"1", "A.c25"}, {"2", "A.c29"}})
        .jumper("W3", "A.top+18", "A.a20", "red")
        .jumper("W4", "A.d20", "A.d25", "red")
        .jumper("W5", "A.a29", "A.bottom-24", "black");
    const auto findings = found("bypassed", builder.share());
    ASSERT_EQ(findings.size(), 1u);
    EXPECT_EQ(findings[0].parts, Ids{"R2"});
    EXPECT_EQ(findings[0].severity, Severity::Risk);
    EXPECT_TRUE(afterMend(builder.build(), findings[0]).empty());
}

TEST(Bypassed, NeverSaidOfASwitchNorOfASoundPart) {
    auto builder = beacon();
    builder.part("S1", "push-button", {{"1a", "A.a20"}, {"1b", "A.d20"}, {"2a", "A.a22"}, {"2b", "A.d22"}})
        .jumper("W3", "A.c20", "A.c22", "yellow");
    EXPECT_TRUE(found("bypassed", builder.share()).empty());
}

}  // namespace
}  // namespace tiepoint::test
