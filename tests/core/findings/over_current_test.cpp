// over-current: figures against the catalogue's maxima (30 mA of a red LED, 50 mA of a push button's contact; data sheets named
// there) and the usual 20 mA of an LED.

#include "support/inspect_bench.h"

namespace tiepoint::test {
namespace {

TEST(OverCurrent, BySeverityOfTheResistor) {
    struct Case {
        double ohm;
        std::size_t count;
        Severity severity;
    };
    for (const Case& each :
         {Case{330, 0, Severity::Remark}, Case{150, 0, Severity::Remark}, Case{120, 1, Severity::Remark},
          Case{68, 1, Severity::Fault}, Case{10, 1, Severity::Fault}}) {
        const auto builder = beacon({.ohm = each.ohm});
        const auto findings = found("over-current", builder.share());
        ASSERT_EQ(findings.size(), each.count) << each.ohm << told(findings);
        if (each.count == 0) continue;
        EXPECT_EQ(findings[0].severity, each.severity) << each.ohm;
        EXPECT_EQ(findings[0].parts, (Ids{"D1", "R1"}));
        EXPECT_TRUE(afterMend(builder.build(), findings[0]).empty()) << each.ohm;
        EXPECT_GT(brightnessAfterMend(builder.build(), findings[0], "D1"), 0.5) << each.ohm;
    }
}

TEST(OverCurrent, FarTooMuchSaysNoFalseDigits) {
    const auto findings = found("over-current", beacon({.ohm = 1.5}).share());
    ASSERT_EQ(findings.size(), 1u);
    EXPECT_NE(findings[0].text.find("far too much"), std::string::npos) << findings[0].text;
}

TEST(OverCurrent, LedWithoutResistorGetsOneInPlaceOfAJumper) {
    auto builder = supplied();
    builder.part("D1", "led", {{"anode", "A.e14"}, {"cathode", "A.f14"}})
        .jumper("W1", "A.top+13", "A.a14", "red")
        .jumper("W2", "A.j14", "A.bottom-13", "black");
    const auto findings = inspected(builder.share());
    ASSERT_EQ(findings.size(), 1u) << told(findings);
    EXPECT_EQ(findings[0].rule, "over-current");
    EXPECT_NE(findings[0].text.find("no resistor"), std::string::npos) << findings[0].text;
    EXPECT_TRUE(afterMend(builder.build(), findings[0]).empty());
    EXPECT_GT(brightnessAfterMend(builder.build(), findings[0], "D1"), 0.5);
}

TEST(OverCurrent, OnlyWhileAButtonIsPressed) {
    auto builder = beacon();
    builder.part("R2", "resistor", {{"1", "A.b20"}, {"2", "A.b25"}}, {{"resistance", 33}, {"rating", 1}})
        .part("S1", "push-button", {{"1a", "A.e25"}, {"1b", "A.f25"}, {"2a", "A.e27"}, {"2b", "A.f27"}})
        .jumper("W3", "A.top+18", "A.a20", "red")
        .jumper("W4", "A.j27", "A.bottom-24", "black");
    const auto findings = found("over-current", builder.share());
    ASSERT_EQ(findings.size(), 1u);
    EXPECT_EQ(findings[0].parts, (Ids{"S1", "R2"}));
    EXPECT_NEAR(findings[0].figures[0].second, 5 / 33.06, 1e-4);
    EXPECT_TRUE(findings[0].text.ends_with("while S1 is pressed.")) << findings[0].text;
    EXPECT_TRUE(afterMend(builder.build(), findings[0]).empty());
}

/// A strip and a contact of a solderless board bear about 1 A (common practice). Resistors side by side take it through one rail while
/// each by itself stays far below that.
TEST(OverCurrent, OfARailIsToldWithItsPlace) {
    const auto railBench = [](int resistors) {
        BenchBuilder builder;
        builder.board("A", "full")
            .part("PS1", "bench-supply", {{"+", "A.top+3"}, {"-", "A.bottom-3"}},
                  {{"voltage", 5}, {"currentLimit", 30}});
        for (int i = 0; i < resistors; ++i) {
            // 33 ohm at 5 V: 0.15 A and 0.76 W each.
            const int column = 8 + 6 * i, rail = 6 + 5 * i;
            const auto at = [](const char* line, int number) {
                return std::string("A.") + line + std::to_string(number);
            };
            builder
                .part("R" + std::to_string(i + 1), "resistor", {{"1", at("c", column)}, {"2", at("c", column + 4)}},
                      {{"resistance", 33}, {"rating", 1}})
                .jumper("W" + std::to_string(2 * i + 1), at("top+", rail), at("a", column), "red")
                .jumper("W" + std::to_string(2 * i + 2), at("e", column + 4), at("bottom-", rail), "black");
        }
        return builder.share();
    };
    EXPECT_TRUE(found("over-current", railBench(6)).empty());
    const auto findings = found("over-current", railBench(8));
    ASSERT_EQ(findings.size(), 1u) << told(findings);
    EXPECT_EQ(findings[0].severity, Severity::Fault);
    EXPECT_TRUE(findings[0].parts.empty());
    EXPECT_EQ(names(findings[0].holes),
              (std::vector<std::string>{"A.top+3", "A.top+6"}));  // between the supply and the first branch
    EXPECT_NEAR(findings[0].figures[0].second, 8 * 5 / 33.0, 0.005);
    EXPECT_NE(findings[0].text.find("1.209 A"), std::string::npos) << findings[0].text;
}

}  // namespace
}  // namespace tiepoint::test
