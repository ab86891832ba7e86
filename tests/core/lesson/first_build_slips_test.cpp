// The first build with every slip of the list at every step: who slips is told what to do, or shown where, and never sent to a place that is
// taken.

#include "core/bench/resolve.h"
#include "core/course/shipped.h"
#include "core/edit/placement.h"
#include "core/lesson/first_build.h"
#include "core/slips/slip.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cstdio>
#include <map>
#include <optional>
#include <string>

namespace tiepoint {
namespace {

constexpr std::size_t kMostSlips = 500;
constexpr int kLitStep = 3;

TEST(FirstBuildSlips, NobodyWhoSlipsIsLeftWithoutAWayOn) {
    const Lesson& lesson = *shippedLessons().front().lesson;
    std::map<std::string, int> tried;
    for (int step = 0; step <= kLitStep; ++step) {
        const auto bench = lesson.benchAt(step);
        for (const Slip& slip : allSlips(Ground(buildLayout(bench)), kMostSlips)) {
            const auto slipped = apply(*bench, editOf(*bench, slip));
            ASSERT_TRUE(slipped.ok());
            const auto snapshot = evaluate(std::make_shared<const Bench>(slipped->bench));
            const FirstBuildAdvice advice = firstBuildAdvice(*snapshot, 0);
            const std::string where = "step " + std::to_string(step + 1) + ", " + std::string(slip.kind->name) + ": " +
                                      slipInWords(*bench, slip) + " told: " + advice.title;
            ++tried[std::string(slip.kind->name)];
            EXPECT_FALSE(advice.title.empty()) << where;
            EXPECT_FALSE(advice.text.empty()) << where;
            if (advice.step < kLitStep + 1) {
                EXPECT_TRUE(!advice.action.empty() || !advice.holes.empty()) << where;
            }
            for (const Hole& hole : advice.holes) {
                ASSERT_TRUE(holeMm(slipped->bench, hole)) << where;
                EXPECT_FALSE(occupantOf(slipped->bench, hole)) << where << ": " << toString(hole) << " is taken";
            }
        }
    }
    EXPECT_GE(tried.size(), 8u) << "kinds of slips that a resistor, an LED and two jumpers can have";
}

/// Whether the advice asks for plus or for minus, without a slip.
bool asksFor(const FirstBuildAdvice& advice, int step) { return advice.action.empty() && advice.step == step; }

TEST(FirstBuildSlips, PlusIsNeverAskedForWhereMinusWasJustAskedFor) {
    constexpr int kPlus = 2, kMinus = 3;
    const Lesson& lesson = *shippedLessons().front().lesson;
    const auto bench = lesson.benchAt(kPlus);  // plus is there, minus is asked for
    const FirstBuildAdvice before = firstBuildAdvice(*evaluate(bench), 0);
    ASSERT_TRUE(asksFor(before, kMinus));
    ASSERT_FALSE(before.holes.empty());
    int asked = 0;
    std::vector<Edit> changes{{"Pull it out", {Remove{bench->jumpers.back().id}}}};
    for (const Slip& slip : allSlips(Ground(buildLayout(bench)), kMostSlips)) changes.push_back(editOf(*bench, slip));
    for (const Edit& change : changes) {
        const auto slipped = apply(*bench, change);
        ASSERT_TRUE(slipped.ok());
        const auto snapshot = evaluate(std::make_shared<const Bench>(slipped->bench));
        const FirstBuildAdvice advice = firstBuildAdvice(*snapshot, 0);
        if (!asksFor(advice, kPlus) || advice.holes.empty()) continue;
        ++asked;
        // The end of the chain for which it asks plus is another piece of metal than the one for which it asked minus.
        const Layout& layout = *snapshot->layout;
        const auto net = [&](const Hole& hole) { return layout.netOfHole(layout.holeIndex(hole)); };
        EXPECT_NE(net(advice.holes.front()), net(before.holes.front())) << change.name;
    }
    EXPECT_GT(asked, 0) << "the jumper to plus was taken out or put elsewhere";
}

/// Who does what the guide lights up comes to a lit LED from every slip that it doesn't call one: its holes are free and no body covers them.
TEST(FirstBuildSlips, FollowingTheLitHolesLeadsOn) {
    const Lesson& lesson = *shippedLessons().front().lesson;
    int followed = 0;
    for (int step = -1; step < kLitStep; ++step) {
        const auto bench = lesson.benchAt(step);
        for (const Slip& slip : allSlips(Ground(buildLayout(bench)), kMostSlips)) {
            Bench now = apply(*bench, editOf(*bench, slip))->bench;
            int reached = -1;
            for (int move = 0; move < kLitStep + 2; ++move) {
                const FirstBuildAdvice advice = firstBuildAdvice(*evaluate(std::make_shared<const Bench>(now)), 0);
                if (!advice.action.empty() || advice.step > kLitStep || advice.holes.size() < 2) break;
                const std::string where =
                    "step " + std::to_string(step + 1) + ", " + slipInWords(*bench, slip) + ", told: " + advice.title;
                EXPECT_GT(advice.step, reached) << where << ": it goes on, never back";
                reached = advice.step;
                Edit edit{"Follow", {}};
                if (advice.step < 2) {
                    const PartKind& kind = advice.step == 0 ? usualResistor() : usualLight();
                    Part part = makePart(kind, freeId(now, kind.prefix));
                    part.leads = {advice.holes[0], advice.holes[1]};
                    EXPECT_FALSE(refusal(now, part)) << where;
                    edit.operations.emplace_back(AddPart{part});
                } else {
                    Jumper jumper;
                    jumper.id = freeId(now, "W");
                    jumper.ends = {advice.holes[0], advice.holes[1]};
                    edit.operations.emplace_back(AddJumper{jumper});
                }
                const auto applied = apply(now, edit);
                ASSERT_TRUE(applied.ok()) << where;
                now = applied->bench;
                ++followed;
            }
        }
    }
    EXPECT_GT(followed, 20);
}

/// What somebody does who does what the guide says and lights: the mend of a slip, or the part or jumper of the step. Nothing where the
/// guide says neither.
std::optional<Edit> nextMove(const Bench& now, const FirstBuildAdvice& advice) {
    if (!advice.action.empty()) return advice.mend ? std::optional(advice.mend->edit) : std::nullopt;
    if (advice.holes.size() < 2) return std::nullopt;
    if (advice.step < 2) {
        const PartKind& kind = advice.step == 0 ? usualResistor() : usualLight();
        Part part = makePart(kind, freeId(now, kind.prefix));
        part.leads = {advice.holes[0], advice.holes[1]};
        if (refusal(now, part)) return std::nullopt;
        return Edit{"Push it in", {AddPart{part}}};
    }
    Jumper jumper;
    jumper.id = freeId(now, "W");
    jumper.ends = {advice.holes[0], advice.holes[1]};
    if (refusal(now, jumper)) return std::nullopt;
    return Edit{"Join", {AddJumper{jumper}}};
}

/// A newcomer who makes any one slip of the list at any step, and from then on does what the guide says, has a lit LED in few moves.
TEST(FirstBuildSlips, WhoeverSlipsIsLitInFewMoves) {
    constexpr int kMostMoves = 7;  // four steps, and a slip with what it draws after it
    const Lesson& lesson = *shippedLessons().front().lesson;
    int journeys = 0, longest = 0;
    for (int step = -1; step <= kLitStep; ++step) {
        const auto bench = lesson.benchAt(step);
        for (const Slip& slip : allSlips(Ground(buildLayout(bench)), kMostSlips)) {
            Bench now = apply(*bench, editOf(*bench, slip))->bench;
            std::string told = "step " + std::to_string(step + 1) + ", " + slipInWords(*bench, slip);
            int moves = 0;
            FirstBuildAdvice advice;
            while (moves <= kMostMoves) {
                advice = firstBuildAdvice(*evaluate(std::make_shared<const Bench>(now)), 0);
                if (advice.step > kLitStep) break;
                told += " | " + advice.title + " " + advice.action;
                const auto move = nextMove(now, advice);
                ASSERT_TRUE(move) << told;
                const auto applied = apply(now, *move);
                ASSERT_TRUE(applied.ok()) << told << ": " << applied.error().message;
                ASSERT_FALSE(refusalOfChange(now, applied->bench))
                    << told << ": " << *refusalOfChange(now, applied->bench);
                now = applied->bench;
                ++moves;
            }
            EXPECT_GT(advice.step, kLitStep) << told;
            longest = std::max(longest, moves);
            ++journeys;
        }
    }
    std::printf("%d journeys, the longest of %d moves\n", journeys, longest);
    EXPECT_GT(journeys, 100);
}

}  // namespace
}  // namespace tiepoint
