// lead-alone: leads that meet no other part.

#include "support/inspect_bench.h"

namespace tiepoint::test {
namespace {

TEST(LeadAlone, FreeCathodeWithNothingNear) {
    const auto findings = found("lead-alone", beacon({.cathode = "A.g19"}).share());
    ASSERT_EQ(findings.size(), 1u);
    EXPECT_EQ(findings[0].severity, Severity::Fault);
    EXPECT_EQ(findings[0].parts, Ids{"D1"});
    EXPECT_EQ(names(findings[0].holes), Ids{"A.g19"});
    EXPECT_NE(findings[0].text.find("open there: no complete path"), std::string::npos);
}

TEST(LeadAlone, HangingLead) {
    auto builder = supplied();
    builder.part("R1", "resistor", {{"1", "A.c8"}, {"2", "A.c14"}})
        .part("D1", "led", {{"anode", "A.e14"}})
        .jumper("W1", "A.top+7", "A.a8", "red");
    const auto findings = found("lead-alone", builder.share());
    ASSERT_FALSE(findings.empty());
    EXPECT_NE(findings[0].text.find("hangs free"), std::string::npos) << findings[0].text;
}

TEST(LeadAlone, LoosePartIsARemarkBesideASoundCircuit) {
    auto builder = beacon();
    builder.part("R2", "resistor", {{"1", "A.b20"}, {"2", "A.b25"}});
    const auto findings = inspected(builder.share());
    ASSERT_EQ(findings.size(), 1u) << told(findings);
    EXPECT_EQ(findings[0].rule, "lead-alone");
    EXPECT_EQ(findings[0].severity, Severity::Remark);
}

/// Nobody has said yet where it belongs: no wire is proposed that would only make the finding go away.
TEST(LeadAlone, NothingIsProposedForWhatIsNotBuiltYet) {
    auto open = beacon(), loose = beacon();
    open.part("R2", "resistor", {{"1", "A.top+20"}, {"2", "A.b25"}});
    loose.part("D2", "led", {{"anode", "A.b20"}, {"cathode", "A.b22"}});
    for (const auto& builder : {open, loose}) {
        const auto findings = found("lead-alone", builder.share());
        ASSERT_EQ(findings.size(), 1u);
        EXPECT_EQ(findings[0].severity, Severity::Remark);
        EXPECT_FALSE(findings[0].mend) << findings[0].mend->text;
    }
}

TEST(LeadAlone, SilentOnAThirdLegThatIsNotNeeded) {
    auto builder = supplied();
    builder.part("S1", "slide-switch", {{"a", "A.e7"}, {"common", "A.e8"}, {"b", "A.e9"}})
        .part("R1", "resistor", {{"1", "A.c7"}, {"2", "A.c14"}})
        .part("D1", "led", {{"anode", "A.e14"}, {"cathode", "A.f14"}})
        .jumper("W1", "A.top+7", "A.a8", "red")
        .jumper("W2", "A.j14", "A.bottom-13", "black");
    EXPECT_TRUE(found("lead-alone", builder.share()).empty());
}

}  // namespace
}  // namespace tiepoint::test
