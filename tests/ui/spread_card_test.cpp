// Spread and life, and damage that stays, in a real window.

#include "core/findings/damage.h"
#include "support/compact_bench.h"
#include "window_bench.h"

namespace tiepoint::ui {
namespace {

constexpr int kSpreadPatienceMs =
    20000;  ///< what is worked out beside has the lowest priority, and the machine may be busy

constexpr const char* kSpreadBench =
    "half; PS1 top+3 bottom-3 5; R1 c8 c14 330; D1 e14 f14 red; W1 top+7 a8 red; W2 j14 bottom-13 black";
constexpr const char* kBareBench =
    "half; PS1 top+3 bottom-3 9; D1 e14 f14 red; W1 top+7 a14 red; W2 j14 bottom-13 black";

class SpreadWindow : public testing::Test {
protected:
    void open(const char* text) {
        window().document().reset(test::compactBench(text), {});
        ASSERT_TRUE(desk.waitForAnswer());
    }
    MainWindow& window() { return desk.window(); }
    SpreadCard& card() { return window().spread().card(); }
    const Bench& bench() { return *window().document().bench(); }
    WindowBench desk;
};

TEST_F(SpreadWindow, TheCardFollowsTheBench) {
    open(kSpreadBench);
    window().spread().action()->trigger();
    ASSERT_TRUE(QTest::qWaitFor([&] { return card().spread() != nullptr; }, kSpreadPatienceMs));
    ASSERT_EQ(card().spread()->readings.size(), 1u);
    EXPECT_EQ(card().spread()->readings[0].name, "D1");
    EXPECT_TRUE(card().spoken().contains(QStringLiteral("most by D1")));
    ASSERT_FALSE(window().document().push(setValueEdit(bench(), "R1", "resistance", 3300)));
    EXPECT_EQ(card().spread(), nullptr) << "nothing of another bench is shown";
    ASSERT_TRUE(QTest::qWaitFor([&] { return card().spread() != nullptr; }, kSpreadPatienceMs));
    EXPECT_LT(card().spread()->readings[0].nominal, 2e-3);
}

TEST_F(SpreadWindow, ABatteryIsChosenOnTheCard) {
    open(kSpreadBench);
    window().spread().action()->trigger();
    ASSERT_TRUE(QTest::qWaitFor([&] { return card().spread() != nullptr; }, kSpreadPatienceMs));
    EXPECT_TRUE(card().lifeWords().isEmpty());
    WindowBench::click(card().batteryButton());
    ASSERT_TRUE(QTest::qWaitFor([&] { return !card().lifeWords().isEmpty(); }, kSpreadPatienceMs));
    EXPECT_TRUE(card().lifeWords().startsWith(QStringLiteral("2 cells in a holder: lasts ")))
        << card().lifeWords().toStdString();
}

TEST_F(SpreadWindow, DamageStaysOnlyWhereItIsChosen) {
    open(kBareBench);
    EXPECT_EQ(bench().findPart("D1")->condition, Condition::Sound);
    window().damage().action()->trigger();
    ASSERT_TRUE(WindowBench::waitFor([&] { return bench().findPart("D1")->condition == Condition::Dead; }));
    ASSERT_TRUE(desk.waitForAnswer());
    EXPECT_EQ(window().live().snapshot()->brightness(bench().partIndex("D1")), 0);
    // What was undone stays undone.
    window().document().undoStack().undo();
    ASSERT_TRUE(desk.waitForAnswer());
    QTest::qWait(100);
    EXPECT_EQ(bench().findPart("D1")->condition, Condition::Sound);
}

}  // namespace
}  // namespace tiepoint::ui
