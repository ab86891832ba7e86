// Jumpers drawn with the mouse, as gate 3 of the work asks.

#include "desk.h"

namespace tiepoint::ui {
namespace {

class JumperGestureTest : public Desk {};

int colour(const char* name) { return findJumperColour(name); }

TEST_F(JumperGestureTest, IsDrawnFromHoleToHole) {
    drag(at("A.c5"), at("A.h12"));
    ASSERT_EQ(bench().jumpers.size(), 1U);
    const Jumper& jumper = bench().jumpers.front();
    EXPECT_EQ(jumper.ends[0], JumperEnd(test::holeAt("A.c5")));
    EXPECT_EQ(jumper.ends[1], JumperEnd(test::holeAt("A.h12")));
    EXPECT_EQ(document.undoStack().count(), 1);
    document.undoStack().undo();
    EXPECT_TRUE(bench().jumpers.empty());
    document.undoStack().redo();
    EXPECT_EQ(bench().jumpers.size(), 1U);
}

TEST_F(JumperGestureTest, ShowsItsLengthTargetsAndNetsWhileDrawn) {
    dragAndHold(at("A.c5"), at("A.c15"));
    // Ten pitches lie 25.4 mm apart; the wire is cut longer, for its arc and the 6 mm in each hole.
    const double length =
        jumperLengthMm(*holeMm(bench(), test::holeAt("A.c5")), *holeMm(bench(), test::holeAt("A.c15")));
    EXPECT_TRUE(said().startsWith(QString::number(std::lround(length)) + " mm")) << said().toStdString();
    EXPECT_EQ(marks().targets, (std::vector<Hole>{test::holeAt("A.c5"), test::holeAt("A.c15")}));
    ASSERT_TRUE(marks().drawn);
    EXPECT_FALSE(marks().refused);
    EXPECT_TRUE(bench().jumpers.empty()) << "nothing changes before the hand lets go";
    release(at("A.c15"));
    EXPECT_FALSE(marks().drawn);
    EXPECT_TRUE(said().isEmpty());
}

TEST_F(JumperGestureTest, TakesItsColourFromTheRail) {
    const struct {
        const char *from, *to, *colour;
    } kCases[] = {
        {"A.top+8", "A.a8", "red"},
        {"A.a10", "A.bottom+10", "red"},
        {"A.top-9", "A.b9", "black"},
        {"A.j20", "A.bottom-18", "black"},
    };
    for (const auto& [from, to, name] : kCases) {
        drag(at(from), at(to));
        EXPECT_EQ(bench().jumpers.back().colour, colour(name)) << from << " to " << to;
    }
    drag(at("A.c25"), at("A.h25"));
    const int first = bench().jumpers.back().colour;
    drag(at("A.c26"), at("A.h26"));
    const int second = bench().jumpers.back().colour;
    EXPECT_NE(first, second) << "jumpers between columns differ from each other";
    for (const int other : {first, second}) {
        EXPECT_NE(other, colour("red"));
        EXPECT_NE(other, colour("black"));
    }
}

TEST_F(JumperGestureTest, EndsBesideATakenHoleAndSaysSo) {
    open(beacon());
    dragAndHold(at("A.a25"), at("A.c14"));
    EXPECT_TRUE(said().contains("c14 is taken; b14 is the same metal")) << said().toStdString();
    release(at("A.c14"));
    EXPECT_EQ(bench().jumpers.back().ends[1], JumperEnd(test::holeAt("A.b14")));
}

TEST_F(JumperGestureTest, StartsFromABareLead) {
    open(beacon());
    // Between the resistor's body and c8 there is nothing but wire.
    const Point between{(holeMm(bench(), test::holeAt("A.c8"))->x * 3 + holeMm(bench(), test::holeAt("A.c14"))->x) / 4,
                        holeMm(bench(), test::holeAt("A.c8"))->y};
    drag(at(between), at("A.a27"));
    ASSERT_EQ(bench().jumpers.size(), 3U);
    EXPECT_EQ(bench().jumpers.back().ends[0], JumperEnd(test::holeAt("A.b8")));
}

TEST_F(JumperGestureTest, StartsFromASocket) {
    Bench bench = makeNewBench();
    bench.parts.front() = makePart(*findKind("usb-supply"), "PS1");
    open(bench);
    const Point socket =
        view.picture().table->parts.front().leadsMm[static_cast<std::size_t>(part("PS1").kind->leadIndex("5V"))];
    drag(at(socket), at("A.top+4"));
    ASSERT_EQ(document.bench()->jumpers.size(), 1U);
    const auto* end = std::get_if<Socket>(&document.bench()->jumpers.front().ends[0]);
    ASSERT_TRUE(end);
    EXPECT_EQ(end->part, "PS1");
    EXPECT_EQ(document.bench()->jumpers.front().colour, colour("red"));
}

TEST_F(JumperGestureTest, LetGoOffTheBoardItIsGone) {
    const Rect boards = view.picture().table->boardsMm;
    dragAndHold(at("A.c5"), at(Point{boards.right() + 8, boards.top + 5}));
    EXPECT_TRUE(marks().refused);
    EXPECT_TRUE(marks().drawnFree);
    release(at(Point{boards.right() + 8, boards.top + 5}));
    EXPECT_TRUE(bench().jumpers.empty());
    EXPECT_FALSE(said().isEmpty()) << "it says why";
    EXPECT_FALSE(document.undoStack().canUndo());
}

TEST_F(JumperGestureTest, ToItsOwnHoleIsRefusedInWords) {
    press(at("A.c5"));
    moveTo(at("A.c9"), Qt::LeftButton);
    moveTo(at("A.c5"), Qt::LeftButton);
    EXPECT_TRUE(marks().refused);
    release(at("A.c5"));
    EXPECT_TRUE(bench().jumpers.empty());
}

TEST_F(JumperGestureTest, EscapeLetsGo) {
    dragAndHold(at("A.c5"), at("A.c15"));
    key(Qt::Key_Escape);
    EXPECT_FALSE(view.isGesturing());
    EXPECT_FALSE(marks().drawn);
    release(at("A.c15"));
    EXPECT_TRUE(bench().jumpers.empty());
}

TEST_F(JumperGestureTest, OutOfTheTrayItTakesTwoClicks) {
    view.beginPlacing("jumper", "green", view.viewport()->mapToGlobal(at("A.c5")));
    click(at("A.c5"));
    EXPECT_TRUE(view.isGesturing()) << "the other end is still in the hand";
    moveTo(at("A.c20"));
    ASSERT_TRUE(marks().drawn);
    click(at("A.c20"));
    EXPECT_FALSE(view.isGesturing());
    ASSERT_EQ(bench().jumpers.size(), 1U);
    EXPECT_EQ(bench().jumpers.front().colour, colour("green"));
    drag(at("A.d6"), at("A.d12"));
    EXPECT_EQ(bench().jumpers.back().colour, colour("green")) << "the tray's colour stays chosen";
}

}  // namespace
}  // namespace tiepoint::ui
