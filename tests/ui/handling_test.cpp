// What a hand finds at once, without selecting first: ends of jumpers, legs under a dome, plugs; and what it doesn't catch by mistake.

#include "desk.h"
#include "ui/paint/bench_painter.h"
#include "ui/scene/bench_scene.h"

namespace tiepoint::ui {
namespace {

class HandlingTest : public Desk {
protected:
    const PartPlace& place(std::string_view id) const {
        return view.picture().table->parts[static_cast<std::size_t>(bench().partIndex(id))];
    }
    const Jumper& jumper(std::string_view id) const {
        const Jumper* found = bench().findJumper(id);
        if (!found) test::slip("the jumper", id);
        return *found;
    }
    Under under(Point mm) const { return view.benchScene().under(mm); }
    Point mm(std::string_view hole) const { return *holeMm(bench(), test::holeAt(hole)); }
};

TEST_F(HandlingTest, AnEndOfAJumperMovesWithoutBeingSelected) {
    open(beacon());
    drag(at("A.j19"), at("A.i19"));
    EXPECT_EQ(jumper("W2").ends[0], JumperEnd(test::holeAt("A.i19")));
    EXPECT_EQ(bench().jumpers.size(), 2U) << "no other jumper was drawn";
    EXPECT_EQ(document.undoStack().count(), 1);
    click(at("A.i19"));
    EXPECT_EQ(view.selection(), QStringList{"W2"}) << "a click selects it";
}

TEST_F(HandlingTest, AnEndLedToATakenHoleTakesTheSameMetal) {
    open(beacon());
    dragAndHold(at("A.j19"), at("A.c14"));
    EXPECT_TRUE(said().contains("c14 is taken; b14 is the same metal")) << said().toStdString();
    release(at("A.c14"));
    EXPECT_EQ(jumper("W2").ends[0], JumperEnd(test::holeAt("A.b14")));
}

TEST_F(HandlingTest, ALegUnderTheDomeMovesAtOnceAndTheMiddleMovesTheLed) {
    open(test::BenchBuilder().board("A", "half").part("D1", "led", {{"anode", "A.h16"}, {"cathode", "A.h17"}}).build());
    // A little outside of the hole: still under the dome.
    const Point outside = mm("A.h16") + Point{-0.5, 0};
    ASSERT_FALSE(under(outside).body.empty());
    drag(at(outside), at("A.h14"));
    EXPECT_EQ(part("D1").leads[0], test::holeAt("A.h14"));
    EXPECT_EQ(part("D1").leads[1], test::holeAt("A.h17"));
    document.undoStack().undo();
    EXPECT_FALSE(under(place("D1").pose.centre).grip) << "the middle is the body's";
    const QPoint body = bodyOf("D1");
    drag(body, body + (at("A.h20") - at("A.h17")));
    EXPECT_EQ(part("D1").leads[0], test::holeAt("A.h19"));
    EXPECT_EQ(part("D1").leads[1], test::holeAt("A.h20"));
}

TEST_F(HandlingTest, ALegOfALyingPartMovesAtOnce) {
    open(beacon());
    drag(at("A.c14"), at("A.b13"));
    EXPECT_EQ(part("R1").leads[0], test::holeAt("A.c8"));
    EXPECT_EQ(part("R1").leads[1], test::holeAt("A.b13"));
}

class MeterHandlingTest : public HandlingTest {
protected:
    MeterHandlingTest() {
        open(test::BenchBuilder(beacon()).part("M1", "multimeter", {{"+", "A.b22"}, {"com", "A.i25"}}).build());
    }
    /// A place on a lead, so far from its tip.
    Point onLead(int lead, double awayMm) const {
        const WireCurve& cable = place("M1").cablesMm[static_cast<std::size_t>(lead)];
        const Point tip = place("M1").leadsMm[static_cast<std::size_t>(lead)];
        Point at = tip;
        for (double t = 1; t > 0 && distance(at, tip) < awayMm; t -= 0.002) at = cable.at(t);
        return at;
    }
};

TEST_F(MeterHandlingTest, ALeadIsMovedByItsColouredHandle) {
    drag(at(onLead(0, 7)), at("A.b20"));
    EXPECT_EQ(part("M1").leads[0], test::holeAt("A.b20"));
    EXPECT_EQ(part("M1").leads[1], test::holeAt("A.i25"));
}

TEST_F(MeterHandlingTest, ALeadIsMovedByItsPlugAtTheCase) {
    drag(at(place("M1").exitsMm[1]), at("A.i22"));
    EXPECT_EQ(part("M1").leads[1], test::holeAt("A.i22"));
    EXPECT_EQ(part("M1").leads[0], test::holeAt("A.b22")) << "not the lead whose tip is nearer";
    drag(at(place("PS1").exitsMm[0]), at("A.top+12"));
    EXPECT_EQ(part("PS1").leads[0], test::holeAt("A.top+12"));
}

TEST_F(MeterHandlingTest, WhereItsHoleIsTakenALeadTakesTheSameMetal) {
    dragAndHold(at("A.b22"), at("A.c14"));
    EXPECT_FALSE(marks().refused);
    EXPECT_EQ(said(), "c14 is taken; b14 is the same metal");
    EXPECT_EQ(marks().targets, std::vector<Hole>{test::holeAt("A.b14")});
    release(at("A.c14"));
    EXPECT_EQ(part("M1").leads[0], test::holeAt("A.b14"));
}

class ArcTest : public HandlingTest {
protected:
    ArcTest() { open(test::BenchBuilder().board("A", "half").jumper("W1", "A.c5", "A.c25").build()); }
    /// Free holes over which the arc passes.
    std::vector<Hole> passed() const {
        const QPainterPath shape = jumperShape(view.picture(), 0);
        std::vector<Hole> holes;
        for (int row = 0; row < kRowCount; ++row) {
            for (int column = 7; column <= 23; ++column) {
                const Hole hole{"A", static_cast<Line>(row), column};
                const Point at = *holeMm(bench(), hole);
                if (shape.contains(QPointF(at.x, at.y))) holes.push_back(hole);
            }
        }
        return holes;
    }
    /// The middle of the arc, and the same between its holes.
    Point middle() const {
        const QPointF at = jumperLine(view.picture(), 0).pointAtPercent(0.5);
        return {at.x(), at.y()};
    }
};

TEST_F(ArcTest, LeavesTheHolesUnderItToTheHand) {
    const auto holes = passed();
    ASSERT_FALSE(holes.empty());
    for (const Hole& hole : holes) {
        const Under found = under(*holeMm(bench(), hole));
        EXPECT_EQ(found.wire, "") << toString(hole);
        EXPECT_EQ(found.hole, hole);
        EXPECT_EQ(found.net, view.picture().layout->netOfHole(view.picture().layout->holeIndex(hole)));
    }
    const QPoint from = at(toString(holes.front()));
    drag(from, at("A.j15"));
    ASSERT_EQ(bench().jumpers.size(), 2U);
    EXPECT_EQ(bench().jumpers.back().ends[0], JumperEnd(holes.front()));
    EXPECT_EQ(jumper("W1").ends[0], JumperEnd(test::holeAt("A.c5")));
}

TEST_F(ArcTest, IsStillCaughtBetweenTheHoles) {
    int caught = 0;
    for (int step = 10; step <= 90; ++step) {
        const QPointF on = jumperLine(view.picture(), 0).pointAtPercent(step / 100.0);
        const Under found = under({on.x(), on.y()});
        caught += found.wire == "W1";
    }
    EXPECT_GT(caught, 40) << "of 81 places on it";
}

TEST_F(ArcTest, ABandThatOnlyCrossesItLeavesIt) {
    const Rect board = bench().boards.front().frameMm();
    const Point through = middle();
    drag(at(Point{through.x - 8, board.top - 4}), at(Point{through.x + 8, board.bottom() + 3}));
    EXPECT_TRUE(view.selection().isEmpty()) << view.selection().join(',').toStdString();
    drag(at(Point{board.left - 4, board.top - 4}), at(mm("A.d7")));
    EXPECT_EQ(view.selection(), QStringList{"W1"}) << "one of its ends lies in the band";
}

TEST_F(ArcTest, AFlatJumperCoversItsHoles) {
    open(test::BenchBuilder().board("A", "half").jumper("W1", "A.c5", "A.c25").build());
    Bench flat = bench();
    flat.jumpers[0].flat = true;
    open(flat);
    EXPECT_EQ(under(mm("A.c15")).wire, "W1");
}

class BoardsTest : public HandlingTest {
protected:
    BoardsTest() {
        open(test::BenchBuilder()
                 .board("A", "half")
                 .board("B", "half", 0, 24)
                 .board("M", "mini", 36, 0)
                 .part("R1", "resistor", {{"1", "A.c8"}, {"2", "A.c14"}})
                 .part("D1", "led", {{"anode", "A.e16"}, {"cathode", "A.f16"}})
                 .jumper("W1", "A.top+7", "A.a8")
                 .jumper("W2", "A.b14", "A.b16")
                 .build());
    }
    void dragTo(const char* from, const char* to) {
        const QPoint body = bodyOf("R1");
        drag(body, body + at(to) - at(from));
    }
};

TEST_F(BoardsTest, AGroupGoesToAnotherBoardByOneDrag) {
    view.setSelection({"R1", "D1", "W1", "W2"});
    dragTo("A.c8", "B.c10");
    EXPECT_EQ(part("R1").leads[0], test::holeAt("B.c10")) << said().toStdString();
    EXPECT_EQ(part("R1").leads[1], test::holeAt("B.c16"));
    EXPECT_EQ(part("D1").leads[0], test::holeAt("B.e18"));
    EXPECT_EQ(part("D1").leads[1], test::holeAt("B.f18"));
    EXPECT_EQ(jumper("W1").ends[0], JumperEnd(test::holeAt("B.top+9")));
    EXPECT_EQ(jumper("W1").ends[1], JumperEnd(test::holeAt("B.a10")));
    EXPECT_EQ(jumper("W2").ends[1], JumperEnd(test::holeAt("B.b18")));
    EXPECT_EQ(document.undoStack().count(), 1);
    document.undoStack().undo();
    EXPECT_EQ(jumper("W1").ends[0], JumperEnd(test::holeAt("A.top+7")));
}

TEST_F(BoardsTest, WhereItDoesNotFitTheReasonStands) {
    view.setSelection({"R1", "D1", "W1", "W2"});
    const auto before = document.bench();
    dragTo("A.c8", "M.c2");
    EXPECT_EQ(said(), "W1 needs a rail, and board M has none");
    EXPECT_EQ(document.bench(), before);
}

TEST_F(BoardsTest, AJumperAloneGoesToAnotherBoard) {
    const QPointF on = jumperLine(view.picture(), 1).pointAtPercent(0.5);
    QPoint from = at(Point{on.x(), on.y()});
    for (int i = 0; i < 40 && under(view.toMm(from)).wire != "W2"; ++i) from += QPoint(1, 0);
    ASSERT_EQ(under(view.toMm(from)).wire, "W2");
    drag(from, from + at("B.b14") - at("A.b14"));
    EXPECT_EQ(jumper("W2").ends[0], JumperEnd(test::holeAt("B.b14"))) << said().toStdString();
    EXPECT_EQ(jumper("W2").ends[1], JumperEnd(test::holeAt("B.b16")));
}

/// A gesture under way while the bench is changed by another hand.
class GiveUpTest : public HandlingTest {
protected:
    GiveUpTest() {
        open(beacon());
        view.setSelection({"R1"});
        key(Qt::Key_Down);  // something that can be undone
    }
    void expectLetGo() const {
        EXPECT_FALSE(view.isGesturing());
        EXPECT_FALSE(marks().carried);
        EXPECT_FALSE(marks().group);
        EXPECT_FALSE(marks().drawn);
        EXPECT_FALSE(marks().drawnFree);
        EXPECT_FALSE(marks().band);
        EXPECT_TRUE(marks().targets.empty());
    }
};

TEST_F(GiveUpTest, AMoveEndsWhenItIsUndoneUnderTheHand) {
    dragAndHold(bodyOf("R1"), at("A.b14"));
    ASSERT_TRUE(view.isGesturing());
    document.undoStack().undo();
    expectLetGo();
    EXPECT_EQ(said(), "the bench has changed: your hand lets go");
    const auto before = document.bench();
    moveTo(at("A.b20"), Qt::LeftButton);
    release(at("A.b20"));
    EXPECT_EQ(document.bench(), before);
    EXPECT_EQ(part("R1").leads[0], test::holeAt("A.c8"));
    drag(bodyOf("R1"), bodyOf("R1") + at("A.c10") - at("A.c8"));
    EXPECT_EQ(part("R1").leads[0], test::holeAt("A.c10")) << "the next one begins as ever";
}

TEST_F(GiveUpTest, AGroupAndAnEndAndABandToo) {
    view.setSelection({"R1", "W1"});
    dragAndHold(bodyOf("R1"), at("A.b14"));
    ASSERT_TRUE(marks().group);
    document.undoStack().undo();
    expectLetGo();
    release(at("A.b14"));
    document.undoStack().redo();
    dragAndHold(at("A.j19"), at("A.i22"));
    ASSERT_TRUE(marks().drawn);
    document.undoStack().undo();
    expectLetGo();
    release(at("A.i22"));
    EXPECT_EQ(jumper("W2").ends[0], JumperEnd(test::holeAt("A.j19")));
    const Rect boards = view.picture().table->boardsMm;
    dragAndHold(at(Point{boards.right() + 3, boards.bottom() + 2}), at("A.g15"));
    ASSERT_TRUE(marks().band);
    document.undoStack().redo();
    expectLetGo();
    release(at("A.g15"));
}

TEST_F(GiveUpTest, WhatIsHeldIsGoneWithAnotherFile) {
    dragAndHold(bodyOf("D1"), at("A.h22"));
    document.reset(makeNewBench(), {});
    expectLetGo();
    moveTo(at("A.h24"), Qt::LeftButton);
    release(at("A.h24"));
    EXPECT_FALSE(bench().findPart("D1"));
}

TEST_F(GiveUpTest, AButtonIsLetGoOf) {
    press(bodyOf("S1"));
    ASSERT_TRUE(live.isHeld("S1"));
    document.undoStack().undo();
    EXPECT_FALSE(live.isHeld("S1"));
    release(bodyOf("S1"));
    EXPECT_FALSE(live.isHeld("S1"));
}

}  // namespace
}  // namespace tiepoint::ui
