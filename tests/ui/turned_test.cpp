// The boards turned over: key, hit testing, presses, and what can't be done from below.

#include "desk.h"
#include "ui/paint/board_back.h"
#include "window_bench.h"

#include <cmath>

namespace tiepoint::ui {
namespace {

class Turned : public Desk {
protected:
    void turn(bool turned) {
        Views views = view.views();
        views.turned = turned;
        view.setViews(views);
    }
    QPoint seen(std::string_view hole) const { return at(view.picture().seenAt(test::holeAt(hole))); }
};

TEST_F(Turned, HolesAreFoundWhereTheyAreSeen) {
    open(beacon());
    turn(true);
    EXPECT_LT(seen("A.d20").x(), seen("A.d10").x()) << "columns run from right to left";
    moveTo(seen("A.d16"));
    const Layout& layout = *view.picture().layout;
    EXPECT_EQ(marks().hoverNet, layout.netOfHole(layout.holeIndex(test::holeAt("A.e16"))));
    moveTo(bodyOf("R1"));
    EXPECT_EQ(view.hoveredPart(), "R1");
    turn(false);
    moveTo(at("A.d16"));
    EXPECT_EQ(marks().hoverNet, layout.netOfHole(layout.holeIndex(test::holeAt("A.e16"))));
}

TEST_F(Turned, AClipBeforeAPartLightsItsNet) {
    open(beacon());
    moveTo(at("A.c10"));
    EXPECT_EQ(marks().hoverNet, -1) << "R1 lies over it";
    turn(true);
    moveTo(seen("A.c10"));
    EXPECT_EQ(marks().hoverNet,
              view.picture().layout->netOfHole(view.picture().layout->holeIndex(test::holeAt("A.c10"))))
        << "seen from below R1 lies behind it";
    EXPECT_EQ(view.hoveredPart(), "R1");
}

TEST_F(Turned, AButtonIsPressedThroughTheBoard) {
    open(beacon());
    turn(true);
    const QImage before = view.viewport()->grab().toImage();
    press(bodyOf("S1"));
    ASSERT_TRUE(waitForAnswer());
    EXPECT_TRUE(live.isHeld("S1"));
    EXPECT_GT(view.picture().snapshot->largestCurrentAmpere, 5e-3);
    EXPECT_NE(view.viewport()->grab().toImage(), before) << "current shows in the clips";
    release(bodyOf("S1"));
    ASSERT_TRUE(waitForAnswer());
    EXPECT_FALSE(live.isHeld("S1"));
}

TEST_F(Turned, NothingMovesFromBelowAndTheReasonShows) {
    open(beacon());
    turn(true);
    const auto before = document.bench();
    dragAndHold(bodyOf("R1"), seen("A.c25"));
    EXPECT_TRUE(said().contains("turns the board back")) << said().toStdString();
    release(seen("A.c25"));
    drag(seen("A.b3"), seen("A.b9"));
    EXPECT_EQ(document.bench(), before);
    click(bodyOf("D1"));
    EXPECT_EQ(view.selection(), QStringList{"D1"});
}

TEST_F(Turned, TakingAPartFromTheTrayTurnsTheBoardBack) {
    open(beacon());
    turn(true);
    view.beginPlacing("resistor", "", view.viewport()->mapToGlobal(at({40, 20})));
    EXPECT_FALSE(view.views().turned);
    key(Qt::Key_Escape);
}

TEST_F(Turned, ArrowKeysMoveAsTheEyeSeesIt) {
    open(beacon());
    turn(true);
    view.setSelection({"R1"});
    key(Qt::Key_Right);
    EXPECT_EQ(*part("R1").leads[0], test::holeAt("A.c7")) << "right, from below, is towards column 1";
}

TEST_F(Turned, BoardsStayInPlaceAndTheSignIsInSight) {
    open(beacon());
    const QRectF upright(QPointF(0, 0), QSizeF(bench().boards[0].frameMm().width, bench().boards[0].frameMm().height));
    turn(true);
    ASSERT_EQ(seenBoards(view.picture()).size(), 1u);
    EXPECT_NEAR(seenBoards(view.picture())[0].left(), upright.left(), 1e-9);
    const QRectF inSight =
        QRectF(view.toMm({0, 0}).x, view.toMm({0, 0}).y, view.viewport()->width() / view.pixelsPerMm(),
               view.viewport()->height() / view.pixelsPerMm());
    constexpr double kSignMm = 6;
    EXPECT_GT(inSight.bottom(), seenBoards(view.picture())[0].bottom() + kSignMm);
}

TEST(TurnedWindow, KeyFiveTurnsAndTheMenuAndTheLegendFollow) {
    WindowBench bench;
    ASSERT_TRUE(bench.waitForAnswer());
    QTest::keyClick(&bench.window().view(), Qt::Key_5);
    EXPECT_TRUE(bench.window().view().views().turned);
    EXPECT_TRUE(bench.window().view().picture().table->turned);
    QTest::keyClick(&bench.window().view(), Qt::Key_5);
    EXPECT_FALSE(bench.window().view().picture().table->turned);
}

}  // namespace
}  // namespace tiepoint::ui
