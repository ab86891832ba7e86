// What rules, answers, tables and claims say of benches that move.

#include "core/course/predicate.h"
#include "core/findings/finding.h"
#include "core/findings/when_words.h"
#include "core/snapshot/lit.h"
#include "core/snapshot/settled_snapshot.h"
#include "core/truth/truth_table.h"
#include "core/why/explain.h"
#include "support/build_bench.h"
#include "support/test_catalogue.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace tiepoint::test {
namespace {

/// 5 V, S1, R1, D1 and C1 in a ring, and R2 that discharges C1 if it is given.
BenchBuilder flashOnce(double ohm, double farad = 1e-4, double acrossOhm = 0) {
    BenchBuilder builder(testCatalogue());
    builder.board("A", "half")
        .part("PS1", "bench-supply", {{"+", "A.top+1"}, {"-", "A.bottom-1"}})
        .part("S1", "push-button", {{"1a", "A.e5"}, {"1b", "A.f5"}, {"2a", "A.e7"}, {"2b", "A.f7"}})
        .part("R1", "resistor", {{"1", "A.c7"}, {"2", "A.c13"}}, {{"resistance", ohm}})
        .part("D1", "led", {{"anode", "A.d13"}, {"cathode", "A.d14"}})
        .part("C1", "electrolytic-capacitor", {{"+", "A.a14"}, {"-", "A.a16"}}, {{"capacitance", farad}})
        .jumper("W1", "A.top+3", "A.a5", "red")
        .jumper("W2", "A.bottom-13", "A.e16", "black");
    if (acrossOhm > 0) builder.part("R2", "resistor", {{"1", "A.c14"}, {"2", "A.c16"}}, {{"resistance", acrossOhm}});
    return builder;
}

Inputs pressedOnce() {
    Inputs inputs;
    inputs.held = {"S1"};
    return inputs;
}

const Finding* findingOf(const Report& report, std::string_view rule) {
    const auto found = std::ranges::find(report.findings, rule, &Finding::rule);
    return found == report.findings.end() ? nullptr : &*found;
}

TEST(SettledFindings, ALightBehindACapacitorIsSaidToFlashOnce) {
    const auto bench = flashOnce(330).share();
    const Report report = inspect(*evaluate(bench));
    const Finding* found = findingOf(report, "a-moment");
    ASSERT_NE(found, nullptr);
    EXPECT_EQ(found->parts, (std::vector<std::string>{"D1", "C1"}));
    EXPECT_NE(found->text.find("D1 lights only for a moment"), std::string::npos) << found->text;
    EXPECT_NE(found->text.find("after S1 is pressed"), std::string::npos) << found->text;
    EXPECT_EQ(findingOf(report, "over-current"), nullptr);
    EXPECT_FALSE(isLit(*evaluate(bench, pressedOnce()), bench->partIndex("D1")));
}

TEST(SettledFindings, WithAWayPastTheCapacitorItStaysLit) {
    const auto bench = flashOnce(330, 1e-4, 100).share();
    EXPECT_EQ(findingOf(inspect(*evaluate(bench)), "a-moment"), nullptr);
    EXPECT_TRUE(isLit(*evaluate(bench, pressedOnce()), bench->partIndex("D1")));
}

TEST(SettledFindings, OverCurrentIsToldAtItsPeakAndWhen) {
    const auto report = inspect(*evaluate(flashOnce(22).share()));
    const Finding* found = findingOf(report, "over-current");
    ASSERT_NE(found, nullptr);
    EXPECT_EQ(found->parts.front(), "D1");
    EXPECT_NE(found->text.find("after S1 is pressed: D1"), std::string::npos) << found->text;
    // At first all but the LED's own voltage lies across 22 ohm, the capacitor's half ohm and the LED's own few.
    ASSERT_FALSE(found->figures.empty());
    EXPECT_GT(found->figures.front().second, 0.06);
    EXPECT_LT(found->figures.front().second, 0.16);
}

TEST(SettledFindings, ATruthTableTellsWhatLasts) {
    const auto once = makeTruthTable(flashOnce(330).share());
    ASSERT_TRUE(once.ok());
    EXPECT_FALSE(once->rows[0].lamps[0].lit);
    EXPECT_FALSE(once->rows[1].lamps[0].lit);
    EXPECT_TRUE(once->idle.empty());  // what S1 does isn't seen in what lasts
    const auto lasting = makeTruthTable(flashOnce(330, 1e-4, 100).share());
    ASSERT_TRUE(lasting.ok());
    EXPECT_TRUE(lasting->rows[1].lamps[0].lit);
    EXPECT_EQ(lasting->rows[1].lamps[0].glow, Glow::Steady);
}

TEST(SettledFindings, WhatStillChangesIsNeverSaidToStayDark) {
    // It takes minutes: 100 kohm and 1 mF.
    const auto bench = flashOnce(1e5, 1e-3).share();
    const auto now = evaluate(bench, pressedOnce());
    ASSERT_TRUE(isUndecided(*now));
    EXPECT_NE(lastingWords(*now).find("still changes"), std::string::npos);
    const Report report = inspect(*now);
    EXPECT_EQ(findingOf(report, "a-moment"), nullptr);
    EXPECT_EQ(findingOf(report, "no-effect"), nullptr);
    const auto table = makeTruthTable(bench);
    ASSERT_TRUE(table.ok());
    EXPECT_EQ(table->rows[1].lamps[0].glow, Glow::Open);
    EXPECT_FALSE(table->logic[0].has_value());
    const auto answer = explain(*now, bench->partIndex("D1"));
    ASSERT_FALSE(answer.chain.empty());
    EXPECT_NE(answer.chain.front().text.find("still changes"), std::string::npos);
    Predicate dark;
    dark.form = &*std::ranges::find(predicateForms(), std::string_view("dark"), &PredicateForm::name);
    dark.names = {"D1"};
    EXPECT_FALSE(judge(dark, *now).holds);
}

TEST(SettledFindings, ARestingBenchIsSolvedAsEver) {
    auto builder = BenchBuilder();
    builder.board("A", "half")
        .part("PS1", "bench-supply", {{"+", "A.top+1"}, {"-", "A.bottom-1"}})
        .part("R1", "resistor", {{"1", "A.top+3"}, {"2", "A.bottom-3"}}, {{"resistance", 1000}});
    const auto snapshot = evaluate(builder.share());
    EXPECT_EQ(snapshot->settled, nullptr);
    EXPECT_EQ(settledOf(snapshot), snapshot);
    EXPECT_TRUE(passingInstants(*snapshot).empty());
    EXPECT_TRUE(lastingWords(*snapshot).empty());
}

}  // namespace
}  // namespace tiepoint::test
