// The truth card in a real window: six switches and nine lamps are 64 rows and nine expressions, on a card of five lines. Nothing is left
// out and nothing grows too small to read, at a desk and in front of a room; mouse, wheel and keyboard all get everywhere.

#include "support/build_bench.h"
#include "window_bench.h"

#include <QScrollBar>
#include <QWheelEvent>

namespace tiepoint::ui {
namespace {

constexpr int kRows = 64, kLamps = 9;

/// Behind each switch its lamps: L1 and L7 behind S1, and so on.
Bench sixSwitches() {
    test::BenchBuilder builder;
    builder.title("Signal box")
        .board("A", "full")
        .part("PS1", "bench-supply", {{"+", "A.bottom+1"}, {"-", "A.bottom-1"}}, {{"voltage", 6}, {"currentLimit", 2}});
    const auto hole = [](char row, int column) { return std::string("A.") + row + std::to_string(column); };
    for (int i = 1; i <= 6; ++i) {
        const int column = 10 * i - 8;
        const std::string number = std::to_string(i), rail = std::to_string(2 + 7 * i);
        builder.part("S" + number, "toggle", {{"1", hole('f', column)}, {"2", hole('f', column + 2)}});
        builder.jumper("A.bottom+" + rail, hole('g', column)).jumper("A.bottom-" + rail, hole('j', column + 5));
        for (int lamp = i; lamp <= kLamps; lamp += 6) {
            const char row = lamp == i ? 'h' : 'i';
            builder.part("L" + std::to_string(lamp), "lamp",
                         {{"1", hole(row, column + 2)}, {"2", hole(row, column + 5)}});
        }
    }
    return builder.build();
}

class SixSwitches : public testing::TestWithParam<QSize> {
protected:
    SixSwitches() : desk(GetParam()) {
        window().document().reset(sixSwitches(), {});
        EXPECT_TRUE(desk.waitForAnswer());
        inquiry().tableAction()->trigger();
        EXPECT_TRUE(WindowBench::waitFor(
            [this] { return settled() && static_cast<int>(card().table()->rows.size()) == kRows; }));
    }

    MainWindow& window() { return desk.window(); }
    Inquiry& inquiry() { return window().inquiry(); }
    TruthCard& card() { return inquiry().table(); }
    TruthRows& rows() { return card().rows(); }
    bool settled() { return card().table() && !card().isStale() && card().presentRow() >= 0; }
    bool isInSight(int row) { return !rows().rowBox(row).isEmpty(); }

    static void turnWheel(QWidget* over, int clicks, Qt::KeyboardModifiers modifiers = {}) {
        const QPointF at = over->rect().center();
        QWheelEvent event(at, over->mapToGlobal(at), {}, QPoint(0, -120 * clicks), Qt::NoButton, modifiers,
                          Qt::NoScrollPhase, false);
        QApplication::sendEvent(over, &event);
    }
    /// Types a key and waits until the bench stands in the row that it leads to.
    void typeTo(Qt::Key key, int row) {
        QTest::keyClick(&rows(), key);
        ASSERT_TRUE(WindowBench::waitFor([&] { return settled() && card().presentRow() == row; })) << row;
    }

    WindowBench desk;
};

TEST_P(SixSwitches, ThePrintIsAsLargeAsOnOtherCards) {
    EXPECT_DOUBLE_EQ(rows().letterPixels(), card().look().px(20));
    EXPECT_GE(rows().letterPixels(), 10);
    EXPECT_GE(rows().rowBox(0).height(), rows().letterPixels());
}

TEST_P(SixSwitches, TheWheelReachesEveryRow) {
    std::set<int> seen;
    for (int click = 0; click < 80; ++click) {
        for (int row = 0; row < kRows; ++row)
            if (isInSight(row)) seen.insert(row);
        turnWheel(rows().viewport(), 1);
    }
    EXPECT_EQ(seen.size(), static_cast<std::size_t>(kRows));
    EXPECT_TRUE(isInSight(kRows - 1));
    for (int click = 0; click < 80; ++click) turnWheel(rows().viewport(), -1);
    EXPECT_TRUE(isInSight(0));
}

TEST_P(SixSwitches, TheScrollBarReachesEveryRow) {
    QScrollBar& bar = *rows().verticalScrollBar();
    ASSERT_TRUE(bar.isVisible());
    for (int click = 0; click < 80; ++click)
        QTest::mouseClick(&bar, Qt::LeftButton, {}, QPoint(bar.width() / 2, bar.height() - 2));
    EXPECT_TRUE(isInSight(kRows - 1));
}

TEST_P(SixSwitches, TheKeyboardWalksAndThePresentRowStaysInSight) {
    rows().setFocus(Qt::TabFocusReason);
    typeTo(Qt::Key_Home, 0);
    for (int row = 1; row <= 12; ++row) {
        typeTo(Qt::Key_Down, row);
        EXPECT_TRUE(isInSight(row)) << row;
    }
    typeTo(Qt::Key_End, kRows - 1);
    EXPECT_TRUE(isInSight(kRows - 1));
    typeTo(Qt::Key_Up, kRows - 2);
    EXPECT_TRUE(isInSight(kRows - 2));
    QTest::keyClick(&rows(), Qt::Key_PageUp);
    ASSERT_TRUE(WindowBench::waitFor([&] { return settled() && card().presentRow() < kRows - 2; }));
    EXPECT_TRUE(isInSight(card().presentRow()));
    typeTo(Qt::Key_Home, 0);
    EXPECT_TRUE(isInSight(0));
}

TEST_P(SixSwitches, ARowThatIsClickedIsSet) {
    for (int click = 0; click < 10; ++click) turnWheel(rows().viewport(), 1);
    int row = kRows - 1;
    while (!isInSight(row)) --row;
    QTest::mouseClick(rows().viewport(), Qt::LeftButton, {}, rows().rowBox(row).center().toPoint());
    ASSERT_TRUE(WindowBench::waitFor([&] { return settled() && card().presentRow() == row; }));
    EXPECT_TRUE(isInSight(row));
}

TEST_P(SixSwitches, EveryColumnIsReached) {
    rows().setFocus(Qt::TabFocusReason);
    QScrollBar& bar = *rows().horizontalScrollBar();
    for (int i = 0; i < 60; ++i) QTest::keyClick(&rows(), Qt::Key_Right);
    EXPECT_EQ(bar.value(), bar.maximum());
    EXPECT_LE(rows().wantedSize().width() - bar.value() - 12 * card().look().scale, rows().viewport()->width() + 1);
    for (int i = 0; i < 60; ++i) QTest::keyClick(&rows(), Qt::Key_Left);
    EXPECT_EQ(bar.value(), 0);
}

TEST_P(SixSwitches, EveryExpressionIsReached) {
    ASSERT_EQ(card().sentences().size(), kLamps);
    QScrollArea& words = card().words();
    const auto* label = static_cast<const QLabel*>(words.widget());
    for (int i = 1; i <= kLamps; ++i) {
        const QString sentence = QStringLiteral("L%1 = S%2").arg(i).arg((i - 1) % 6 + 1);
        EXPECT_TRUE(card().sentences().contains(sentence));
        EXPECT_TRUE(label->text().contains(sentence)) << sentence.toStdString();
    }
    // The label is as high as its words want, and the wheel and the keys reach its end.
    EXPECT_GE(label->height(), label->heightForWidth(label->width()));
    QScrollBar& bar = *words.verticalScrollBar();
    EXPECT_GE(bar.maximum() + words.viewport()->height(), label->height());
    for (int click = 0; click < 40; ++click) turnWheel(words.viewport(), 1);
    EXPECT_EQ(bar.value(), bar.maximum());
    for (int i = 0; i < 60; ++i) QTest::keyClick(&words, Qt::Key_Up);
    EXPECT_EQ(bar.value(), 0);
    for (int i = 0; i < 60; ++i) QTest::keyClick(&words, Qt::Key_Down);
    EXPECT_EQ(bar.value(), bar.maximum());
}

TEST_P(SixSwitches, TabLeadsFromTheBenchToTheRowsAndOn) {
    window().activateWindow();
    window().view().setFocus();
    QTest::keyClick(&window().view(), Qt::Key_Tab);
    EXPECT_TRUE(rows().hasFocus());
    QTest::keyClick(&rows(), Qt::Key_Tab);
    EXPECT_TRUE(card().words().hasFocus());
    QTest::keyClick(&card().words(), Qt::Key_Escape);
    EXPECT_FALSE(card().isVisible());
}

TEST_P(SixSwitches, ARoomReadsItToo) {
    window().actions().project->setChecked(true);
    ASSERT_TRUE(WindowBench::waitFor([&] { return card().isVisible() && window().cards().roomCard() == &card(); }));
    QApplication::processEvents();
    const double height = window().height();
    EXPECT_GE(rows().letterPixels(), height / 40);
    EXPECT_GE(card().look().px(text::kSmall), height / 40) << "the smallest print on it";
    EXPECT_GT(card().width(), window().width() * 0.9);
    EXPECT_GE(window().cards().y(), window().view().geometry().bottom()) << "below the circuit, not over it";
    EXPECT_LE(window().cards().geometry().bottom(), window().height());
    EXPECT_FALSE(window().tray().isVisible());
    EXPECT_FALSE(window().cards().reading().isVisible());
    rows().setFocus(Qt::TabFocusReason);
    typeTo(Qt::Key_End, kRows - 1);
    EXPECT_TRUE(isInSight(kRows - 1));
    // Put away and called for again by its key, and back at the desk it stands where it stood.
    QTest::keyClick(&rows(), Qt::Key_Escape);
    EXPECT_FALSE(window().cards().isVisible());
    inquiry().tableAction()->trigger();
    EXPECT_TRUE(card().isVisible());
    window().actions().project->setChecked(false);
    ASSERT_TRUE(WindowBench::waitFor([&] { return window().cards().reading().isVisible(); }));
    EXPECT_EQ(card().geometry(), window().cards().legend().geometry());
    EXPECT_DOUBLE_EQ(rows().letterPixels(), window().cards().legend().look().px(20));
}

INSTANTIATE_TEST_SUITE_P(Sizes, SixSwitches, testing::Values(QSize(800, 500), QSize(1280, 720), QSize(1920, 1080)),
                         [](const testing::TestParamInfo<QSize>& size) {
                             return "W" + std::to_string(size.param.width()) + "H" +
                                    std::to_string(size.param.height());
                         });

}  // namespace
}  // namespace tiepoint::ui
