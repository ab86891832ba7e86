// too-dim: lights far below a visible current; bands after IEC 60062 (10 kilohm: brown black orange, 330 ohm: orange orange brown).

#include "core/snapshot/readings.h"
#include "support/compact_bench.h"
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

/// A knob with a longer track than the resistor may be meant to dim; a resistor with more than the knob is what is wrong.
TEST(TooDim, AKnobMayBeMeantToDim) {
    const auto withKnob = [](const std::string& ohm, const std::string& track) {
        return compactBench("half; PS1 top+3 bottom-3 5; R1 c5 c10 " + ohm + "; RV1 h12 " + track +
                            " 0.5; D1 c18 c21 red; W1 top+5 a5 red; W2 e10 f12 red; W3 f14 e18 red; W4 a21 top-18 "
                            "black; W5 top-1 bottom-1 black");
    };
    EXPECT_TRUE(found("too-dim", std::make_shared<const Bench>(withKnob("47000", "100000"))).empty());
    const auto findings = found("too-dim", std::make_shared<const Bench>(withKnob("220000", "100000")));
    ASSERT_EQ(findings.size(), 1u);
    EXPECT_EQ(findings[0].parts, (Ids{"D1", "R1"}));
}

/// What takes next to no voltage holds nothing back: here it is the junction, at a supply that hardly opens it.
TEST(TooDim, AResistorThatTakesNoVoltageIsNotToBlame) {
    const auto bench = beacon({.ohm = 330, .volt = 1.65}).share();
    const double ampere = currentThrough(*evaluate(bench), bench->partIndex("D1")).inAmpere;
    ASSERT_GT(ampere, 1e-7) << "a dim light, no open circuit";
    ASSERT_LT(330 * ampere, 0.1);
    EXPECT_TRUE(found("too-dim", bench).empty());
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
