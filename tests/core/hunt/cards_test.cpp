// Secret slips for real boards: none can hurt. Judged by the examiner's own behaviour and by reading the change itself.

#include "core/hunt/cards.h"

#include "examiner/sound_bench.h"
#include "support/compact_bench.h"

#include <gtest/gtest.h>

namespace tiepoint {
namespace {

TEST(HuntCards, NoneOverloadsAnythingOrTouchesASupply) {
    int seen = 0;
    for (std::uint64_t seed = 7100; seed < 7116; ++seed) {
        const auto target =
            std::make_shared<const Bench>(examiner::soundBench(seed, 3 + static_cast<int>(seed % 7)).bench);
        const auto cards = cardSlips(target, 20, seed);
        if (!cards) continue;
        for (const CardSlip& card : *cards) {
            ++seen;
            const auto applied = apply(*target, editOf(*target, card.slip));
            ASSERT_TRUE(applied.ok());
            EXPECT_TRUE(examiner::behave(applied->bench, examiner::positionsOf(*target)).isSafe()) << card.doWords;
            for (const std::string& id : idsOf(card.slip.wrong)) {
                const Part* part = target->findPart(id);
                EXPECT_FALSE(part && part->kind->isSupply) << card.doWords;
            }
            for (const PlacedLead& lead : card.slip.wrong.leads)
                EXPECT_FALSE(lead.to && isRail(lead.to->line)) << card.doWords;
            EXPECT_TRUE(card.slip.wrong.conditions.empty()) << "a hand can't break a part inside";
            EXPECT_FALSE(card.seenWords.empty());
        }
    }
    EXPECT_GT(seen, 60);
}

TEST(HuntCards, TheOrderSaysWhatToDo) {
    const auto target = std::make_shared<const Bench>(test::compactBench(
        "half; PS1 top+3 bottom-3 5; R1 c8 c14 330; D1 e14 f14 red; W1 top+7 a8 red; W2 j14 bottom-13 black"));
    const auto cards = cardSlips(target, 15, 1);
    ASSERT_TRUE(cards.ok());
    ASSERT_EQ(cards->size(), 15u);
    for (const CardSlip& card : *cards) {
        EXPECT_TRUE(card.doWords.ends_with('.'));
        EXPECT_TRUE(card.doWords.starts_with("Move ") || card.doWords.starts_with("Turn ") ||
                    card.doWords.starts_with("Take out ") || card.doWords.starts_with("Put "))
            << card.doWords;
    }
}

TEST(HuntCards, ASlipThatLosesTheResistorIsRefused) {
    const auto target = std::make_shared<const Bench>(test::compactBench(
        "half; PS1 top+3 bottom-3 5; R1 c8 c14 330; D1 e14 f14 red; W1 top+7 a8 red; W2 j14 bottom-13 black"));
    Bench bypassed = *target;
    bypassed.jumpers[0].ends[1] = *parseHole("A.a14");
    EXPECT_FALSE(isHarmless(HuntGround(target), bypassed));
    EXPECT_TRUE(isHarmless(HuntGround(target), *target));
}

}  // namespace
}  // namespace tiepoint
