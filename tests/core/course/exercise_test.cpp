// Exercises: their limits counted, their locks, and those that ship.

#include "core/course/exercise.h"

#include "core/course/lesson_check.h"
#include "core/course/lesson_file.h"
#include "core/course/shipped.h"
#include "core/findings/reveal.h"

#include <gtest/gtest.h>

namespace tiepoint {
namespace {

const Lesson& shippedExercise(std::string_view name) { return *findShippedLesson(name)->lesson; }
constexpr std::string_view kEither = "exercises/01-either-keeper.lesson.json";

TEST(Exercise, ThoseThatShipAreSound) {
    ASSERT_GE(shippedExercises().size(), 2u);
    int number = 1;
    for (const ShippedLesson& shipped : shippedExercises()) {
        EXPECT_EQ(shipped.number, number++);
        EXPECT_TRUE(isExercise(*shipped.lesson)) << shipped.name;
        EXPECT_FALSE(shipped.lesson->summary.empty());
        EXPECT_TRUE(limitsPassed(*shipped.lesson->goal, shipped.lesson->limits).empty()) << shipped.name;
        const CheckedLesson checked = checkLesson(*shipped.lesson);
        for (const CheckedStep& step : checked.steps) {
            EXPECT_FALSE(step.claims.empty()) << shipped.name;
            for (const CheckedClaim& claim : step.claims) EXPECT_TRUE(claim.good()) << complaintAbout(claim);
        }
    }
}

TEST(Exercise, LimitsAreToldInWords) {
    const Lesson& lesson = shippedExercise(kEither);
    LessonLimits limits;
    EXPECT_TRUE(limitsPassed(*lesson.goal, limits).empty()) << "without limits anything goes";
    EXPECT_EQ(limitsUsed(*lesson.goal, limits), "");
    limits.parts = 4;
    limits.jumpers = 2;
    const std::vector<std::string> two{"Two jumpers more than the two allowed."};
    EXPECT_EQ(limitsPassed(*lesson.goal, limits), two);
    limits.parts = 3;
    limits.jumpers = 3;
    const std::vector<std::string> both{"One part more than the three allowed.",
                                        "One jumper more than the three allowed."};
    EXPECT_EQ(limitsPassed(*lesson.goal, limits), both);
    EXPECT_EQ(limitsUsed(*lesson.goal, limits), "4 of 3 parts, 4 of 3 jumpers");
    EXPECT_EQ(partsCounted(*lesson.goal), 4) << "the supply doesn't count";
}

TEST(Exercise, MendsAreLockedOnItsBenchAndInWhatIsSaved) {
    const Lesson& lesson = shippedExercise(kEither);
    ASSERT_TRUE(hasLock(lesson, "mends"));
    EXPECT_FALSE(mayReveal(*lesson.start, Reveal::Mend));
    EXPECT_TRUE(mayReveal(*lesson.start, Reveal::Proof));
    EXPECT_FALSE(mayReveal(*lesson.benchAt(0), Reveal::Mend)) << "its steps keep the lock";
    EXPECT_FALSE(hasLock(lesson, "parts"));
    const auto again = readLesson(writeLesson(lesson));
    ASSERT_TRUE(again.ok()) << again.error().oneLine();
    EXPECT_EQ(*again->lesson.start, *lesson.start);
    EXPECT_EQ(*again->lesson.goal, *lesson.goal);
    EXPECT_EQ(again->lesson.limits.jumpers, lesson.limits.jumpers);
}

}  // namespace
}  // namespace tiepoint
