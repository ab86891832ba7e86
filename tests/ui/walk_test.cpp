// The potential walk in a real window: its card, and the steps on it that light the parts on the board, and the other way round.

#include "support/build_bench.h"
#include "window_bench.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace tiepoint::ui {
namespace {

class WalkTest : public testing::Test {
protected:
    MainWindow& window() { return desk.window(); }
    WalkCard& card() { return window().walk().card(); }
    const WalkText& walk() { return card().walk(); }

    void open(const char* name) {
        window().files().openEmbedded(QStringLiteral("benches/%1.bench.json").arg(QString::fromLatin1(name)));
        ASSERT_TRUE(desk.waitForAnswer());
    }
    void openCard() {
        window().walk().action()->trigger();
        ASSERT_TRUE(card().isVisible());
    }
    void hold(const char* id, bool down) {
        window().live().setHeld(id, down);
        ASSERT_TRUE(desk.waitForAnswer());
    }
    QStringList things(bool partsOnly = true) {
        QStringList ids;
        for (const WalkMove& move : walk().moves)
            if (move.isPart || (!partsOnly && !move.thing.empty())) ids << QString::fromStdString(move.thing);
        return ids;
    }
    QPoint stepOf(const char* id) {
        for (int i = 0; i < static_cast<int>(walk().moves.size()); ++i)
            if (walk().moves[static_cast<std::size_t>(i)].thing == id) return card().column(i).center().toPoint();
        test::slip("the step", id);
    }
    void pointAt(QPoint where) {
        QMouseEvent event(QEvent::MouseMove, QPointF(where), card().mapToGlobal(QPointF(where)), Qt::NoButton,
                          Qt::NoButton, {});
        QApplication::sendEvent(&card(), &event);
    }

    WindowBench desk;
};

TEST_F(WalkTest, TheCardPlotsTheLoopAndGoesAgain) {
    open("beacon-lamp");
    openCard();
    EXPECT_TRUE(walk().moves.empty());
    EXPECT_TRUE(walk().note.startsWith("No current flows through PS1")) << walk().note.toStdString();
    hold("S1", true);
    EXPECT_EQ(things(), (QStringList{"PS1", "R1", "S1", "D1"}));
    EXPECT_EQ(things(false), (QStringList{"PS1", "W1", "R1", "S1", "D1", "W2"}));
    ASSERT_EQ(walk().volts.size(), walk().moves.size() + 1);
    EXPECT_EQ(walk().volts.front(), walk().volts.back());
    EXPECT_EQ(walk().places.front(), walk().places.back());
    EXPECT_EQ(walk().moves.front().figure, "+5.00 V");
    EXPECT_TRUE(card().accessibleDescription().contains("R1 \u22123.0"))
        << card().accessibleDescription().toStdString();
    // Columns follow each other without a gap, and those of parts are broader.
    for (int i = 1; i < static_cast<int>(walk().moves.size()); ++i)
        EXPECT_NEAR(card().column(i).left(), card().column(i - 1).right(), 1e-6);
    EXPECT_GT(card().column(0).width(), 2 * card().column(1).width());
    WindowBench::click(card().closeButton());
    EXPECT_FALSE(card().isVisible());
    EXPECT_TRUE(window().cards().legend().isVisible());
    EXPECT_FALSE(window().walk().action()->isChecked());
}

TEST_F(WalkTest, PointingAtAStepLightsThePartAndTheOtherWayRound) {
    open("beacon-lamp");
    hold("S1", true);
    openCard();
    pointAt(stepOf("R1"));
    EXPECT_EQ(window().view().picture().marks.lit, "R1");
    pointAt(stepOf("W2"));
    EXPECT_EQ(window().view().picture().marks.lit, "W2");
    card().setFocus();
    QTest::keyClick(&card(), Qt::Key_Left);
    EXPECT_EQ(window().view().picture().marks.lit, "D1");
    QTest::keyClick(&card(), Qt::Key_Right);
    QTest::keyClick(&card(), Qt::Key_Right);
    EXPECT_EQ(window().view().picture().marks.lit, "PS1") << "once round";
    QTest::keyClick(&card(), Qt::Key_Escape);
    EXPECT_FALSE(card().isVisible());
    EXPECT_EQ(window().view().picture().marks.lit, "");

    openCard();
    const BenchView& view = window().view();
    const int led = window().document().bench()->partIndex("D1");
    const QPointF at = view.fromMm(view.picture().table->parts[static_cast<std::size_t>(led)].pose.centre);
    QMouseEvent move(QEvent::MouseMove, at, view.viewport()->mapToGlobal(at), Qt::NoButton, Qt::NoButton, {});
    QApplication::sendEvent(view.viewport(), &move);
    EXPECT_EQ(card().marked(), "D1");
}

TEST_F(WalkTest, TheSelectedPartChoosesTheLoopAndOffIsSaid) {
    open("beacon-lamp");
    hold("S1", true);
    openCard();
    window().view().setSelection({"D1"});
    EXPECT_TRUE(walk().title.contains("D1, red LED")) << walk().title.toStdString();
    ASSERT_FALSE(window().document().push(setStateEdit(*window().document().bench(), "PS1", "on", 0)));
    ASSERT_TRUE(desk.waitForAnswer());
    EXPECT_TRUE(walk().moves.empty());
    EXPECT_TRUE(walk().note.startsWith("No supply is switched on")) << walk().note.toStdString();
}

TEST_F(WalkTest, OneAsideAtATime) {
    open("beacon-lamp");
    openCard();
    window().inquiry().tableAction()->trigger();
    EXPECT_TRUE(window().inquiry().table().isVisible());
    EXPECT_FALSE(card().isVisible());
    EXPECT_FALSE(window().walk().action()->isChecked());
    openCard();
    EXPECT_FALSE(window().inquiry().table().isVisible());
    EXPECT_FALSE(window().inquiry().tableAction()->isChecked());
}

TEST(WalkAxis, TicksAreRoundAndHoldTheWalk) {
    const struct {
        double least, most, low, high, step;
    } table[] = {{0, 5, 0, 5, 1},        {0, 9, 0, 10, 2},  {-3, 4.2, -4, 6, 2},
                 {0, 0.47, 0, 0.5, 0.1}, {0, 12, 0, 15, 5}, {0, 30, 0, 30, 10}};
    for (const auto& row : table) {
        const AxisTicks ticks = ticksFor(row.least, row.most);
        EXPECT_NEAR(ticks.low, row.low, 1e-9) << row.most;
        EXPECT_NEAR(ticks.high, row.high, 1e-9) << row.most;
        EXPECT_NEAR(ticks.step, row.step, 1e-9) << row.most;
        EXPECT_LE(ticks.count(), 8);
    }
}

}  // namespace
}  // namespace tiepoint::ui
