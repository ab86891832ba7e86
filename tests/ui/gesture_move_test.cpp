// Moving, turning, switching, selecting; leads one at a time.

#include "core/edit/placement.h"
#include "desk.h"
#include "ui/paint/bench_painter.h"

namespace tiepoint::ui {
namespace {

class MoveGestureTest : public Desk {
protected:
    MoveGestureTest() { open(beacon()); }
    QPoint columns(int count) const {
        return QPoint(static_cast<int>(std::lround(count * kPitchMm * view.pixelsPerMm())), 0);
    }
};

TEST_F(MoveGestureTest, APartFollowsInWholeHoles) {
    const QPoint body = bodyOf("R1");
    dragAndHold(body, at("A.b12"));
    EXPECT_TRUE(marks().carried);
    EXPECT_EQ(marks().targets.size(), 2U);
    release(at("A.b12"));
    // The body's middle lay over c11: one column on, one row up.
    EXPECT_EQ(part("R1").leads[0], test::holeAt("A.b9"));
    EXPECT_EQ(part("R1").leads[1], test::holeAt("A.b15"));
    EXPECT_EQ(view.selection(), QStringList{"R1"});
    document.undoStack().undo();
    EXPECT_EQ(part("R1").leads[0], test::holeAt("A.c8"));
}

TEST_F(MoveGestureTest, ARefusedMoveSaysWhyAndChangesNothing) {
    const auto before = document.bench();
    const Rect boards = view.picture().table->boardsMm;
    dragAndHold(bodyOf("R1"), at(Point{boards.right() + 20, boards.top - 5}));
    EXPECT_TRUE(marks().refused);
    EXPECT_FALSE(said().isEmpty());
    release(at(Point{boards.right() + 20, boards.top - 5}));
    EXPECT_EQ(document.bench(), before);
}

TEST_F(MoveGestureTest, EscapeTakesItBack) {
    const auto before = document.bench();
    dragAndHold(bodyOf("R1"), at("A.b14"));
    key(Qt::Key_Escape);
    release(at("A.b14"));
    EXPECT_EQ(document.bench(), before);
    EXPECT_FALSE(marks().carried);
}

TEST_F(MoveGestureTest, ClicksSelectAndModifiersAdd) {
    click(bodyOf("R1"));
    EXPECT_EQ(view.selection(), QStringList{"R1"});
    click(bodyOf("D1"), Qt::ControlModifier);
    EXPECT_EQ(view.selection(), (QStringList{"R1", "D1"}));
    click(bodyOf("R1"), Qt::ShiftModifier);
    EXPECT_EQ(view.selection(), QStringList{"D1"});
    click(at("A.c25"));
    EXPECT_TRUE(view.selection().isEmpty());
}

TEST_F(MoveGestureTest, ARubberBandSelects) {
    const Rect boards = view.picture().table->boardsMm;
    const Point corner{boards.right() + 3, boards.bottom() + 2};
    drag(at(corner), at("A.g15"));
    EXPECT_TRUE(view.selection().contains("D1"));
    EXPECT_TRUE(view.selection().contains("W2"));
    EXPECT_FALSE(view.selection().contains("R1"));
    key(Qt::Key_Escape);
    EXPECT_TRUE(view.selection().isEmpty());
}

TEST_F(MoveGestureTest, ArrowKeysMoveByOneHole) {
    view.setSelection({"R1"});
    key(Qt::Key_Right);
    EXPECT_EQ(part("R1").leads[0], test::holeAt("A.c9"));
    key(Qt::Key_Up);
    EXPECT_EQ(part("R1").leads[0], test::holeAt("A.b9"));
    EXPECT_EQ(document.undoStack().count(), 2);
}

TEST_F(MoveGestureTest, SeveralThingsMoveTogether) {
    view.setSelection({"R1", "W1"});
    drag(bodyOf("R1"), bodyOf("R1") - columns(2));
    EXPECT_EQ(part("R1").leads[0], test::holeAt("A.c6"));
    EXPECT_EQ(bench().findJumper("W1")->ends[1], JumperEnd(test::holeAt("A.a6")));
    EXPECT_EQ(document.undoStack().count(), 1);
}

TEST_F(MoveGestureTest, AllThatMovesTogetherIsShownWhereItWouldGo) {
    view.setSelection({"R1", "D1"});
    const QPoint from = bodyOf("R1");
    dragAndHold(from, from + columns(1));
    ASSERT_TRUE(marks().group);
    ASSERT_EQ(marks().group->parts.size(), 2U);
    EXPECT_EQ(marks().group->findPart("R1")->leads[0], test::holeAt("A.c9"));
    EXPECT_EQ(marks().targets.size(), 4U);
    const QImage shown = view.viewport()->grab().toImage();
    // Within the same holes nothing is made anew; in other holes it is, and looks otherwise.
    const auto group = marks().group;
    moveTo(from + columns(1) + QPoint(2, 0), Qt::LeftButton);
    EXPECT_EQ(marks().group, group);
    moveTo(from + columns(3), Qt::LeftButton);
    ASSERT_TRUE(marks().group);
    EXPECT_NE(*marks().group, *group);
    EXPECT_NE(view.viewport()->grab().toImage(), shown);
    // Where it can't go, it is shown too, with the reason.
    const int twoColumns = columns(2).x();
    moveTo(from + QPoint(0, twoColumns), Qt::LeftButton);  // two rows down, where e14 is taken
    ASSERT_TRUE(marks().group);
    EXPECT_TRUE(marks().refused);
    EXPECT_FALSE(said().isEmpty());
    release(from + columns(3));
    EXPECT_FALSE(marks().group);
    EXPECT_EQ(part("R1").leads[0], test::holeAt("A.c11"));
}

TEST_F(MoveGestureTest, AnLedTurnsEndForEnd) {
    view.setSelection({"D1"});
    key(Qt::Key_BracketRight);
    EXPECT_EQ(part("D1").leads[0], test::holeAt("A.h19"));
    EXPECT_EQ(part("D1").leads[1], test::holeAt("A.h16"));
    key(Qt::Key_BracketLeft);
    EXPECT_EQ(part("D1").leads[0], test::holeAt("A.h16"));
}

TEST_F(MoveGestureTest, AButtonAstrideTheGapDoesNotTurnAndSaysWhy) {
    view.setSelection({"S1"});
    const auto before = document.bench();
    key(Qt::Key_BracketRight);
    EXPECT_EQ(document.bench(), before);
    EXPECT_EQ(said().toStdString(), refusal(bench(), turned(bench(), part("S1"), 1)).value_or("nothing refused it"));
}

TEST_F(MoveGestureTest, ALeadOfWhatIsSelectedMovesAlone) {
    view.setSelection({"R1"});
    dragAndHold(at("A.c14"), at("A.b13"));
    EXPECT_EQ(marks().targets, std::vector<Hole>{test::holeAt("A.b13")});
    release(at("A.b13"));
    EXPECT_EQ(part("R1").leads[0], test::holeAt("A.c8"));
    EXPECT_EQ(part("R1").leads[1], test::holeAt("A.b13"));
}

TEST_F(MoveGestureTest, ALeadDoesNotStretchOverItsLength) {
    view.setSelection({"R1"});
    const auto before = document.bench();
    dragAndHold(at("A.c14"), at("A.c29"));
    EXPECT_TRUE(marks().refused);
    EXPECT_FALSE(said().isEmpty());
    release(at("A.c29"));
    EXPECT_EQ(document.bench(), before);
}

TEST_F(MoveGestureTest, AnEndOfASelectedJumperMoves) {
    view.setSelection({"W2"});
    drag(at("A.j19"), at("A.i19"));
    EXPECT_EQ(bench().findJumper("W2")->ends[0], JumperEnd(test::holeAt("A.i19")));
    EXPECT_EQ(bench().jumpers.size(), 2U);
}

TEST_F(MoveGestureTest, ASupplysCableGoesToAnotherHoleOrBack) {
    drag(at("A.top+3"), at("A.top+10"));
    EXPECT_EQ(part("PS1").leads[0], test::holeAt("A.top+10"));
    const auto before = document.bench();
    const Rect boards = view.picture().table->boardsMm;
    drag(at("A.top+10"), at(Point{boards.right() + 10, boards.top + 20}));
    EXPECT_EQ(document.bench(), before) << "let go beside the board it goes back";
}

TEST_F(MoveGestureTest, TheSupplysLeverSwitches) {
    const int supply = bench().partIndex("PS1");
    const QPoint lever = at(Point{controlShape(view.picture(), supply).boundingRect().center().x(),
                                  controlShape(view.picture(), supply).boundingRect().center().y()});
    const int on = part("PS1").kind->stateIndex("on");
    click(lever);
    EXPECT_EQ(part("PS1").stateValue(on), 0);
    EXPECT_TRUE(waitForAnswer());
    EXPECT_EQ(view.picture().snapshot->status(), Status::Off);
    click(lever);
    EXPECT_EQ(part("PS1").stateValue(on), 1);
    EXPECT_EQ(document.undoStack().count(), 2);
}

class KnobGestureTest : public Desk {
protected:
    KnobGestureTest() {
        open(test::BenchBuilder(makeNewBench())
                 .part("RV1", "potentiometer", {{"1", "A.g10"}, {"wiper", "A.g12"}, {"2", "A.g14"}})
                 .part("S1", "slide-switch", {{"a", "A.c5"}, {"common", "A.c6"}, {"b", "A.c7"}})
                 .build());
    }
    QPointF control(std::string_view id) const {
        return controlShape(view.picture(), bench().partIndex(id)).boundingRect().center();
    }
    double turn() const { return part("RV1").stateValue(part("RV1").kind->stateIndex("turn")); }
};

TEST_F(KnobGestureTest, AKnobTurnsLiveAndIsOneUndoStep) {
    const QPointF centre = control("RV1");
    const auto around = [&](double degrees) {
        constexpr double kRadiusMm = 1.6;
        const double radians = degrees * 3.14159265358979 / 180;
        return at(Point{centre.x() + kRadiusMm * std::cos(radians), centre.y() + kRadiusMm * std::sin(radians)});
    };
    press(around(0));
    double last = turn();
    for (int degrees = 15; degrees <= 90; degrees += 15) {
        moveTo(around(degrees), Qt::LeftButton);
        EXPECT_GT(turn(), last) << degrees;
        last = turn();
    }
    release(around(90));
    EXPECT_NEAR(turn(), 0.5 + 90.0 / 270, 0.05);
    EXPECT_EQ(document.undoStack().count(), 1);
    document.undoStack().undo();
    EXPECT_DOUBLE_EQ(turn(), 0.5);
}

TEST_F(KnobGestureTest, AWheelOverAKnobTurnsIt) {
    const QPoint where = at(Point{control("RV1").x(), control("RV1").y()});
    const double before = view.pixelsPerMm();
    for (int i = 0; i < 3; ++i) {
        QWheelEvent event(where, view.viewport()->mapToGlobal(where), {}, QPoint(0, 120), Qt::NoButton, Qt::NoModifier,
                          Qt::NoScrollPhase, false);
        QApplication::sendEvent(view.viewport(), &event);
    }
    EXPECT_NEAR(turn(), 0.56, 1e-9);
    EXPECT_EQ(document.undoStack().count(), 1);
    EXPECT_EQ(view.pixelsPerMm(), before);
}

TEST_F(KnobGestureTest, ASlideSwitchGoesToItsOtherPosition) {
    const QPoint blade = at(Point{control("S1").x(), control("S1").y()});
    const int position = part("S1").kind->stateIndex("position");
    const double before = part("S1").stateValue(position);
    click(blade);
    EXPECT_NE(part("S1").stateValue(position), before);
    click(blade);
    EXPECT_EQ(part("S1").stateValue(position), before);
}

}  // namespace
}  // namespace tiepoint::ui
