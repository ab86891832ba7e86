// The first build with every slip of the list at every step: who slips is told what to do, or shown where, and never sent to a place that is
// taken.

#include "core/course/shipped.h"
#include "core/edit/placement.h"
#include "core/lesson/first_build.h"
#include "core/slips/slip.h"

#include <gtest/gtest.h>

#include <map>
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

}  // namespace
}  // namespace tiepoint
