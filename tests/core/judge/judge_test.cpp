// The judge: the slip that explains what is amiss comes first, silent where nothing is, and what it takes lowers nothing.

#include "core/judge/judge.h"

#include "core/judge/worth.h"
#include "support/compact_bench.h"
#include "support/inspect_bench.h"

#include <gtest/gtest.h>

namespace tiepoint::test {
namespace {

constexpr const char* kJudgedBeacon =
    "half; PS1 top+3 bottom-3 5; R1 c8 c14 330; D1 e14 f14 red; W1 top+7 a8 red; W2 j14 bottom-13 black";

std::shared_ptr<const Bench> benchOfText(const std::string& text) {
    return std::make_shared<const Bench>(compactBench(text));
}

std::vector<FoundCause> causesOn(const std::shared_ptr<const Bench>& bench) { return Judge(*evaluate(bench)).causes(); }

TEST(Judge, SilentWhereNothingIsAmiss) { EXPECT_TRUE(causesOn(benchOfText(kJudgedBeacon)).empty()); }

struct SlippedBench {
    const char* text;
    const char* kind;   ///< of the slip that comes first
    const char* names;  ///< one of its parts
};
constexpr SlippedBench kSlipped[] = {
    {"half; PS1 top+3 bottom-3 5; R1 c9 c14 330; D1 e14 f14 red; W1 top+7 a8 red; W2 j14 bottom-13 black",
     "one-hole-off", ""},
    {"half; PS1 top+3 bottom-3 5; R1 c8 c14 330; D1 f14 e14 red; W1 top+7 a8 red; W2 j14 bottom-13 black", "reversed",
     "D1"},
    {"half; PS1 top+3 bottom-3 5; R1 c8 c14 33000; D1 e14 f14 red; W1 top+7 a8 red; W2 j14 bottom-13 black",
     "look-alike-band", "R1"},
    {"half; PS1 top+3 bottom-3 5 0.001; R1 c8 c14 330; D1 e14 f14 red; W1 top+7 a8 red; W2 j14 bottom-13 black",
     "small-limit", "PS1"},
    {"half; PS1 top+3 bottom-3 5 off; R1 c8 c14 330; D1 e14 f14 red; W1 top+7 a8 red; W2 j14 bottom-13 black",
     "supply-off", "PS1"},
};

TEST(Judge, TheSlipThatWasMadeComesFirst) {
    for (const SlippedBench& each : kSlipped) {
        SCOPED_TRACE(each.text);
        const auto bench = benchOfText(each.text);
        const auto causes = causesOn(bench);
        ASSERT_FALSE(causes.empty());
        EXPECT_EQ(causes.front().kind, each.kind) << causes.front().text;
        const auto& parts = causes.front().parts;
        const bool named = *each.names == 0 || std::ranges::find(parts, each.names) != parts.end();
        EXPECT_TRUE(named) << causes.front().text;
        EXPECT_GE(causes.front().worth, kAlarmWorth);
        const auto mended = apply(*bench, causes.front().mend.edit);
        ASSERT_TRUE(mended.ok());
        EXPECT_TRUE(causesOn(std::make_shared<const Bench>(mended->bench)).empty()) << causes.front().mend.text;
    }
}

TEST(Judge, NoMendLowersAGain) {
    for (const SlippedBench& each : kSlipped) {
        const auto bench = benchOfText(each.text);
        Judge judge(*evaluate(bench));
        for (const FoundCause& cause : judge.causes()) {
            EXPECT_FALSE(lowersAGain(judge.now().traits, cause.then.traits)) << cause.text;
            const auto trial = judge.trialOf(cause.mend.edit);
            ASSERT_TRUE(trial);
            // By ports or from scratch, the mended bench is the same.
            EXPECT_EQ(trial->then.show, cause.then.show) << cause.mend.text;
        }
    }
}

TEST(Judge, WhatTakesALightAwayLowersAGain) {
    const auto bench = benchOfText(kJudgedBeacon);
    Judge judge(*evaluate(bench));
    const auto trial = judge.trialOf(removeEdit(*bench, {"W1"}));
    ASSERT_TRUE(trial);
    EXPECT_TRUE(trial->lowers);
    EXPECT_LT(trial->worth, 0);
}

TEST(Judge, AlternativesShowTheSame) {
    const auto causes = causesOn(benchOfText(kSlipped[0].text));
    ASSERT_FALSE(causes.empty());
    for (const FoundCause* other : Judge::likeIt(causes.front(), causes)) {
        EXPECT_EQ(other->then.show, causes.front().then.show);
        EXPECT_NE(other->mend.text, causes.front().mend.text);
    }
}

/// Rows and rails: the same slip however many positions, the answer whatever the order of parts.
TEST(Judge, DoesNotDependOnTheOrderOfParts) {
    Bench bench = compactBench(kSlipped[0].text);
    const auto first = causesOn(std::make_shared<const Bench>(bench));
    std::ranges::reverse(bench.parts);
    const auto second = causesOn(std::make_shared<const Bench>(bench));
    ASSERT_FALSE(first.empty());
    ASSERT_FALSE(second.empty());
    EXPECT_EQ(first.front().then.show != 0, second.front().then.show != 0);
    EXPECT_NEAR(first.front().worth, second.front().worth, 1e-6);
}

}  // namespace
}  // namespace tiepoint::test
