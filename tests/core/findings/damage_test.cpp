// Damage that stays: a choice of the bench, kept in its file, and what it ruins.

#include "core/findings/damage.h"

#include "core/bench/bench_file.h"
#include "core/edit/swap.h"
#include "support/solved_bench.h"

#include <gtest/gtest.h>

namespace tiepoint {
namespace {

constexpr const char* kWithout = "half; PS1 top+3 bottom-3 9; D1 e14 f14 red; W1 top+7 a14 red; W2 j14 bottom-13 black";
constexpr const char* kWith =
    "half; PS1 top+3 bottom-3 9; R1 c8 c14 330; D1 e14 f14 red; W1 top+7 a8 red; W2 j14 bottom-13 black";

TEST(Damage, TheChoiceIsInTheFileAndIsUndone) {
    const Bench bench = test::compactBench(kWith);
    EXPECT_FALSE(damageStays(bench));
    const auto chosen = apply(bench, damageStaysEdit(bench, true));
    ASSERT_TRUE(chosen.ok());
    EXPECT_TRUE(damageStays(chosen->bench));
    const auto read = readBench(writeBench(chosen->bench));
    ASSERT_TRUE(read.ok());
    EXPECT_TRUE(read->warnings.empty());
    EXPECT_TRUE(damageStays(read->bench));
    EXPECT_EQ(apply(chosen->bench, chosen->inverse)->bench, bench);
    EXPECT_FALSE(damageStays(apply(chosen->bench, damageStaysEdit(chosen->bench, false))->bench));
}

TEST(Damage, OnlyFarTooMuchRuins) {
    EXPECT_TRUE(ruinedBy(*test::solveCompact(kWith)).empty());
    const auto snapshot = test::solveCompact(kWithout);
    const auto ruined = ruinedBy(*snapshot);
    ASSERT_EQ(ruined.size(), 1u);
    const Bench& bench = *snapshot->layout->bench;
    EXPECT_EQ(bench.parts[static_cast<std::size_t>(ruined[0])].id, "D1");
    const Edit edit = ruinEdit(bench, ruined);
    EXPECT_EQ(edit.name, "D1 is ruined");
    const auto after = apply(bench, edit);
    ASSERT_TRUE(after.ok());
    const auto dark = evaluate(std::make_shared<const Bench>(after->bench));
    EXPECT_EQ(dark->brightness(ruined[0]), 0);
    EXPECT_TRUE(ruinedBy(*dark).empty());
    const auto swapped = apply(after->bench, swapEdit(after->bench, "D1"));
    ASSERT_TRUE(swapped.ok());
    EXPECT_EQ(swapped->bench, bench);
}

TEST(Damage, ItIsSaidOfTheRuinedPartWhereItStays) {
    Bench bench = test::compactBench(kWith);
    const int lamp = bench.partIndex("D1");
    bench.parts[static_cast<std::size_t>(lamp)].condition = Condition::Dead;
    EXPECT_EQ(ruinWords(bench, lamp), "") << "a broken part that nobody told of looks sound";
    bench = apply(bench, damageStaysEdit(bench, true))->bench;
    EXPECT_EQ(ruinWords(bench, lamp), "D1 is ruined and lets nothing through. Swap it for a new one.");
    EXPECT_EQ(ruinWords(bench, bench.partIndex("R1")), "");
}

}  // namespace
}  // namespace tiepoint
