// Giving a lesson in a real window: steps by the keys, exactly; predictions veiled until the reveal, hands counted; the wrong idea as a ghost;
// tables ticked; and the desk as it was afterwards.

#include "core/course/shipped.h"
#include "lesson_desk_bench.h"
#include "ui/lesson/lesson_sizes.h"
#include "ui/view/bench_marks.h"
#include "ui/view/value_ladder.h"

#include <QElapsedTimer>

#include <gtest/gtest.h>

#include <algorithm>

namespace tiepoint::ui {
namespace {

constexpr const char* kOneLoop = "lessons/05-one-loop.lesson.json";
constexpr const char* kHiddenMetal = "lessons/02-hidden-metal.lesson.json";

TEST_F(LessonTest, PageDownAndPageUpWalkThroughEveryStepExactly) {
    for (const ShippedLesson& shipped : shippedLessons()) {
        open(std::string(shipped.name).c_str());
        for (int step = 0; step < shipped.lesson->stepCount(); ++step) {
            press(Qt::Key_PageDown);
            ASSERT_EQ(run().step(), step) << shipped.name;
            EXPECT_TRUE(window().projection().isProjecting());
            EXPECT_TRUE(isSame(bench(), *situationOf(*shipped.lesson, step).bench))
                << shipped.name << " step " << step + 1;
            reveal();
            if (run().present().ask && run().present().ask->wrong) press(Qt::Key_PageDown);
            EXPECT_FALSE(window().document().isModified()) << "the lesson's own steps are nothing to lose";
        }
        press(Qt::Key_PageDown);
        EXPECT_EQ(run().step(), shipped.lesson->stepCount() - 1) << "it ends with its last step";
        while (run().step() > 0) press(Qt::Key_PageUp);
        EXPECT_TRUE(isSame(bench(), *situationOf(*shipped.lesson, 0).bench));
    }
}

TEST_F(LessonTest, AnyStepIsReachedAtOnceWhateverHandsDid) {
    open(kHiddenMetal);
    press(Qt::Key_PageDown);
    ASSERT_FALSE(window().document().push(removeEdit(bench(), {"D1", "W2"})));
    run().goTo(3);
    EXPECT_TRUE(isSame(bench(), *run().lesson()->benchAt(3)));
    const QRectF small = lessons().band().stepPlace(0);
    QTest::mouseClick(&lessons().band(), Qt::LeftButton, {}, small.center().toPoint());
    EXPECT_EQ(run().step(), 0);
    EXPECT_TRUE(isSame(bench(), *run().lesson()->benchAt(0)));
}

TEST_F(LessonTest, NothingElseStandsThere) {
    open(kHiddenMetal);
    press(Qt::Key_PageDown);
    EXPECT_TRUE(lessons().caption().isVisible());
    EXPECT_TRUE(lessons().band().isVisible());
    EXPECT_FALSE(window().tray().isVisible());
    EXPECT_FALSE(window().cards().isVisible());
    EXPECT_FALSE(window().titleLine().isVisible());
    EXPECT_FALSE(window().bar().isVisible());
    const QRect view = window().view().geometry();
    EXPECT_LE(lessons().caption().geometry().bottom(), view.top());
    EXPECT_GE(lessons().band().geometry().top(), view.bottom());
    WordsWatch watch;
    lessons().caption().repaint();
    lessons().band().repaint();
    ASSERT_FALSE(watch.drawn().empty());
    EXPECT_NEAR(watch.drawn().front().pixels, window().height() / kCaptionLines, 1);
    for (const DrawnWords& words : watch.drawn()) {
        EXPECT_TRUE(words.whole) << words.words.toStdString();
        EXPECT_GE(words.pixels, window().height() / kSmallestLines * 0.7) << words.words.toStdString();
    }
}

TEST_F(LessonTest, APredictionIsVeiledUntilTheReveal) {
    open(kOneLoop);
    press(Qt::Key_PageDown);
    ASSERT_TRUE(run().present().ask);
    using Phase = LessonRun::Phase;
    for (const Phase phase : {Phase::Vote, Phase::Talk, Phase::VoteAgain}) {
        EXPECT_EQ(run().phase(), phase);
        EXPECT_TRUE(WindowBench::waitFor(
            [this] { return window().live().snapshot()->revision == window().document().revision(); }));
        QTest::qWait(60);
        EXPECT_FALSE(window().view().picture().snapshot) << "no light, no arrows, no readings, no display";
        EXPECT_FALSE(window().view().picture().pinned);
        EXPECT_FALSE(window().view().isMoving());
        EXPECT_FALSE(window().arrowScale().isVisible());
        press(Qt::Key_PageDown);
    }
    EXPECT_EQ(run().phase(), Phase::Revealed);
    ASSERT_TRUE(desk.waitForAnswer());
    EXPECT_TRUE(window().view().picture().live());
    EXPECT_TRUE(window().arrowScale().isVisible());
    EXPECT_EQ(window().arrowScale().words(), QStringLiteral("10 mA"));
    press(Qt::Key_PageUp);
    EXPECT_FALSE(window().view().picture().snapshot) << "back to the vote";
}

TEST_F(LessonTest, HandsAreCountedTwiceAndKept) {
    open(kOneLoop);
    press(Qt::Key_PageDown);
    LessonBand& band = lessons().band();
    const auto at = [&](int answer) { return band.answerPlace(answer).center().toPoint(); };
    for (int i = 0; i < 9; ++i) QTest::mouseClick(&band, Qt::LeftButton, {}, at(0));
    QTest::mouseClick(&band, Qt::RightButton, {}, at(0));
    EXPECT_EQ(run().hands(0), 8);
    QTest::mouseClick(&band, Qt::LeftButton, {}, at(2));
    QTest::keyClick(&band, Qt::Key_1);
    QTest::keyClick(&band, Qt::Key_3);
    EXPECT_EQ(run().hands(2), 13) << "digits set the number";
    press(Qt::Key_PageDown);
    QTest::mouseClick(&band, Qt::LeftButton, {}, at(2));
    EXPECT_EQ(run().handsBefore(2), 13) << "while they talk nothing is counted";
    press(Qt::Key_PageDown);
    EXPECT_EQ(run().hands(2), -1) << "the second vote begins anew";
    QTest::mouseClick(&band, Qt::LeftButton, {}, at(2));
    EXPECT_EQ(run().hands(2), 1);
    open(kOneLoop);
    press(Qt::Key_PageDown);
    EXPECT_EQ(run().hands(0), 8) << "kept for the next time";
    EXPECT_EQ(run().hands(2), 13);
}

TEST_F(LessonTest, HandsAreCountedTableByTableWhereTheTeacherWantsIt) {
    open(kOneLoop);
    press(Qt::Key_PageDown);
    LessonBand& band = lessons().band();
    const auto click = [&](const QRectF& place) {
        ASSERT_FALSE(place.isEmpty());
        QTest::mouseClick(&band, Qt::LeftButton, {}, place.center().toPoint());
        QApplication::processEvents();
    };
    click(band.answerPlace(0));
    EXPECT_EQ(run().hands(0), 1);
    const int height = band.height();
    click(band.byTablePlace());
    EXPECT_EQ(run().table(), 1);
    EXPECT_GT(band.height(), height) << "a row of tables";
    for (int table = 1; table <= LessonRun::kTables; ++table)
        EXPECT_TRUE(QRectF(band.rect()).contains(band.countedPlace(table))) << table;
    click(band.answerPlace(2));
    click(band.answerPlace(2));
    EXPECT_EQ(run().hands(0), -1) << "counted anew, table by table";
    EXPECT_TRUE(run().isCounted(1));
    click(band.countedPlace(4));
    EXPECT_EQ(run().table(), 4);
    click(band.answerPlace(2));
    EXPECT_EQ(run().hands(2), 3) << "all tables";
    EXPECT_EQ(run().handsOf(4, 2), 1);
    QTest::keyClick(&band, Qt::Key_Tab);
    EXPECT_EQ(run().table(), 5);
    QTest::keyClick(&band, Qt::Key_7);
    EXPECT_EQ(run().handsOf(5, 2), 7);
    open(kOneLoop);
    EXPECT_EQ(run().stepBefore(), 0);
    press(Qt::Key_PageDown);
    EXPECT_EQ(run().hands(2), 10) << "kept by table";
    EXPECT_EQ(run().handsOf(1, 2), 2);
}

TEST_F(LessonTest, WhereItEndedIsTakenUpAgainAndTheQuestionsOnPaperComeBack) {
    open(kHiddenMetal);
    while (!run().isAtEnd()) press(Qt::Key_PageDown);
    EXPECT_FALSE(lessons().paper().isVisible());
    press(Qt::Key_PageDown);
    ASSERT_TRUE(lessons().paper().isVisible()) << "a lesson ends with two questions on paper";
    EXPECT_EQ(lessons().paper().questions().size(), 2);
    const QStringList asked = lessons().paper().questions();
    press(Qt::Key_PageUp);
    EXPECT_FALSE(lessons().paper().isVisible());
    run().goTo(2);
    open(kHiddenMetal);
    const auto offered = [&](const char* word) -> QToolButton* {
        for (QToolButton* button : window().bar().buttons())
            if (button->text().contains(QString::fromLatin1(word))) return button;
        return nullptr;
    };
    EXPECT_EQ(offered("last lesson"), nullptr) << "its own questions end it";
    ASSERT_NE(offered("Go on at step 3"), nullptr);
    offered("Go on at step 3")->click();
    EXPECT_EQ(run().step(), 2);
    EXPECT_TRUE(window().projection().isProjecting());
    open(kOneLoop);
    ASSERT_NE(offered("last lesson"), nullptr);
    offered("last lesson")->click();
    ASSERT_TRUE(lessons().paper().isVisible());
    EXPECT_EQ(lessons().paper().questions(), asked);
    EXPECT_TRUE(lessons().paper().heading().contains(QStringLiteral("Hidden metal")));
    press(Qt::Key_PageDown);
    EXPECT_FALSE(lessons().paper().isVisible());
    EXPECT_EQ(run().step(), 0);
}

TEST_F(LessonTest, NothingOfTheStepBeforeLiesOnTheBench) {
    open(kOneLoop);
    for (int step = 0; step < run().lesson()->stepCount(); ++step) {
        run().goTo(step);
        reveal();
        ASSERT_TRUE(desk.waitForAnswer());
        EXPECT_FALSE(window().view().picture().changes) << "step " << step + 1;
        for (const ValueLadder* ladder : window().view().findChildren<ValueLadder*>())
            EXPECT_FALSE(ladder->isVisible()) << "step " << step + 1 << " covers what it points at";
    }
}

TEST_F(LessonTest, TheWrongIdeaStandsBesideTheTruth) {
    open(kOneLoop);
    press(Qt::Key_PageDown);
    reveal();
    const int broad = window().view().width();
    press(Qt::Key_PageDown);
    EXPECT_TRUE(run().showsWrongIdea());
    GhostBoard& ghost = lessons().ghost();
    ASSERT_TRUE(ghost.isVisible());
    EXPECT_LT(window().view().width(), broad);
    EXPECT_FALSE(ghost.geometry().intersects(window().view().geometry()));
    QTest::qWait(600);
    const QImage seen = ghost.grab().toImage();
    ASSERT_FALSE(ghost.flagPlace().isEmpty());
    // Its flag and collar are the only colour on it: the rest is grey.
    int coloured = 0, outside = 0;
    const QRect flag = ghost.flagPlace().toAlignedRect();
    for (int y = 0; y < seen.height(); y += 2) {
        for (int x = 0; x < seen.width(); x += 2) {
            const QColor colour = seen.pixelColor(x, y);
            if (colour.alpha() < 40 || colour.hsvSaturation() < 110) continue;
            ++coloured;
            if (!flag.contains(x, y)) ++outside;
        }
    }
    EXPECT_GT(coloured, 500);
    EXPECT_LT(outside, coloured) << "flag and collar";
    press(Qt::Key_PageDown);
    EXPECT_FALSE(ghost.isVisible());
    EXPECT_EQ(run().step(), 1);
}

TEST_F(LessonTest, AStopStepTicksTables) {
    open(kHiddenMetal);
    for (int step = 0; step < run().lesson()->stepCount(); ++step) {
        if (run().lesson()->steps[static_cast<std::size_t>(step)].kind == StepKind::Stop) run().goTo(step);
    }
    ASSERT_EQ(run().present().kind, StepKind::Stop);
    LessonBand& band = lessons().band();
    for (const int table : {1, 7, 15})
        QTest::mouseClick(&band, Qt::LeftButton, {}, band.tablePlace(table).center().toPoint());
    QTest::mouseClick(&band, Qt::LeftButton, {}, band.tablePlace(7).center().toPoint());
    EXPECT_TRUE(run().isTicked(1));
    EXPECT_FALSE(run().isTicked(7));
    EXPECT_TRUE(run().isTicked(15));
    EXPECT_EQ(bench().findPart("PS1")->stateValue(0), 0) << "no power before each board was looked at";
}

TEST_F(LessonTest, PartsGlideIntoTheirHoles) {
    open(kHiddenMetal);
    press(Qt::Key_PageDown);
    reveal();
    QTest::qWait(500);
    press(Qt::Key_PageDown);  // the jumper moves along its column
    EXPECT_TRUE(lessons().glide().isGliding());
    EXPECT_EQ(lessons().glide().thingCount(), 1);
    EXPECT_TRUE(isSame(bench(), *run().lesson()->benchAt(1))) << "the table stands at the step from the first frame on";
    EXPECT_TRUE(WindowBench::waitFor([this] { return !lessons().glide().isGliding(); }));
}

TEST_F(LessonTest, EndingLeavesTheDeskAsItWas) {
    open(kHiddenMetal);
    Views mine = window().view().views();
    mine.arrows = Arrows::Electrons;
    window().view().setViews(mine);
    press(Qt::Key_PageDown);
    EXPECT_TRUE(window().view().views().strips) << "the step's own views";
    press(Qt::Key_F11);
    EXPECT_FALSE(window().projection().isProjecting());
    EXPECT_FALSE(run().isRunning());
    EXPECT_FALSE(lessons().caption().isVisible());
    EXPECT_TRUE(window().tray().isVisible());
    EXPECT_EQ(window().view().views().arrows, Arrows::Electrons);
    EXPECT_FALSE(window().view().views().strips);
    EXPECT_TRUE(window().view().selection().isEmpty());
}

TEST_F(LessonTest, TheTeacherAloneReadsWhatComesNext) {
    open(kOneLoop);
    press(Qt::Key_PageDown);
    lessons().showTeacherWords(true);
    ASSERT_TRUE(lessons().teacherWords());
    QStringList lines = lessons().teacherWords()->lines();
    ASSERT_EQ(lines.size(), 3);
    EXPECT_EQ(lines[0], QStringLiteral("Step 1 of 6: Two lights share one loop"));
    EXPECT_TRUE(lines[1].startsWith(QStringLiteral("Count the hands")));
    press(Qt::Key_PageDown);
    press(Qt::Key_PageDown);
    lines = lessons().teacherWords()->lines();
    EXPECT_EQ(lines[2], QStringLiteral("Next: the reveal. Right is 3."));
}

TEST_F(LessonTest, ABenchHasNoLessonAndPageDownDoesNothing) {
    open(kOneLoop);
    window().files().newBench();
    EXPECT_FALSE(run().lesson());
    press(Qt::Key_PageDown);
    EXPECT_FALSE(window().projection().isProjecting());
}

TEST_F(LessonTest, AStepChangeTakesAFrame) {
    open(kOneLoop);
    press(Qt::Key_PageDown);
    reveal();
    std::vector<qint64> took;
    for (int i = 0; i < 12; ++i) {
        const int to = i % 2 == 0 ? 2 : 3;
        QElapsedTimer timer;
        timer.start();
        run().goTo(to);
        took.push_back(timer.nsecsElapsed() / 1'000'000);
        QApplication::processEvents();
    }
    std::ranges::sort(took);
    RecordProperty("medianStepMs", static_cast<int>(took[took.size() / 2]));
    EXPECT_LT(took[took.size() / 2], 250) << "far more than a frame: something is redone that needn't be";
}

}  // namespace
}  // namespace tiepoint::ui
