// The value ladder, by the mouse, the wheel and the keyboard: the document and the light follow each step, and a run is one undo entry.

#include "ui/view/value_ladder.h"

#include "desk.h"

#include <QWheelEvent>

namespace tiepoint::ui {
namespace {

class LadderTest : public Desk {
protected:
    LadderTest() { open(beacon()); }
    ValueLadder& ladder() { return *view.findChild<ValueLadder*>(); }
    double ohm() const { return part("R1").value(0); }
    double light() {
        EXPECT_TRUE(waitForAnswer());
        return live.snapshot()->brightness(bench().partIndex("D1"));
    }
    void wheel(QWidget* over, QPoint at, int eighths) {
        QWheelEvent event(QPointF(at), over->mapToGlobal(QPointF(at)), {}, {0, eighths}, Qt::NoButton, Qt::NoModifier,
                          Qt::NoScrollPhase, false);
        QApplication::sendEvent(over, &event);
    }
};

TEST_F(LadderTest, ShowsTheNeighboursOfASelectedResistor) {
    EXPECT_FALSE(ladder().isVisible());
    view.setSelection({"R1"});
    EXPECT_TRUE(ladder().isVisible());
    EXPECT_EQ(ladder().rungs(), (std::vector<double>{270, 300, 330, 360, 390}));
    view.setSelection({"PS1"});
    EXPECT_EQ(ladder().rungs(), (std::vector<double>{3.3, 4.5, 5, 6, 7.5}));
    view.setSelection({"D1"});
    EXPECT_FALSE(ladder().isVisible()) << "an LED has no figure to step through";
    view.setSelection({"R1", "PS1"});
    EXPECT_FALSE(ladder().isVisible());
}

TEST_F(LadderTest, CoversNoPartOfTheBoard) {
    view.setSelection({"R1"});
    const Rect boards = view.picture().table->boardsMm;
    const QRectF board(view.fromMm({boards.left, boards.top}), view.fromMm({boards.right(), boards.bottom()}));
    EXPECT_FALSE(QRectF(ladder().geometry()).intersects(board));
}

TEST_F(LadderTest, KeepsOffWhatLiesOverTheView) {
    view.setSelection({"R1"});
    const QRect covered = ladder().geometry().adjusted(-20, -10, 20, 10);
    view.setCovered(covered);
    ASSERT_TRUE(ladder().isVisible());
    EXPECT_FALSE(ladder().geometry().intersects(covered));
    EXPECT_TRUE(view.rect().contains(ladder().geometry()));
    view.setCovered({});
    EXPECT_TRUE(ladder().geometry().intersects(covered)) << "back where it stood";
}

TEST_F(LadderTest, AClickOnARungSetsItAndTheLightFollows) {
    live.setHeld("S1", true);
    const double before = light();
    view.setSelection({"R1"});
    QTest::mouseClick(&ladder(), Qt::LeftButton, {}, ladder().rungRect(4).center());
    EXPECT_EQ(ohm(), 390);
    EXPECT_LT(light(), before);
    EXPECT_EQ(ladder().rungs()[2], 390) << "the row follows";
}

TEST_F(LadderTest, ARunOfTheWheelIsOneUndoEntry) {
    view.setSelection({"R1"});
    for (int i = 0; i < 4; ++i) wheel(&ladder(), ladder().rect().center(), 120);
    EXPECT_EQ(ohm(), 470);
    EXPECT_EQ(document.undoStack().count(), 1);
    document.undoStack().undo();
    EXPECT_EQ(ohm(), 330);
}

TEST_F(LadderTest, FineWheelsAddUpAndTheWheelWorksOverThePartToo) {
    view.setSelection({"R1"});
    const double scale = view.pixelsPerMm();
    for (int i = 0; i < 4; ++i) wheel(view.viewport(), bodyOf("R1"), -30);
    EXPECT_EQ(ohm(), 300);
    EXPECT_EQ(view.pixelsPerMm(), scale) << "no zoom";
    view.setSelection({});
    wheel(view.viewport(), bodyOf("R1"), -120);
    EXPECT_EQ(ohm(), 300);
    EXPECT_NE(view.pixelsPerMm(), scale) << "without a selection the wheel zooms";
}

TEST_F(LadderTest, UpAndDownWhileItHasTheKeyboard) {
    view.setSelection({"R1"});
    ladder().setFocus(Qt::TabFocusReason);
    QTest::keyClick(&ladder(), Qt::Key_Up);
    QTest::keyClick(&ladder(), Qt::Key_Up);
    QTest::keyClick(&ladder(), Qt::Key_Down);
    EXPECT_EQ(ohm(), 360);
    EXPECT_EQ(document.undoStack().count(), 1);
    QTest::keyClick(&ladder(), Qt::Key_Escape);
    EXPECT_TRUE(view.hasFocus());
}

TEST_F(LadderTest, PlusAndMinusStepFromTheBench) {
    view.setSelection({"R1"});
    key(Qt::Key_Plus);
    key(Qt::Key_Plus);
    EXPECT_EQ(ohm(), 390);
    key(Qt::Key_Minus);
    EXPECT_EQ(ohm(), 360);
    EXPECT_EQ(document.undoStack().count(), 1);
}

TEST_F(LadderTest, AnotherPartBeginsAnotherEntry) {
    view.setSelection({"R1"});
    key(Qt::Key_Plus);
    view.setSelection({"PS1"});
    key(Qt::Key_Plus);
    EXPECT_EQ(document.undoStack().count(), 2);
    EXPECT_EQ(part("PS1").value(0), 6);
}

}  // namespace
}  // namespace tiepoint::ui
