// A sample of the slips that tests/bench/findings_bench.cpp judges by the thousand, with the same bars.

#include "support/slip_figures.h"

#include <gtest/gtest.h>

namespace tiepoint::test {
namespace {

constexpr double kRecall = 0.98, kPrecision = 0.98, kCauseFirst = 0.95;

void judge(const NamedBenches& benches, std::uint32_t seed) {
    constexpr int kOfEachKind = 150;
    std::string wrong;
    const auto byKind = judgeSlips(benches, kOfEachKind, seed, [&](const std::string& line) { wrong += line + '\n'; });
    EXPECT_EQ(byKind.size(), std::size(kSlipKinds));
    SlipFigures all;
    for (const auto& [kind, figures] : byKind) {
        EXPECT_GT(figures.broken, 0) << kind;
        all += figures;
    }
    EXPECT_GT(all.broken, 200);
    EXPECT_GT(all.slips, all.broken);  // some slips do no harm: precision is asked of those
    EXPECT_GE(all.recall(), kRecall) << wrong;
    EXPECT_GE(all.precision(), kPrecision) << wrong;
    EXPECT_GE(all.causeShare(), kCauseFirst) << wrong;
}

TEST(Slips, AreFoundWithTheTrueCauseFirst) { judge(everySoundBench(), 7); }

/// The figures are not only those of benches that the rules were mended on.
TEST(Slips, AreFoundOnBenchesHeldOutToo) { judge(everyHeldOutBench(), 20); }

TEST(Slips, HeldOutBenchesAreSound) {
    for (const auto& [name, bench] : everyHeldOutBench()) {
        const auto findings = inspect(*evaluate(std::make_shared<const Bench>(bench))).findings;
        EXPECT_TRUE(findings.empty()) << name << ": " << (findings.empty() ? "" : findings.front().text);
    }
}

/// The judge itself: harm is seen where there is some and nowhere else.
TEST(Slips, HarmIsJudgedByTheSolve) {
    const auto all = everySoundBench();
    const Bench& beacon = all.front().second;
    const SeenDoing sound(std::make_shared<const Bench>(beacon));
    int dark = 0, burns = 0, none = 0;
    for (const Slip& slip : slipsOf(beacon)) {
        const auto broken = std::make_shared<const Bench>(apply(beacon, slip.edit)->bench);
        const auto harm = SeenDoing(broken).harmAgainst(sound);
        const bool isDark = std::ranges::find(harm, "D1 dark") != harm.end();
        dark += isDark;
        burns += std::ranges::find(harm, "D1 burns") != harm.end();
        none += harm.empty();
        EXPECT_TRUE(slip.kind != kReversed || isDark) << slip.what;
        EXPECT_TRUE(slip.kind != kMissing || isDark) << slip.what;
    }
    EXPECT_GT(dark, 5);
    EXPECT_EQ(burns, 1);  // 33 ohm
    EXPECT_GT(none, 0);
}

}  // namespace
}  // namespace tiepoint::test
