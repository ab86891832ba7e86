// no-effect: switches that change nothing.

#include "support/inspect_bench.h"

namespace tiepoint::test {
namespace {

TEST(NoEffect, ButtonThatAJumperGoesRound) {
    auto builder = supplied();
    builder.part("R1", "resistor", {{"1", "A.c8"}, {"2", "A.c14"}})
        .part("S1", "slide-switch", {{"a", "A.e14"}, {"common", "A.e15"}, {"b", "A.e16"}})
        .part("D1", "led", {{"anode", "A.g14"}, {"cathode", "A.g19"}})
        .jumper("W1", "A.top+7", "A.a8", "red")
        .jumper("W2", "A.j19", "A.bottom-18", "black")
        .jumper("W3", "A.d14", "A.d15", "yellow")
        .jumper("W4", "A.b15", "A.f14", "yellow")
        .jumper("W5", "A.b14", "A.b16", "yellow");
    const auto findings = found("no-effect", builder.share());
    ASSERT_EQ(findings.size(), 1u) << told(inspected(builder.share()));
    EXPECT_EQ(findings[0].parts, Ids{"S1"});
}

TEST(NoEffect, SwitchThatLeadsNowhere) {
    auto builder = beacon();
    builder.part("S1", "slide-switch", {{"a", "A.e20"}, {"common", "A.e21"}, {"b", "A.e22"}})
        .part("R2", "resistor", {{"1", "A.a21"}, {"2", "A.a26"}})
        .part("R3", "resistor", {{"1", "A.b22"}, {"2", "A.b26"}})
        .part("R4", "resistor", {{"1", "A.b20"}, {"2", "A.c26"}});
    const auto findings = found("no-effect", builder.share());
    ASSERT_EQ(findings.size(), 1u) << told(inspected(builder.share()));
    EXPECT_EQ(findings[0].severity, Severity::Remark);
    EXPECT_EQ(findings[0].parts, Ids{"S1"});
}

TEST(NoEffect, SilentOnButtonsInARow) {
    auto builder = supplied();
    builder.part("R1", "resistor", {{"1", "A.c4"}, {"2", "A.c9"}})
        .part("S1", "push-button", {{"1a", "A.e9"}, {"1b", "A.f9"}, {"2a", "A.e11"}, {"2b", "A.f11"}})
        .part("S2", "push-button", {{"1a", "A.e15"}, {"1b", "A.f15"}, {"2a", "A.e17"}, {"2b", "A.f17"}})
        .part("D1", "led", {{"anode", "A.h17"}, {"cathode", "A.h20"}})
        .jumper("W1", "A.top+4", "A.a4", "red")
        .jumper("W2", "A.c11", "A.c15", "yellow")
        .jumper("W3", "A.j20", "A.bottom-18", "black");
    EXPECT_TRUE(inspected(builder.share()).empty()) << told(inspected(builder.share()));
}

TEST(NoEffect, SilentWhereASwitchMayChargeACapacitor) {
    auto builder = supplied();
    builder.part("S1", "push-button", {{"1a", "A.e9"}, {"1b", "A.f9"}, {"2a", "A.e11"}, {"2b", "A.f11"}})
        .part("R1", "resistor", {{"1", "A.c11"}, {"2", "A.c16"}})
        .part("C1", "ceramic-capacitor", {{"1", "A.a16"}, {"2", "A.a18"}})
        .jumper("W1", "A.top+7", "A.a9", "red")
        .jumper("W2", "A.e18", "A.bottom-18", "black");
    EXPECT_TRUE(found("no-effect", builder.share()).empty()) << told(inspected(builder.share()));
}

}  // namespace
}  // namespace tiepoint::test
