// Diagrams in a lesson, in a real window: which of three is the board's, and board and diagram beside each other.

#include "lesson_desk_bench.h"
#include "ui/lesson/lesson_sizes.h"

#include <vector>

namespace tiepoint::ui {
namespace {

class LessonDiagramTest : public LessonTest {};

constexpr const char* kTwoSwitches = "lessons/09-and-or-two-switches.lesson.json";

/// The step that asks which diagram is the board's; the next one shows it beside the board.
int stepWithDiagrams(const Lesson& lesson) {
    for (int step = 0; step < lesson.stepCount(); ++step) {
        const auto& ask = lesson.steps[static_cast<std::size_t>(step)].ask;
        if (ask && ask->diagrams > 0) return step;
    }
    return -1;
}

TEST_F(LessonDiagramTest, AsksWhichDiagramIsTheBoards) {
    open(kTwoSwitches);
    const int step = stepWithDiagrams(*run().lesson());
    ASSERT_GE(step, 0);
    run().goTo(step);
    QApplication::processEvents();
    LessonBand& band = lessons().band();
    EXPECT_FALSE(window().sheetDesk().sheet().isVisible()) << "it would tell";
    const QImage veiled = band.grab().toImage();
    std::vector<QImage> answers;
    for (int answer = 0; answer < 3; ++answer) {
        const QRect frame = band.answerPlace(answer).toAlignedRect();
        EXPECT_GT(frame.height(), window().height() / 5) << "a diagram needs room";
        answers.push_back(veiled.copy(frame.adjusted(frame.height() / 4, frame.height() / 4, -4, -4)));
    }
    for (int a = 0; a < 3; ++a) {
        int inked = 0;
        for (int x = 0; x < answers[static_cast<std::size_t>(a)].width(); ++x) {
            for (int y = 0; y < answers[static_cast<std::size_t>(a)].height(); ++y)
                inked += answers[static_cast<std::size_t>(a)].pixelColor(x, y).lightness() < 90;
        }
        EXPECT_GT(inked, 500) << "diagram " << a + 1 << " is drawn";
        for (int b = 0; b < a; ++b)
            EXPECT_NE(answers[static_cast<std::size_t>(a)], answers[static_cast<std::size_t>(b)]) << a << b;
    }
    reveal();
    EXPECT_NE(band.grab().toImage(), veiled);
}

TEST_F(LessonDiagramTest, AStepShowsTheDiagramBesideTheBoard) {
    open(kTwoSwitches);
    const int step = stepWithDiagrams(*run().lesson()) + 1;
    ASSERT_TRUE(run().lesson()->steps[static_cast<std::size_t>(step)].sheet);
    press(Qt::Key_PageDown);  // giving it begins, before a room
    run().goTo(step);
    QApplication::processEvents();
    const SheetView& sheet = window().sheetDesk().sheet();
    ASSERT_TRUE(sheet.isVisible());
    EXPECT_GE(sheet.geometry().left(), window().view().geometry().right());
    EXPECT_GT(sheet.width(), window().width() / 3);
    EXPECT_GT(window().view().width(), window().width() / 3);
    EXPECT_LE(lessons().caption().geometry().bottom(), sheet.geometry().top());
    EXPECT_GE(lessons().band().geometry().top(), sheet.geometry().bottom());
    run().goTo(0);
    QApplication::processEvents();
    EXPECT_FALSE(sheet.isVisible());
    run().goTo(step);
    press(Qt::Key_F11);
    EXPECT_FALSE(sheet.isVisible()) << "as it was before the lesson";
}

}  // namespace
}  // namespace tiepoint::ui
