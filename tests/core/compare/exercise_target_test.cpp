// An exercise as what a learner's bench is compared with.

#include "core/compare/exercise_target.h"

#include "core/course/lesson_file.h"
#include "core/course/shipped.h"

#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>

namespace tiepoint {
namespace {

namespace fs = std::filesystem;

fs::path targetFile(const std::string& name, const std::string& text) {
    const fs::path path = fs::temp_directory_path() / ("tiepoint-target-" + name);
    std::ofstream(path) << text;
    return path;
}

Lesson eitherKeeper() { return *findShippedLesson("exercises/01-either-keeper.lesson.json")->lesson; }

TEST(ExerciseTarget, GoalReachesAndStartDoesnt) {
    for (const ShippedLesson& shipped : shippedExercises()) {
        EXPECT_TRUE(complaintsAbout(*shipped.lesson).empty()) << shipped.name;
        const ComparisonTarget target = exerciseTarget(*shipped.lesson);
        const auto goal = compareBenches(shipped.lesson->goal, target);
        ASSERT_TRUE(goal.ok());
        EXPECT_TRUE(goal->isReached()) << shipped.name;
        const auto start = compareBenches(shipped.lesson->start, target);
        ASSERT_TRUE(start.ok());
        EXPECT_FALSE(start->isReached()) << shipped.name;
        EXPECT_FALSE(start->sameBehaviour) << shipped.name;
        for (const BenchDifference& each : start->behaviour)
            EXPECT_EQ(each.look.find("Look at With"), std::string::npos) << each.look;
        EXPECT_FALSE(start->differences.empty()) << shipped.name << ": what differs is said";
    }
}

TEST(ExerciseTarget, TooManyJumpersDoTheSameButDontReachIt) {
    const Lesson lesson = eitherKeeper();
    Bench wordy = *lesson.goal;
    Jumper more;
    more.id = "W9";
    more.ends = {*parseHole("A.b4"), *parseHole("A.d4")};
    wordy.jumpers.push_back(more);
    const auto compared = compareBenches(std::make_shared<const Bench>(wordy), exerciseTarget(lesson));
    ASSERT_TRUE(compared.ok());
    EXPECT_TRUE(compared->sameCircuit && compared->sameBehaviour);
    EXPECT_FALSE(compared->isReached());
    EXPECT_EQ(compared->limits, std::vector<std::string>{"One jumper more than the four allowed."});
}

TEST(ExerciseTarget, IsReadFromAnExerciseABenchOrACircuit) {
    const Lesson lesson = eitherKeeper();
    const auto exercise = readTarget(targetFile("exercise.lesson.json", writeLesson(lesson)));
    ASSERT_TRUE(exercise.ok()) << exercise.error().oneLine();
    EXPECT_EQ(exercise->target->exercise, "Either keeper");
    EXPECT_EQ(exercise->target->limits.jumpers, 4);
    Lesson plain = lesson;
    plain.goal = nullptr;
    const fs::path noGoal = targetFile("plain.lesson.json", writeLesson(plain));
    const auto refused = readTarget(noGoal);
    ASSERT_FALSE(refused.ok());
    EXPECT_NE(refused.error().oneLine().find("goal"), std::string::npos);
    EXPECT_EQ(refused.error().file, noGoal.string());
    EXPECT_FALSE(readTarget(targetFile("bad.json", "{")).ok());
    EXPECT_FALSE(readTarget("/nowhere/at/all.json").ok());
}

TEST(ExerciseTarget, ABadExerciseIsComplainedAbout) {
    Lesson lesson = eitherKeeper();
    lesson.limits.jumpers = 3;
    ASSERT_EQ(complaintsAbout(lesson).size(), 1u);
    EXPECT_EQ(complaintsAbout(lesson)[0],
              "The goal itself doesn't keep the limits. One jumper more than the three allowed.");
    lesson.limits.jumpers = 4;
    lesson.start = lesson.goal;
    EXPECT_EQ(complaintsAbout(lesson), std::vector<std::string>{"The start already does what is asked for."});
}

}  // namespace
}  // namespace tiepoint
