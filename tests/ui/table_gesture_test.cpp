// Boards and boxes on the table, moved by real mouse and keys.

#include "core/bench/cable_routes.h"
#include "core/bench/frame_grid.h"
#include "core/bench/jumper_routes.h"
#include "core/edit/boards.h"
#include "desk.h"

namespace tiepoint::ui {
namespace {

class TableGestureTest : public Desk {
protected:
    static Bench twoBoards() {
        const double below = findBoardKind("half")->heightMm / kPitchMm;
        return test::BenchBuilder(beacon())
            .board("B", "half", 0, below)
            .part("R2", "resistor", {{"1", "B.a5"}, {"2", "B.a10"}}, {{"resistance", 220}})
            .jumper("A.j25", "B.b5")
            .build();
    }
    const Board& board(std::string_view id) const { return *bench().findBoard(id); }
    /// The upper edge of a board, clear of holes.
    QPoint edgeOf(std::string_view id) const {
        const Rect frame = board(id).frameMm();
        return at({frame.left + frame.width * 0.6, frame.top + 1.2});
    }
    QPoint gapOf(std::string_view id) const {
        const Rect frame = board(id).frameMm();
        return at({frame.left + frame.width * 0.9, frame.top + frame.height / 2});
    }
    Rect frameOfBox(std::string_view id) const {
        return frameOf(view.picture().table->parts[static_cast<std::size_t>(bench().partIndex(id))]);
    }
    /// A bare place of a bench supply's casing.
    QPoint casingOf(std::string_view id) const {
        const Rect frame = frameOfBox(id);
        return at({frame.left + frame.width / 2, frame.top + 21.5});
    }
    QPoint by(double xMm, double yMm) const {
        return {static_cast<int>(xMm * view.pixelsPerMm()), static_cast<int>(yMm * view.pixelsPerMm())};
    }
    void expectFitted() const {
        const Rect all = view.picture().table->allMm;
        for (const Point corner : {Point{all.left, all.top}, Point{all.right(), all.bottom()}})
            EXPECT_TRUE(view.viewport()->rect().contains(at(corner))) << corner.x << " " << corner.y;
    }
};

TEST_F(TableGestureTest, ABoardIsDraggedByItsEdgeAndDocksToAnySide) {
    open(twoBoards());
    for (const Side side : kSides) {
        const Point to = dockedAt(board("A"), side, *board("B").kind) * kPitchMm;
        const Point away = to - board("B").cornerMm() + Point{1.5, -1.5};
        drag(edgeOf("B"), edgeOf("B") + by(away.x, away.y));
        EXPECT_NEAR(board("B").cornerMm().x, to.x, 1e-6) << static_cast<int>(side);
        EXPECT_NEAR(board("B").cornerMm().y, to.y, 1e-6) << static_cast<int>(side);
        expectFitted();
    }
    EXPECT_EQ(toString(*part("R2").leads[0]), "B.a5") << "what is on it goes along";
    while (document.undoStack().canUndo()) document.undoStack().undo();
    EXPECT_EQ(bench(), twoBoards());
}

TEST_F(TableGestureTest, TheGapIsAHandleAndHolesAreNot) {
    open(twoBoards());
    dragAndHold(gapOf("B"), gapOf("B") + by(100, 0));
    EXPECT_EQ(marks().groupBoard, "B");
    EXPECT_TRUE(marks().group) << "the board in the hand is seen";
    key(Qt::Key_Escape);
    EXPECT_FALSE(marks().group);
    EXPECT_EQ(bench(), twoBoards()) << "Escape leaves no trace";
    release(gapOf("B") + by(100, 0));
    const auto before = bench().jumpers.size();
    for (const char* hole : {"B.a20", "B.e20", "B.f20", "B.top+1", "B.bottom-20", "B.a30"}) {
        dragAndHold(at(hole), at("B.h25"));
        EXPECT_TRUE(marks().drawn) << hole << " begins a jumper";
        key(Qt::Key_Escape);
        release(at("B.h25"));
    }
    EXPECT_EQ(bench().jumpers.size(), before);
    const Point between = *holeMm(bench(), test::holeAt("B.c20")) + Point{1.27, 1.27};
    dragAndHold(at(between), at("B.h25"));
    EXPECT_TRUE(marks().groupBoard.empty()) << "between four holes a shaky hand means a hole";
    key(Qt::Key_Escape);
}

TEST_F(TableGestureTest, ABoardOnAnotherIsRefusedAtOnceAndAtItsPlace) {
    open(twoBoards());
    const auto before = document.bench();
    const QPoint to = edgeOf("B") - by(0, 20);
    dragAndHold(edgeOf("B"), to);
    EXPECT_TRUE(marks().refused);
    EXPECT_EQ(said(), "board B would lie on board A");
    release(to);
    EXPECT_EQ(document.bench(), before);
    EXPECT_EQ(said(), "board B would lie on board A") << "and it stays readable";
}

TEST_F(TableGestureTest, ABoardIsCarriedByKeys) {
    open(twoBoards());
    view.beginMovingBoard("B");
    EXPECT_TRUE(view.isGesturing());
    EXPECT_FALSE(said().isEmpty()) << "how is said";
    key(Qt::Key_Down, Qt::ControlModifier);
    key(Qt::Key_Down, Qt::ControlModifier);
    key(Qt::Key_Right, Qt::ControlModifier);
    const double top = board("B").atY;
    key(Qt::Key_Return);
    EXPECT_FALSE(view.isGesturing());
    EXPECT_NEAR(board("B").atY, std::round(top + 10), 0.51);
    EXPECT_EQ(board("B").atX, 5);
    view.beginMovingBoard("B");
    for (int i = 0; i < 4; ++i) key(Qt::Key_Up, Qt::ControlModifier);
    const auto before = document.bench();
    key(Qt::Key_Return);
    EXPECT_TRUE(view.isGesturing()) << "refused, it stays in the hand";
    EXPECT_EQ(said(), "board B would lie on board A");
    EXPECT_EQ(document.bench(), before);
    key(Qt::Key_Escape);
    EXPECT_FALSE(view.isGesturing());
}

TEST_F(TableGestureTest, ASupplyIsDraggedByItsCasingToTheOtherSide) {
    open(beacon());
    const Rect boards = view.picture().table->boardsMm;
    const double right = boards.right() + 20 - frameOfBox("PS1").left;
    drag(casingOf("PS1"), casingOf("PS1") + by(right, 4));
    const Rect frame = frameOfBox("PS1");
    EXPECT_GT(frame.left, boards.right());
    ASSERT_TRUE(part("PS1").at);
    const PartPlace& place = view.picture().table->parts[0];
    EXPECT_TRUE(place.mirrored) << "its sockets look at the board";
    expectFitted();
    ASSERT_TRUE(waitForAnswer());
    click(casingOf("PS1"));
    EXPECT_EQ(view.selection(), QStringList{"PS1"}) << "a click selects it";
    // The lever is mirrored too and works where it is seen.
    const QPointF nut(frame.left + 30 - 9.6, frame.top + 34.2);
    click(at(Point{nut.x(), nut.y()}));
    EXPECT_EQ(part("PS1").stateValue(0), 0);
    document.undoStack().undo();
    document.undoStack().undo();
    EXPECT_EQ(bench(), beacon());
}

TEST_F(TableGestureTest, ABoxOnABoardIsRefusedAndStays) {
    open(beacon());
    const auto before = document.bench();
    drag(casingOf("PS1"), at("A.e15"));
    EXPECT_EQ(document.bench(), before);
    EXPECT_EQ(said(), "PS1 would stand on board A");
}

TEST_F(TableGestureTest, ASelectedBoxIsMovedByArrows) {
    open(beacon());
    view.setSelection({"PS1"});
    const Rect before = frameOfBox("PS1");
    key(Qt::Key_Up);
    key(Qt::Key_Left);
    EXPECT_NEAR(frameOfBox("PS1").top, before.top - kPitchMm, kPitchMm / 2);
    EXPECT_NEAR(frameOfBox("PS1").left, before.left - kPitchMm, kPitchMm / 2);
    for (int i = 0; i < 30 && said().isEmpty(); ++i) key(Qt::Key_Right);
    EXPECT_EQ(said(), "PS1 would stand on board A");
    EXPECT_FALSE(overlap(frameOfBox("PS1"), board("A").frameMm()));
}

TEST_F(TableGestureTest, ABoardAddedFarOffIsShown) {
    open(beacon());
    view.zoomAt(QPointF(at("A.a1")), 4);
    QTest::qWait(120);
    document.push(dockBoardEdit(bench(), *findBoardKind("full")));
    expectFitted();
    document.undoStack().undo();
    expectFitted();
}

TEST_F(TableGestureTest, NothingMovesOnTheUnderside) {
    open(twoBoards());
    Views views = view.views();
    views.turned = true;
    view.setViews(views);
    const auto before = document.bench();
    const Rect frame = board("B").frameMm();
    const QPoint edge = at(view.picture().table->seen({frame.left + frame.width * 0.6, frame.bottom() - 1}));
    drag(edge, edge + by(0, 30));
    EXPECT_EQ(document.bench(), before);
}

TEST_F(TableGestureTest, AReasonIsSeenWhereverThePointerIs) {
    open(twoBoards());
    const QPoint far = edgeOf("B") - by(0, 20) - QPoint(3000, 0);
    dragAndHold(edgeOf("B"), far);
    moveTo(edgeOf("B") - by(0, 25), Qt::LeftButton);
    ASSERT_TRUE(marks().refused);
    EXPECT_TRUE(view.viewport()->rect().contains(at(marks().sayAt)));
    key(Qt::Key_Escape);
    dragAndHold(edgeOf("B"), far);
    EXPECT_TRUE(view.viewport()->rect().contains(at(marks().sayAt)));
    key(Qt::Key_Escape);
}

/// Where two boards meet, the underside hides what lies on top as everywhere else.
TEST_F(TableGestureTest, DockedBoardsHideWiresOnTheUnderside) {
    open(twoBoards());
    const int index = static_cast<int>(bench().jumpers.size()) - 1;
    const auto redness = [&] {
        const Picture& picture = view.picture();
        const auto& ends = bench().jumpers[static_cast<std::size_t>(index)].ends;
        const Point a = endMm(bench(), *picture.table, ends[0]), b = endMm(bench(), *picture.table, ends[1]);
        const double seam = board("B").frameMm().top;
        double t = 0;
        while (t < 1 && arcPoint(a, b, picture.table->jumperArcs[static_cast<std::size_t>(index)], t).y < seam)
            t += 0.01;
        const QPoint there = at(arcPoint(a, b, picture.table->jumperArcs[static_cast<std::size_t>(index)], t));
        const QColor colour = view.viewport()->grab().toImage().pixelColor(there);
        return colour.red() - colour.blue();
    };
    EXPECT_GT(redness(), 80) << "a red wire over the seam";
    Views views = view.views();
    views.turned = true;
    view.setViews(views);
    EXPECT_LT(redness(), 50) << "from below it is behind the boards";
}

}  // namespace
}  // namespace tiepoint::ui
