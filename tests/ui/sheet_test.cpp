// The circuit diagram in a real window: it folds down, is live, and what is pointed at or pressed on it is so on the board.

#include "ui/sheet/sheet_painter.h"
#include "ui/view/bench_marks.h"
#include "window_bench.h"

#include <QImage>

namespace tiepoint::ui {
namespace {

class SheetWindow : public testing::Test {
protected:
    void open(const char* bench) {
        window().files().openEmbedded(QStringLiteral("benches/%1.bench.json").arg(QString::fromLatin1(bench)), Views{});
        ASSERT_TRUE(desk.waitForAnswer());
        window().sheetDesk().diagramAction()->setChecked(true);
        QApplication::processEvents();
        ASSERT_TRUE(sheet().isVisible());
        ASSERT_TRUE(sheet().sheet());
        ASSERT_EQ(sheet().sheet()->netlist.parts.size(), window().document().bench()->parts.size());
    }
    MainWindow& window() { return desk.window(); }
    SheetView& sheet() { return window().sheetDesk().sheet(); }
    QPoint placeOf(const char* id) {
        const auto& drawn = *sheet().sheet();
        const int part = drawn.netlist.partIndex(id);
        const Rect& body = drawn.diagram.parts[static_cast<std::size_t>(part)].body;
        return sheet().fromSheet({body.left + body.width / 2, body.top + body.height / 2}).toPoint();
    }

    WindowBench desk{QSize(1280, 800)};
};

TEST_F(SheetWindow, FoldsDownUnderTheBoardAndUpAgain) {
    open("lock-gate");
    EXPECT_FALSE(window().cards().isVisible());
    EXPECT_GE(sheet().geometry().top(), window().view().geometry().bottom());
    WindowBench::click(&sheet().foldButton());
    EXPECT_FALSE(sheet().isVisible());
    EXPECT_TRUE(window().cards().isVisible());
}

TEST_F(SheetWindow, PointingLightsTheOther) {
    open("lock-gate");
    QTest::mouseMove(&sheet(), placeOf("R1"));
    QMouseEvent move(QEvent::MouseMove, placeOf("R1"), sheet().mapToGlobal(placeOf("R1")), Qt::NoButton, Qt::NoButton,
                     {});
    QApplication::sendEvent(&sheet(), &move);
    EXPECT_EQ(window().view().picture().marks.hoverPart, "R1");
    const QImage lit = sheet().grab().toImage();
    window().view().marks().clearHover();
    EXPECT_NE(sheet().grab().toImage(), lit);
}

TEST_F(SheetWindow, ButtonsAreHeldOnTheSheet) {
    open("beacon-lamp");
    QTest::mousePress(&sheet(), Qt::LeftButton, {}, placeOf("S1"));
    EXPECT_TRUE(window().live().isHeld("S1"));
    ASSERT_TRUE(desk.waitForAnswer());
    EXPECT_GT(window().live().snapshot()->largestCurrentAmpere, 5e-3);
    QTest::mouseRelease(&sheet(), Qt::LeftButton, {}, placeOf("S1"));
    EXPECT_FALSE(window().live().isHeld("S1"));
}

TEST_F(SheetWindow, SlidesAreThrownByAnEdit) {
    open("two-way-stair-lamp");
    QTest::mouseClick(&sheet(), Qt::LeftButton, {}, placeOf("S1"));
    const Part& thrown = *window().document().bench()->findPart("S1");
    EXPECT_EQ(thrown.stateValue(thrown.kind->stateIndex("position")), 1);
    window().document().undoStack().undo();
    EXPECT_EQ(window().document().bench()->findPart("S1")->stateValue(0), 0);
}

TEST_F(SheetWindow, WordsFitTheRoomThatIsKeptForThem) {
    for (const char* bench :
         {"lock-gate", "three-buoys", "quay-bell-lamp", "two-way-stair-lamp", "fairway-dimmer", "ferry-cabin"}) {
        window().sheetDesk().diagramAction()->setChecked(false);
        open(bench);
        for (const SheetWord& word : sheet().sheet()->diagram.words) {
            const Lettering lettering{kSheetTextMm, word.kind == WordKind::Id ? QFont::DemiBold : QFont::Normal};
            EXPECT_LE(textWidthMm(QString::fromStdString(word.text), lettering), word.frame.width + 0.01)
                << bench << ": " << word.text;
        }
    }
}

TEST_F(SheetWindow, TidyingIsShownFirstAndIsOneStep) {
    open("three-buoys");
    const auto before = window().document().bench();
    window().sheetDesk().tidyAction()->trigger();
    ASSERT_TRUE(QTest::qWaitFor([this] { return window().bar().isAsking(); }, 20000));
    EXPECT_EQ(window().document().bench(), before);
    EXPECT_TRUE(window().view().picture().marks.mended);
    WindowBench::click(window().bar().buttons().back());
    ASSERT_NE(window().document().bench(), before);
    EXPECT_TRUE(window().sheetDesk().glide().isGliding());
    EXPECT_GT(window().sheetDesk().glide().thingCount(), 3);
    EXPECT_LT(window().document().bench()->jumpers.size(), before->jumpers.size());
    window().document().undoStack().undo();
    EXPECT_EQ(*window().document().bench(), *before);
}

}  // namespace
}  // namespace tiepoint::ui
