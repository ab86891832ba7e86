// The first minute: from the start card to a lit LED by the mouse alone, with the guide following the circuit.

#include "window_bench.h"

#include <QElapsedTimer>

namespace tiepoint::ui {
namespace {

class GuideTest : public testing::Test {
protected:
    GuideTest() : bench(QSize(1600, 900)) {
        bench.window().showStartCard();
        WindowBench::click(bench.window().startCard()->firstButton());
        EXPECT_TRUE(bench.waitForAnswer());
    }
    GuideCard& guide() { return bench.window().tools().guide(); }
    BenchView& view() { return bench.window().view(); }
    QPoint at(const Hole& hole) { return view().fromMm(*holeMm(*bench.window().document().bench(), hole)).toPoint(); }
    void move(QPoint to, Qt::MouseButtons buttons = Qt::LeftButton) {
        QMouseEvent event(QEvent::MouseMove, QPointF(to), view().viewport()->mapToGlobal(QPointF(to)), Qt::NoButton,
                          buttons, {});
        QApplication::sendEvent(view().viewport(), &event);
    }
    /// Drags a part out of the tray so that its leads land in the lit holes.
    void place(const char* family) { place(family, guide().advice().holes); }
    void place(const char* family, const std::vector<Hole>& holes) {
        ASSERT_EQ(holes.size(), 2u);
        for (TrayButton* button : bench.window().tray().compartments()) {
            if (button->text() != QString::fromLatin1(family)) continue;
            const QPoint middle = button->rect().center();
            QTest::mousePress(button, Qt::LeftButton, {}, middle);
            QMouseEvent out(QEvent::MouseMove, QPointF(middle - QPoint(0, 60)),
                            button->mapToGlobal(QPointF(middle - QPoint(0, 60))), Qt::NoButton, Qt::LeftButton, {});
            QApplication::sendEvent(button, &out);
        }
        const QPoint target = (at(holes[0]) + at(holes[1])) / 2;
        move(target - QPoint(6, 6));
        move(target);
        QTest::mouseRelease(view().viewport(), Qt::LeftButton, {}, target);
        EXPECT_TRUE(bench.waitForAnswer());
    }
    void wire() {
        const auto holes = guide().advice().holes;
        ASSERT_EQ(holes.size(), 2u);
        view().setSelection({});
        QTest::mousePress(view().viewport(), Qt::LeftButton, {}, at(holes[0]));
        move((at(holes[0]) + at(holes[1])) / 2);
        move(at(holes[1]));
        QTest::mouseRelease(view().viewport(), Qt::LeftButton, {}, at(holes[1]));
        EXPECT_TRUE(bench.waitForAnswer());
    }

    WindowBench bench;
};

TEST_F(GuideTest, LeadsToALitLedByTheMouseAlone) {
    QElapsedTimer clock;
    clock.start();
    ASSERT_TRUE(guide().isVisible());
    EXPECT_EQ(guide().step(), 0);
    place("Resistor");
    EXPECT_EQ(guide().step(), 1);
    place("LED");
    EXPECT_EQ(guide().step(), 2);
    wire();
    EXPECT_EQ(guide().step(), 3);
    wire();
    EXPECT_EQ(guide().step(), 4) << guide().advice().text;
    EXPECT_FALSE(guide().showsPicture());
    // The lever of the supply.
    view().setSelection({QStringLiteral("PS1")});
    QTest::keyClick(&view(), Qt::Key_Space);
    EXPECT_TRUE(bench.waitForAnswer());
    EXPECT_EQ(guide().step(), 5);
    EXPECT_FALSE(guide().showsPicture()) << "the picture of the tap and the pipe comes only when it is asked for";
    EXPECT_LT(clock.elapsed(), 60'000);
}

TEST_F(GuideTest, ThePictureOfTheTapComesWhenAskedAndNeverOverTheBoard) {
    EXPECT_FALSE(guide().showsPicture());
    QTest::mouseClick(guide().pictureButton(), Qt::LeftButton);
    EXPECT_TRUE(guide().showsPicture());
    const QRect bench_(view().mapTo(&bench.window(), QPoint(0, 0)), view().size());
    const QRect card(guide().mapTo(&bench.window(), QPoint(0, 0)), guide().size());
    EXPECT_GE(card.top(), bench_.bottom());
    EXPECT_TRUE(bench.window().rect().contains(card));
    QTest::mouseClick(guide().pictureButton(), Qt::LeftButton);
    EXPECT_FALSE(guide().showsPicture());
}

/// A beginner who slips by one column is told what, why and one thing to do; doing it leads on.
TEST_F(GuideTest, ASlipIsToldAndMendedByTheKeyThatItNames) {
    place("Resistor");
    const QRect step = guide().geometry();
    auto holes = guide().advice().holes;
    for (Hole& hole : holes) ++hole.number;
    place("LED", holes);
    EXPECT_EQ(guide().step(), 1);
    EXPECT_EQ(guide().advice().title, "Nearly. It sits one hole too far right.");
    EXPECT_EQ(guide().geometry().right(), step.right());
    EXPECT_LT(guide().geometry().left(), step.left() - step.width() / 2) << "it is told over two cards' breadth";
    EXPECT_TRUE(guide().accessibleName().contains(QStringLiteral("press ←"))) << guide().accessibleName().toStdString();
    EXPECT_FALSE(guide().pictureButton()->isVisible());
    view().setSelection({QStringLiteral("D1")});
    QTest::keyClick(&view(), Qt::Key_Left);
    ASSERT_TRUE(bench.waitForAnswer());
    EXPECT_EQ(guide().step(), 2);
    EXPECT_TRUE(guide().advice().action.empty());
    EXPECT_EQ(guide().geometry(), step);
}

TEST_F(GuideTest, TheHolesGlowAndGoOut) {
    EXPECT_EQ(guide().advice().holes.size(), 2u);
    const QImage with = view().viewport()->grab().toImage();
    QTest::keyClick(&guide(), Qt::Key_Escape);
    EXPECT_FALSE(guide().isVisible());
    EXPECT_NE(view().viewport()->grab().toImage(), with);
}

TEST_F(GuideTest, AStepUndoneIsAskedAgain) {
    place("Resistor");
    EXPECT_EQ(guide().step(), 1);
    bench.window().document().undoStack().undo();
    ASSERT_TRUE(bench.waitForAnswer());
    EXPECT_EQ(guide().step(), 0);
}

TEST_F(GuideTest, OpeningAnotherBenchEndsIt) {
    bench.window().files().openEmbedded(QStringLiteral("benches/lock-gate.bench.json"));
    EXPECT_FALSE(guide().isVisible());
}

}  // namespace
}  // namespace tiepoint::ui
