// Exercises in a real window: opened from the menu, limits counted beside the title, locks kept, and the bench compared with the goal on a key.

#include "core/course/exercise.h"

#include "core/compare/exercise_target.h"
#include "core/course/shipped.h"
#include "core/findings/reveal.h"
#include "window_bench.h"

#include <gtest/gtest.h>

namespace tiepoint::ui {
namespace {

class ExerciseTest : public testing::Test {
protected:
    void SetUp() override {
        desk.restart({1920, 1080});
        desk.unsavedAnswer = FileActions::Answer::Discard;
    }
    MainWindow& window() { return desk.window(); }
    ExerciseDesk& exercises() { return window().exercises(); }
    ComparePanel& panel() { return window().tools().sheets().panel(); }
    void open(int index) {
        exercises().menu()->actions().at(index)->trigger();
        QApplication::processEvents();
    }
    void compare() {
        QTest::keyClick(&window().view(), Qt::Key_F3, Qt::ShiftModifier);
        ASSERT_TRUE(panel().isVisible());
        ASSERT_TRUE(WindowBench::waitFor([&] { return !panel().isWorking(); }));
    }
    const Lesson& lesson(int index) { return *shippedExercises()[static_cast<std::size_t>(index)].lesson; }
    void reachGoal(int index) {
        const Edit edit = editBetween(*window().document().bench(), *lesson(index).goal, "Build");
        ASSERT_FALSE(window().document().push(edit));
    }

    WindowBench desk;
};

TEST_F(ExerciseTest, SaysItsTaskCountsItsLimitsAndKeepsItsLocks) {
    open(0);
    ASSERT_TRUE(exercises().isActive());
    EXPECT_TRUE(window().bar().isVisible());
    EXPECT_EQ(window().bar().line(), exercises().task());
    EXPECT_TRUE(exercises().task().contains(QStringLiteral("Make either keeper")));
    EXPECT_FALSE(window().sheetDesk().diagramAction()->isEnabled());
    EXPECT_FALSE(window().sheetDesk().tidyAction()->isEnabled());
    EXPECT_FALSE(mayReveal(*window().document().bench(), Reveal::Mend));
    reachGoal(0);
    EXPECT_FALSE(window().sheetDesk().diagramAction()->isEnabled()) << "after an edit too";
    window().files().openEmbedded(QStringLiteral("benches/beacon-lamp.bench.json"));
    desk.waitForAnswer();
    EXPECT_FALSE(exercises().isActive());
    EXPECT_TRUE(window().sheetDesk().diagramAction()->isEnabled());
    EXPECT_TRUE(window().sheetDesk().tidyAction()->isEnabled());
}

TEST_F(ExerciseTest, TheKeySaysWhereToLookAndThenThatTheGoalIsReached) {
    open(0);
    compare();
    EXPECT_TRUE(panel().verdict().text().startsWith(QStringLiteral("Not there yet")));
    ASSERT_GE(panel().list().count(), 1);
    EXPECT_FALSE(panel().showsGoal());
    EXPECT_FALSE(panel().goalButton().isVisible()) << "mends are locked";
    EXPECT_FALSE(panel().targetPicture().isVisible());
    EXPECT_TRUE(panel().task().text().contains(QStringLiteral("keeper")));
    for (const BenchDifference& each : panel().comparison().differences) {
        for (int row = 0; row < panel().list().count(); ++row)
            EXPECT_NE(panel().list().item(row)->text(), QString::fromStdString(each.text)) << "never the solution";
    }
    QTest::keyClick(&panel(), Qt::Key_Escape);
    reachGoal(0);
    compare();
    EXPECT_EQ(panel().verdict().text(), QStringLiteral("You have reached the goal"));
    EXPECT_EQ(panel().list().count(), 0);
}

TEST_F(ExerciseTest, WhoUsesMoreThanIsAllowedIsToldCalmly) {
    open(0);
    reachGoal(0);
    for (const char* ends : {"A.b4 A.d4", "A.b9 A.d9"}) {
        Jumper more;
        more.id = freeId(*window().document().bench(), "W");
        const std::string both = ends;
        more.ends = {*parseHole(both.substr(0, 4)), *parseHole(both.substr(5))};
        ASSERT_FALSE(window().document().push({"Jumper", {AddJumper{more}}}));
    }
    compare();
    EXPECT_EQ(panel().verdict().text(), QStringLiteral("It does what is asked for. Can it be done with less?"));
    ASSERT_EQ(panel().list().count(), 1);
    EXPECT_EQ(panel().list().item(0)->text(), QStringLiteral("Two jumpers more than the four allowed."));
}

TEST_F(ExerciseTest, WithoutAnExerciseTheKeySaysWhereSomeAre) {
    window().files().openEmbedded(QStringLiteral("benches/beacon-lamp.bench.json"));
    desk.waitForAnswer();
    exercises().compareAction()->trigger();
    EXPECT_FALSE(panel().isVisible());
    EXPECT_TRUE(window().bar().line().startsWith(QStringLiteral("No exercise is open")));
}

}  // namespace
}  // namespace tiepoint::ui
