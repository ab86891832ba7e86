// The rules: each found where it should be, with its place and proof, and silent where nothing is wrong.

#include "core/findings/rules.h"

#include "support/inspect_bench.h"

#include <gtest/gtest.h>

#include <set>

namespace tiepoint::test {
namespace {

TEST(Rules, EveryRuleHasANameAndAnExplanation) {
    std::set<std::string_view> seen;
    for (const Rule& rule : rules()) {
        EXPECT_TRUE(seen.insert(rule.name).second) << rule.name;
        EXPECT_FALSE(rule.explains.empty()) << rule.name;
    }
}

TEST(Rules, SilentOnAnEmptyAndOnASoundBench) {
    EXPECT_TRUE(inspect(*evaluate(std::make_shared<const Bench>(makeNewBench()))).findings.empty());
    auto sound = supplied();
    sound.part("R1", "resistor", {{"1", "A.c4"}, {"2", "A.c9"}})
        .jumper("A.top+5", "A.a4")
        .jumper("W9", "A.a9", "A.bottom-9", "black");
    EXPECT_TRUE(inspect(*evaluate(sound.share())).findings.empty());
}

/// A lamp that needs two of seven changeover switches thrown and a third left alone: not every combination is solved.
TEST(Rules, NoLightIsCalledDarkWhereNotEveryCombinationWasSolved) {
    auto builder = supplied();
    builder.part("R1", "resistor", {{"1", "A.c3"}, {"2", "A.c8"}})
        .part("S1", "slide-switch", {{"a", "A.e7"}, {"common", "A.e8"}, {"b", "A.e9"}})
        .part("S2", "slide-switch", {{"a", "A.e14"}, {"common", "A.e15"}, {"b", "A.e16"}})
        .part("S3", "slide-switch", {{"a", "A.e22"}, {"common", "A.e23"}, {"b", "A.e24"}})
        .part("D1", "led", {{"anode", "A.c16"}, {"cathode", "A.c19"}})
        .jumper("W1", "A.top+5", "A.a3", "red")
        .jumper("W2", "A.b9", "A.b15", "yellow")
        .jumper("W3", "A.a19", "A.bottom-18", "black")
        .jumper("W4", "A.a16", "A.a23", "yellow")
        .jumper("W5", "A.b24", "A.b19", "blue");
    const auto few = builder.share();
    for (const Finding& finding : inspected(few)) EXPECT_EQ(finding.severity, Severity::Remark) << finding.text;
    builder.part("S4", "slide-switch", {{"a", "A.h2"}, {"common", "A.h3"}, {"b", "A.h4"}})
        .part("S5", "slide-switch", {{"a", "A.h8"}, {"common", "A.h9"}, {"b", "A.h10"}})
        .part("S6", "slide-switch", {{"a", "A.h14"}, {"common", "A.h15"}, {"b", "A.h16"}})
        .part("S7", "slide-switch", {{"a", "A.h20"}, {"common", "A.h21"}, {"b", "A.h22"}});
    for (const Finding& finding : inspected(builder.share()))
        EXPECT_EQ(finding.severity, Severity::Remark) << finding.text;
}

TEST(ShortCircuit, JumperAcrossTheRails) {
    auto builder = supplied();
    builder.jumper("W1", "A.top+10", "A.bottom-10");
    const auto findings = found("short-circuit", builder.share());
    ASSERT_EQ(findings.size(), 1u);
    EXPECT_EQ(findings[0].severity, Severity::Fault);
    EXPECT_EQ(findings[0].parts, (std::vector<std::string>{"PS1", "W1"}));
    EXPECT_EQ(names(findings[0].holes), (std::vector<std::string>{"A.top+3", "A.top+10", "A.bottom-10", "A.bottom-3"}));
    ASSERT_TRUE(findings[0].mend);
    const auto mended = apply(builder.build(), findings[0].mend->edit);
    ASSERT_TRUE(mended.ok());
    EXPECT_TRUE(found("short-circuit", std::make_shared<const Bench>(mended->bench)).empty());
}

TEST(ShortCircuit, BothLeadsInOneRailHasNoJumperToTakeAway) {
    BenchBuilder builder;
    builder.board("A", "half").part("PS1", "cells", {{"+", "A.top+3"}, {"-", "A.top+9"}});
    const auto findings = found("short-circuit", builder.share());
    ASSERT_EQ(findings.size(), 1u);
    EXPECT_EQ(findings[0].parts, (std::vector<std::string>{"PS1"}));
    EXPECT_EQ(names(findings[0].holes), (std::vector<std::string>{"A.top+3", "A.top+9"}));
    EXPECT_FALSE(findings[0].mend);
}

TEST(ShortCircuit, ThroughTheJoinedLegsOfAButton) {
    auto builder = supplied();
    builder.part("S1", "push-button", {{"1a", "A.e8"}, {"1b", "A.f8"}, {"2a", "A.e10"}, {"2b", "A.f10"}})
        .jumper("W1", "A.top+7", "A.a8")
        .jumper("W2", "A.j8", "A.bottom-7");
    const auto findings = found("short-circuit", builder.share());
    ASSERT_EQ(findings.size(), 1u);
    EXPECT_EQ(findings[0].parts, (std::vector<std::string>{"PS1", "W1", "S1", "W2"}));
}

TEST(ShortCircuit, ThroughAContactOnlyWhileItIsClosed) {
    auto builder = supplied();
    builder.part("S1", "push-button", {{"1a", "A.e8"}, {"1b", "A.f8"}, {"2a", "A.e10"}, {"2b", "A.f10"}})
        .jumper("W1", "A.top+7", "A.a8")
        .jumper("W2", "A.j10", "A.bottom-8");
    const auto atRest = found("short-circuit", builder.share());
    ASSERT_EQ(atRest.size(), 1u);
    EXPECT_TRUE(atRest[0].text.ends_with("while S1 is pressed.")) << atRest[0].text;
    const auto findings = found("short-circuit", builder.share(), {"S1"});
    ASSERT_EQ(findings.size(), 1u);
    EXPECT_EQ(findings[0].text.find("pressed"), std::string::npos) << findings[0].text;
    EXPECT_EQ(findings[0].figures[0].first, "resistance");
    EXPECT_DOUBLE_EQ(findings[0].figures[0].second, 0.05);
    EXPECT_EQ(findings[0].figures[1].first, "current");
    EXPECT_NEAR(findings[0].figures[1].second, 0.5, 1e-9);  // the supply's limit holds
}

TEST(ShortCircuit, SmallResistancesCountTogether) {
    struct Case {
        double ohm;
        std::size_t findings;
    };
    for (const Case& each : {Case{0.4, 1}, Case{0.6, 0}, Case{10, 0}}) {
        auto builder = supplied();
        builder.part("R1", "resistor", {{"1", "A.c4"}, {"2", "A.c9"}}, {{"resistance", each.ohm}})
            .part("R2", "resistor", {{"1", "A.d9"}, {"2", "A.d14"}}, {{"resistance", each.ohm}})
            .jumper("A.top+5", "A.a4")
            .jumper("A.a14", "A.bottom-9");
        EXPECT_EQ(found("short-circuit", builder.share()).size(), each.findings) << each.ohm << " ohm twice";
    }
}

/// Honest practice: a limited supply drives an LED without a resistor, in current limit all the time.
TEST(ShortCircuit, CurrentLimitAloneIsNone) {
    BenchBuilder builder;
    builder.board("A", "half")
        .part("PS1", "bench-supply", {{"+", "A.a5"}, {"-", "A.a6"}}, {{"currentLimit", 0.01}})
        .part("D1", "led", {{"anode", "A.c5"}, {"cathode", "A.c6"}});
    const auto snapshot = evaluate(builder.share());
    ASSERT_EQ(snapshot->status(), Status::Solved);
    EXPECT_NEAR(snapshot->largestCurrentAmpere, 0.01, 1e-9);
    EXPECT_TRUE(inspect(*snapshot).findings.empty());
}

TEST(ShortCircuit, SaidBeforeTheSupplyIsSwitchedOn) {
    BenchBuilder builder;
    builder.board("A", "half")
        .part("PS1", "bench-supply", {{"+", "A.top+3"}, {"-", "A.bottom-3"}}, {}, {{"on", 0}})
        .jumper("W1", "A.top+10", "A.bottom-10");
    const auto findings = found("short-circuit", builder.share());
    ASSERT_EQ(findings.size(), 1u);
    EXPECT_EQ(findings[0].figures.size(), 1u);  // no current is known
}

TEST(SupplyOff, SaidOnlyWhereSomethingIsConnected) {
    BenchBuilder alone;
    alone.board("A", "half").part("PS1", "bench-supply", {{"+", "A.top+3"}, {"-", "A.bottom-3"}}, {}, {{"on", 0}});
    EXPECT_TRUE(found("supply-off", alone.share()).empty());

    alone.part("R1", "resistor", {{"1", "A.c4"}, {"2", "A.c9"}})
        .jumper("A.top+5", "A.a4")
        .jumper("W9", "A.a9", "A.bottom-9", "black");
    const auto findings = found("supply-off", alone.share());
    ASSERT_EQ(findings.size(), 1u);
    EXPECT_EQ(findings[0].severity, Severity::Remark);
    EXPECT_EQ(findings[0].parts, (std::vector<std::string>{"PS1"}));
    ASSERT_TRUE(findings[0].mend);
    const auto mended = apply(alone.build(), findings[0].mend->edit);
    ASSERT_TRUE(mended.ok());
    EXPECT_TRUE(inspect(*evaluate(std::make_shared<const Bench>(mended->bench))).findings.empty());
}

TEST(NoSolution, TwoIdealSourcesThatDisagree) {
    BenchBuilder builder;
    builder.board("A", "half")
        .part("PS1", "bench-supply", {{"+", "A.top+3"}, {"-", "A.bottom-3"}}, {{"voltage", 5}, {"seriesResistance", 0}})
        .part("PS2", "bench-supply", {{"+", "A.top+9"}, {"-", "A.bottom-9"}},
              {{"voltage", 3}, {"seriesResistance", 0}});
    const auto snapshot = evaluate(builder.share());
    ASSERT_EQ(snapshot->status(), Status::None);
    const auto findings = found("no-solution", builder.share());
    ASSERT_EQ(findings.size(), 1u);
    EXPECT_EQ(findings[0].severity, Severity::Fault);
    EXPECT_EQ(findings[0].parts, (std::vector<std::string>{"PS1", "PS2"}));
    EXPECT_EQ(findings[0].holes.size(), 4u) << "the place: where both are plugged in";
    EXPECT_EQ(findings[0].text, snapshot->solution.reason);
    for (const char* supply : {"PS1", "PS2"}) EXPECT_NE(findings[0].text.find(supply), std::string::npos);
}

TEST(Inspect, GraveFindingsComeFirst) {
    auto builder = supplied();
    builder.part("PS2", "cells", {{"+", "A.a5"}, {"-", "A.a9"}}, {}, {{"on", 0}})
        .part("R1", "resistor", {{"1", "A.c5"}, {"2", "A.c9"}})
        .jumper("W1", "A.top+10", "A.bottom-10");
    const Report report = inspect(*evaluate(builder.share()));
    ASSERT_EQ(report.findings.size(), 2u);
    EXPECT_EQ(report.findings[0].rule, "short-circuit");
    EXPECT_EQ(report.findings[1].rule, "supply-off");
}

}  // namespace
}  // namespace tiepoint::test
