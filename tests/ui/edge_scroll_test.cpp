// What is dragged over an edge of the view takes the view along, by real mouse events.

#include "ui/view/edge_scroll.h"

#include "desk.h"

namespace tiepoint::ui {
namespace {

class EdgeScrollTest : public Desk {
protected:
    EdgeScrollTest() { open(beacon()); }

    /// A bare place of the board's upper edge.
    QPoint boardEdge() const {
        const Rect frame = bench().boards.front().frameMm();
        return at({frame.left + frame.width * 0.6, frame.top + 1.2});
    }
    QPoint beyondRight() const { return {view.viewport()->width() + 60, view.viewport()->height() / 2}; }
    double leftMm() const { return view.toMm({0, 0}).x; }
    bool waitForScroll(double beyondMm) {
        return QTest::qWaitFor([&] { return leftMm() > beyondMm; }, 3000);
    }
};

TEST_F(EdgeScrollTest, ABoardGoesFartherThanTheWindowShows) {
    const double before = bench().boards.front().frameMm().left, seen = leftMm();
    const double lastSeen = view.toMm({static_cast<double>(view.viewport()->width()), 0}).x;
    dragAndHold(boardEdge(), beyondRight());
    ASSERT_TRUE(waitForScroll(seen + 60));
    EXPECT_TRUE(marks().group) << "it is still carried";
    const QPoint inside = view.viewport()->rect().center();
    moveTo(inside, Qt::LeftButton);
    const double rested = leftMm();
    QTest::qWait(EdgeScroll::kPauseMs + 100);
    EXPECT_EQ(leftMm(), rested) << "away from the edge the view stands still";
    moveTo(beyondRight(), Qt::LeftButton);
    ASSERT_TRUE(waitForScroll(rested + 20));
    release(beyondRight());
    EXPECT_GT(bench().boards.front().frameMm().left, before + 60);
    EXPECT_GT(bench().boards.front().frameMm().right(), lastSeen);
}

TEST_F(EdgeScrollTest, AShortTouchOfTheEdgeMovesNothing) {
    const double seen = leftMm();
    dragAndHold(boardEdge(), beyondRight());
    moveTo(boardEdge(), Qt::LeftButton);
    QTest::qWait(EdgeScroll::kPauseMs + 100);
    EXPECT_EQ(leftMm(), seen);
    release(boardEdge());
}

TEST_F(EdgeScrollTest, EndsWithTheGesture) {
    const double seen = leftMm();
    dragAndHold(boardEdge(), beyondRight());
    ASSERT_TRUE(waitForScroll(seen + 5));
    key(Qt::Key_Escape);
    const double rested = leftMm();
    QTest::qWait(EdgeScroll::kPauseMs + 100);
    EXPECT_EQ(leftMm(), rested);
    release(beyondRight());
}

TEST_F(EdgeScrollTest, AJumperAndABandGoOnAsWell) {
    for (const QPoint from : {at("A.a25"), at({-20, -3})}) {
        const double seen = leftMm();
        dragAndHold(from, beyondRight());
        EXPECT_TRUE(waitForScroll(seen + 10));
        key(Qt::Key_Escape);
        release(beyondRight());
        view.fitBench();
    }
}

TEST_F(EdgeScrollTest, AButtonThatIsHeldAndAPannedBenchDoNot) {
    press(bodyOf("S1"));
    moveTo(beyondRight(), Qt::LeftButton);
    const double seen = leftMm();
    QTest::qWait(EdgeScroll::kPauseMs + 100);
    EXPECT_EQ(leftMm(), seen);
    release(beyondRight());
    dragAndHold(boardEdge(), beyondRight(), Qt::MiddleButton);
    const double panned = leftMm();
    QTest::qWait(EdgeScroll::kPauseMs + 100);
    EXPECT_EQ(leftMm(), panned);
    release(beyondRight(), Qt::MiddleButton);
}

}  // namespace
}  // namespace tiepoint::ui
