// What is not done yet is told apart from what is wrong.

#include "core/findings/unfinished.h"

#include "core/findings/rules.h"
#include "support/compact_bench.h"

#include <gtest/gtest.h>

namespace tiepoint {
namespace {

std::shared_ptr<const Snapshot> solvedText(const char* text, const Inputs& inputs = {}) {
    return evaluate(std::make_shared<const Bench>(test::compactBench(text)), inputs);
}

std::string said(const Unfinished& unfinished) {
    std::string words;
    for (const OpenEnd& end : unfinished.open) words += end.what + ": " + end.place + "; ";
    return words;
}

struct OpenCase {
    const char *bench, *words;
};

TEST(Unfinished, NamesWhatIsOpenWithItsPlace) {
    for (const OpenCase& each : std::initializer_list<OpenCase>{
             {"half; PS1 top+3 bottom-3 5", ""},
             {"half; PS1 top+3 bottom-3 5; R1 c8 c13 330",
              "R1: c8, alone in its column; R1: c13, alone in its column; "},
             {"half; PS1 top+3 bottom-3 5; R1 c8 c13 330; D1 e13 e14 red",
              "R1: c8, alone in its column; D1, shorter leg: e14, alone in its column; "},
             {"half; PS1 top+3 bottom-3 5; R1 c8 c13 330; D1 e13 e14 red; W1 top+7 a8 red",
              "D1, shorter leg, to minus: e14, alone in its column; "},
             // One column off, as the study of the first build has it.
             {"half; PS1 top+3 bottom-3 5; R1 c8 c13 330; D1 e14 e16 red; W1 top+7 a8 red; W2 a16 bottom-13 black",
              "R1, to minus: c13, alone in its column; D1, longer leg, to plus: e14, alone in its column; "},
             // The way to minus ends in a rail that isn't the supply's.
             {"half; PS1 top+3 bottom-3 5; R1 c8 c13 330; D1 e13 e14 red; W1 top+7 a8 red; W2 a14 top-13 black",
              "W2 from D1, to minus: top-13, alone in its rail; "},
             {"half; PS1 top+3 bottom-3 5; R1 a8 d8 330", "R1: all its legs are in one piece of metal; "},
             {"half; PS1 top+3 bottom-3 5; W1 top+7 a8 red", "W1: a8, alone in its column; "},
             {"half; PS1 top+3 bottom-3 5; W1 top+7 bottom+7 red", ""},
             {"half; PS1 top+3 bottom-3 5; R1 c8 c13 330; D1 d8 d13 red", "R1, D1: not joined to plus and minus; "},
             {"half; PS1 top+3 bottom-3 5; SW1 e8; W1 top+7 a8 red; D1 c9 f14 red; W2 j14 bottom-13 black", ""}}) {
        const auto snapshot = solvedText(each.bench);
        EXPECT_EQ(said(unfinished(*snapshot, false)), each.words) << each.bench;
    }
}

TEST(Unfinished, ASupplyThatIsNotPluggedInIsOpenToo) {
    const auto open = unfinished(*solvedText("half; PS1 top+3 - 5; R1 c8 c13 330; W1 top+7 a8 red"), false).open;
    ASSERT_FALSE(open.empty());
    EXPECT_EQ(open.back().what, "PS1, black lead");
    EXPECT_EQ(open.back().place, "hangs free");
    EXPECT_EQ(open.back().hole, std::nullopt);
}

TEST(Unfinished, AnOpenSwitchLeavesNothingToDo) {
    const char* const kBeacon =
        "half; PS1 top+3 bottom-3 5; R1 c8 c14 330; S1 e14; D1 h16 h19 red; W1 top+7 a8 red; W2 j19 bottom-13 black";
    EXPECT_FALSE(works(*solvedText(kBeacon)));
    EXPECT_TRUE(unfinished(*solvedText(kBeacon), false).isEmpty());
    Inputs held;
    held.held.insert("S1");
    EXPECT_TRUE(works(*solvedText(kBeacon, held)));
}

TEST(Unfinished, WhatHasWorkedIsFinished) {
    const auto open = solvedText("half; PS1 top+3 bottom-3 5; R1 c8 c13 330; D1 e13 e14 red; W1 top+7 a8 red");
    EXPECT_FALSE(unfinished(*open, false).isEmpty());
    EXPECT_TRUE(unfinished(*open, true).isEmpty());
    const auto lit = solvedText(
        "half; PS1 top+3 bottom-3 5; R1 c8 c13 330; D1 e13 e14 red; W1 top+7 a8 red; W2 a14 bottom-13 black; R2 c20 "
        "c25 330");
    EXPECT_TRUE(works(*lit));
    EXPECT_TRUE(unfinished(*lit, false).isEmpty()) << "R2 lies there, but a light is lit";
}

TEST(Unfinished, AMeterThatHasSomethingToShowWorks) {
    EXPECT_TRUE(works(*solvedText("half; PS1 top+3 bottom-3 5; M1 top+5 bottom-5 volts")));
    EXPECT_FALSE(works(*solvedText("half; PS1 top+3 bottom-3 5 off; M1 top+5 bottom-5 volts")));
    EXPECT_FALSE(works(*solvedText("half; PS1 top+3 bottom-3 5; M1 a5 a9 amperes")));
}

/// What the whole report says of a bench, and what of it is told.
std::pair<std::size_t, std::vector<std::string>> toldOf(const char* bench) {
    const auto snapshot = solvedText(bench);
    const Unfinished open = unfinished(*snapshot, false);
    const Report report = inspect(*snapshot);
    std::vector<std::string> rules;
    for (const Finding& finding : report.findings)
        if (isTold(open, finding)) rules.push_back(finding.rule);
    return {report.findings.size(), rules};
}

TEST(Unfinished, EveryStepOfARightBuildIsCalm) {
    for (const char* bench :
         {"half; PS1 top+3 bottom-3 5; R1 c8 c13 330", "half; PS1 top+3 bottom-3 5; R1 c8 c13 330; D1 e13 e14 red",
          "half; PS1 top+3 bottom-3 5; R1 c8 c13 330; D1 e13 e14 red; W1 top+7 a8 red",
          "half; PS1 top+3 bottom-3 5; R1 c8 c13 330; D1 e13 e14 red; W1 a14 bottom-13 black",
          "half; PS1 top+3 bottom-3 5 off; R1 c8 c13 330; D1 e13 e14 red; W1 top+7 a8 red"}) {
        const auto [found, told] = toldOf(bench);
        EXPECT_GT(found, 0u) << "the command line, which is asked, tells it: " << bench;
        EXPECT_TRUE(told.empty()) << bench << ": " << told.front();
    }
}

TEST(Unfinished, DangerSpeaksAtOnce) {
    using Rules = std::vector<std::string>;
    EXPECT_EQ(toldOf("half; PS1 top+3 bottom-3 5; R1 c8 c13 330; W1 top+7 bottom-7 red").second,
              Rules{"short-circuit"});
    const auto told =
        toldOf("half; PS1 top+3 bottom-3 12; R1 c8 c13 10; W1 top+7 a8 red; W2 a13 bottom-13 black; D1 e20 e21 red");
    EXPECT_EQ(told.second, Rules{"over-power"});
}

TEST(Unfinished, AWholeCircuitBesideItIsJudged) {
    const auto told = toldOf(
        "half; PS1 top+3 bottom-3 5; R1 c8 c13 330; D1 e14 e13 red; W1 top+7 a8 red; W2 a14 bottom-13 black; R2 c20 "
        "c25 330");
    EXPECT_EQ(told.second, std::vector<std::string>{"reversed"});
}

TEST(Unfinished, EveryRuleThatCanHurtSpeaksAtOnce) {
    for (const char* name : {"short-circuit", "no-solution", "supply-conflict", "over-current", "over-power",
                             "over-voltage", "overlap", "not-buildable", "bare-leads"}) {
        ASSERT_TRUE(findRule(name)) << name;
        EXPECT_TRUE(findRule(name)->atOnce) << name;
    }
    EXPECT_FALSE(findRule("lead-alone")->atOnce);
    EXPECT_EQ(findRule("no such rule"), nullptr);
}

}  // namespace
}  // namespace tiepoint
