// How many gestures the usual changes take on a bench as people build it: two boards, 35 parts, 30 jumpers. Real mouse and key events on
// the real window.

#include "support/build_bench.h"
#include "window_bench.h"

#include <gtest/gtest.h>

namespace tiepoint::ui {
namespace {

constexpr int kLights = 6, kColumnsOfLight = 6, kBroad = 4;  ///< on a board; from one to the next; of one

/// The rail hole of a full board that stands over a column, or else the next to its left.
int railHoleAt(int column) {
    const BoardKind& full = *findBoardKind("full");
    int hole = 1;
    while (hole < full.railHoles && full.railColumn(hole + 1) <= column) ++hole;
    return hole;
}

std::string addressOf(const char* board, const char* line, int number) {
    return std::string(board) + "." + line + std::to_string(number);
}

/// A light of the quay: a resistor, an LED over the gap, a jumper to each rail.
void addLight(test::BenchBuilder& builder, const char* board, int number, int column) {
    const std::string tail = std::to_string(number);
    const int other = column + kBroad;
    builder.part("R" + tail, "resistor", {{"1", addressOf(board, "c", column)}, {"2", addressOf(board, "c", other)}})
        .part("D" + tail, "led", {{"anode", addressOf(board, "e", other)}, {"cathode", addressOf(board, "f", other)}})
        .jumper("W" + std::to_string(2 * number - 1), addressOf(board, "top+", railHoleAt(column)),
                addressOf(board, "a", column))
        .jumper("W" + std::to_string(2 * number), addressOf(board, "j", other),
                addressOf(board, "bottom-", railHoleAt(other)), "black");
}

/// The quay's lights on two boards, with the shunts of its tide gauge at the right of the lower one.
Bench busyQuay() {
    test::BenchBuilder builder;
    builder.board("A", "full").board("B", "full", 0, 24);
    builder.part("PS1", "bench-supply", {{"+", "A.top+1"}, {"-", "A.bottom-1"}});
    int number = 0;
    for (const char* board : {"A", "B"}) {
        for (int light = 0; light < kLights; ++light) addLight(builder, board, ++number, 4 + kColumnsOfLight * light);
    }
    for (const int column : {39, 45}) {
        for (const char* row : {"a", "c", "e", "g", "i"})
            builder.part("R" + std::to_string(++number), "resistor",
                         {{"1", addressOf("B", row, column)}, {"2", addressOf("B", row, column + 4)}});
        builder.jumper(addressOf("B", "top-", railHoleAt(column)), addressOf("B", "b", column))
            .jumper(addressOf("B", "d", column + 4), addressOf("B", "f", column + 4));
    }
    builder.jumper("B.j39", "B.bottom+32").jumper("A.bottom-2", "B.top-1");
    return builder.build();
}

class HandCounts : public testing::Test {
protected:
    HandCounts() {
        window().document().reset(busyQuay(), {});
        view().fitBench();
        bench_.waitForAnswer();
        EXPECT_EQ(bench().parts.size(), 35U);
        EXPECT_EQ(bench().jumpers.size(), 30U);
    }
    MainWindow& window() { return bench_.window(); }
    BenchView& view() { return window().view(); }
    const Bench& bench() { return *window().document().bench(); }
    std::string said() { return view().picture().marks.say + window().bar().line().toStdString(); }

    QPoint place(Point mm) { return view().fromMm(mm).toPoint(); }
    QPoint hole(const std::string& address) { return place(*holeMm(bench(), test::holeAt(address))); }
    QPoint bodyOf(const char* id) {
        return place(view().picture().table->parts[static_cast<std::size_t>(bench().partIndex(id))].pose.centre);
    }

    // Each is one gesture.
    void drag(QPoint from, QPoint to) {
        constexpr int kSteps = 6;
        ++gestures;
        QWidget* viewport = view().viewport();
        QTest::mousePress(viewport, Qt::LeftButton, {}, from);
        for (int step = 1; step <= kSteps; ++step) {
            const QPoint now = from + (to - from) * step / kSteps;
            QMouseEvent move(QEvent::MouseMove, QPointF(now), viewport->mapToGlobal(QPointF(now)), Qt::NoButton,
                             Qt::LeftButton, {});
            QApplication::sendEvent(viewport, &move);
        }
        QTest::mouseRelease(viewport, Qt::LeftButton, {}, to);
    }
    void key(Qt::Key key, Qt::KeyboardModifiers modifiers = {}) {
        ++gestures;
        QTest::keyClick(&view(), key, modifiers);
    }
    /// No gesture: the hand is on its way to the next one.
    void point(QPoint to) {
        QMouseEvent move(QEvent::MouseMove, QPointF(to), view().viewport()->mapToGlobal(QPointF(to)), Qt::NoButton,
                         Qt::NoButton, {});
        QApplication::sendEvent(view().viewport(), &move);
    }
    /// All of the light whose resistor begins in that column of the upper board.
    void bandRoundLight(int column) {
        const Rect board = bench().boards.front().frameMm();
        const double left = holeMm(bench(), {"A", Line::C, column})->x, right = left + 4 * kPitchMm;
        drag(place({left - 1, board.top - 5}), place({right + 1, board.bottom() + 2}));
    }

    int gestures = 0;
    WindowBench bench_{{1920, 1080}};
};

TEST_F(HandCounts, AnEndIsRewiredByOne) {
    drag(hole("A.a16"), hole("A.b16"));
    EXPECT_EQ(bench().findJumper("W5")->ends[1], JumperEnd(test::holeAt("A.b16"))) << said();
    EXPECT_EQ(bench().jumpers.size(), 30U);
    EXPECT_EQ(gestures, 1);
}

TEST_F(HandCounts, FiveCopiesOfABranchByTwo) {
    bandRoundLight(34);
    EXPECT_EQ(view().selection(), (QStringList{"R6", "D6", "W11", "W12"}));
    key(Qt::Key_5, Qt::ControlModifier);
    EXPECT_EQ(bench().parts.size(), 35U + 2 * 5) << said();
    EXPECT_EQ(bench().jumpers.size(), 30U + 2 * 5);
    EXPECT_EQ(gestures, 2) << "three at most";
    ASSERT_EQ(view().selection().size(), 4);
    const Part* last = bench().findPart(view().selection().front().toStdString());
    ASSERT_TRUE(last);
    EXPECT_EQ(last->leads[0], (Hole{"A", Line::C, 59})) << "each stands close to the last";
    EXPECT_EQ(window().document().undoStack().count(), 1);
}

TEST_F(HandCounts, AGroupGoesToTheOtherBoardByOne) {
    bandRoundLight(34);
    gestures = 0;  // it is selected
    drag(bodyOf("R6"), bodyOf("R6") + hole("B.c53") - hole("A.c34"));
    EXPECT_EQ(bench().findPart("R6")->leads[0], (Hole{"B", Line::C, 53})) << said();
    EXPECT_EQ(bench().findPart("D6")->leads[1], (Hole{"B", Line::F, 57}));
    EXPECT_EQ(std::get<Hole>(bench().findJumper("W11")->ends[0]).board, "B");
    EXPECT_EQ(std::get<Hole>(bench().findJumper("W12")->ends[1]).line, Line::BottomMinus);
    EXPECT_EQ(gestures, 1);
}

TEST_F(HandCounts, AnLedTurnsAQuarterByOne) {
    Bench loose = busyQuay();
    loose.parts[static_cast<std::size_t>(loose.partIndex("D6"))].leads = {Hole{"A", Line::E, 45},
                                                                          Hole{"A", Line::E, 46}};
    window().document().reset(loose, {});
    point(bodyOf("D6"));
    key(Qt::Key_BracketRight);
    EXPECT_EQ(bench().findPart("D6")->leads[0], (Hole{"A", Line::E, 45})) << said();
    EXPECT_EQ(bench().findPart("D6")->leads[1], (Hole{"A", Line::F, 45}));
    EXPECT_EQ(gestures, 1);
}

}  // namespace
}  // namespace tiepoint::ui
