// Buttons pressed with the mouse and with the letters on their caps.

#include "desk.h"

namespace tiepoint::ui {
namespace {

class PressGestureTest : public Desk {
protected:
    PressGestureTest() {
        open(beacon());
        cap = bodyOf("S1");
    }
    double ledCurrent() {
        waitForAnswer();
        const Snapshot& snapshot = *view.picture().snapshot;
        return snapshot.leadCurrent[static_cast<std::size_t>(snapshot.layout->leadIndex(bench().partIndex("D1"), 0))];
    }
    QPoint cap;
};

constexpr double kLit = 5e-3, kDark = 1e-6;

TEST_F(PressGestureTest, ConductsWhileTheMouseIsDown) {
    EXPECT_LT(ledCurrent(), kDark);
    press(cap);
    EXPECT_TRUE(live.isHeld("S1"));
    EXPECT_GT(ledCurrent(), kLit);
    EXPECT_TRUE(view.isMoving());
    release(cap);
    EXPECT_LT(ledCurrent(), kDark);
    EXPECT_FALSE(view.isMoving()) << "nothing ticks while nothing moves";
    EXPECT_FALSE(document.undoStack().canUndo()) << "a press is no edit";
}

TEST_F(PressGestureTest, TheEdgeOfTheBodyDrags) {
    const Outline& body = view.picture().table->parts[static_cast<std::size_t>(bench().partIndex("S1"))].pose.body;
    const QPoint edge = at(Point{body.centre.x + body.halfLength - 0.3, body.centre.y + body.halfWidth - 0.3});
    const QPoint step = at("A.e18") - at("A.e16");
    drag(edge, edge + step);
    EXPECT_FALSE(live.isHeld("S1"));
    EXPECT_EQ(part("S1").leads[0], test::holeAt("A.e16"));
}

TEST_F(PressGestureTest, TheLetterPressesAndAutoRepeatIsIgnored) {
    QTest::keyPress(&view, Qt::Key_A);
    EXPECT_TRUE(live.isHeld("S1"));
    const auto sequence = live.inputs().sequence;
    QKeyEvent repeatedRelease(QEvent::KeyRelease, Qt::Key_A, Qt::NoModifier, "a", true);
    QKeyEvent repeatedPress(QEvent::KeyPress, Qt::Key_A, Qt::NoModifier, "a", true);
    QApplication::sendEvent(&view, &repeatedRelease);
    QApplication::sendEvent(&view, &repeatedPress);
    EXPECT_TRUE(live.isHeld("S1"));
    EXPECT_EQ(live.inputs().sequence, sequence);
    QTest::keyRelease(&view, Qt::Key_A);
    EXPECT_FALSE(live.isHeld("S1"));
}

TEST_F(PressGestureTest, OtherLettersPressNothing) {
    for (const Qt::Key key : {Qt::Key_S, Qt::Key_B, Qt::Key_Period}) {
        QTest::keyPress(&view, key);
        EXPECT_TRUE(live.inputs().held.empty()) << key;
        QTest::keyRelease(&view, key);
    }
}

TEST_F(PressGestureTest, ShiftHoldsUntilTheNextPress) {
    click(cap, Qt::ShiftModifier);
    EXPECT_TRUE(live.isHeld("S1"));
    EXPECT_GT(ledCurrent(), kLit);
    click(cap);
    EXPECT_FALSE(live.isHeld("S1"));
    QTest::keyClick(&view, Qt::Key_A, Qt::ShiftModifier);
    EXPECT_TRUE(live.isHeld("S1"));
    QTest::keyClick(&view, Qt::Key_A);
    EXPECT_FALSE(live.isHeld("S1"));
}

TEST_F(PressGestureTest, LosingTheFocusReleasesAll) {
    click(cap, Qt::ShiftModifier);
    QTest::keyPress(&view, Qt::Key_A);
    EXPECT_TRUE(live.isHeld("S1"));
    QFocusEvent lost(QEvent::FocusOut, Qt::ActiveWindowFocusReason);
    QApplication::sendEvent(&view, &lost);
    EXPECT_TRUE(live.inputs().held.empty());
    press(cap);
    release(cap);
    EXPECT_FALSE(live.isHeld("S1")) << "and nothing is latched any more";
}

TEST_F(PressGestureTest, LettersAreTakenFromShortcutsOnlyWhereTheyAreOnACap) {
    const auto wanted = [this](Qt::Key key) {
        QKeyEvent event(QEvent::ShortcutOverride, key, Qt::NoModifier, QKeySequence(key).toString().toLower());
        event.ignore();
        QApplication::sendEvent(&view, &event);
        return event.isAccepted();
    };
    EXPECT_TRUE(wanted(Qt::Key_A));
    EXPECT_FALSE(wanted(Qt::Key_S));
    EXPECT_FALSE(wanted(Qt::Key_B));
    EXPECT_FALSE(wanted(Qt::Key_1)) << "digits belong to the views until a part is selected";
    view.setSelection({"R1"});
    EXPECT_TRUE(wanted(Qt::Key_1));
}

}  // namespace
}  // namespace tiepoint::ui
