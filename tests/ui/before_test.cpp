// Before and after on the bench: words, and how long they stay.

#include "ui/view/before.h"

#include "desk.h"
#include "ui/paint/change_painter.h"

#include <QElapsedTimer>

namespace tiepoint::ui {
namespace {

class BeforeAndAfter : public Desk {};

TEST(ChangeWords, SayBothFiguresAndTheRatio) {
    struct Case {
        Change change;
        const char* words;
    };
    // Each figure as a snapshot with no larger one shows it.
    const auto shown = [](const char* unit, double value) { return Figure::nearest(scaleFor(unit, value), value); };
    const auto ampere = [&](double before, double after, bool changed = true) {
        return Change{ReadingKind::Current, "R1", -1, before, after, shown("A", before), shown("A", after), changed};
    };
    for (const Case& each :
         {Case{ampere(0.0092, 0.0046), "9.20 to 4.60 mA, half"}, Case{ampere(0.01, 0.01, false), "10.0 mA, unchanged"},
          Case{ampere(0, 0.0094), "0 to 9.40 mA"}, Case{ampere(0.0094, 0), "9.40 mA to 0 A"},
          Case{ampere(0.0009, 0.0018), "900 µA to 1.80 mA, twice"},
          Case{ampere(0.010, 0.012), "10.0 to 12.0 mA, 20 % more"},
          Case{{ReadingKind::Voltage, "R1", 0, 3, 4, shown("V", 3), shown("V", 4), true}, "3.00 to 4.00 V"}})
        EXPECT_EQ(changeWords(each.change).toStdString(), each.words);
}

TEST_F(BeforeAndAfter, APressIsShownForFourSecondsAndThenGone) {
    open(beacon());
    EXPECT_FALSE(view.picture().changes) << "opening a bench changes nothing";
    press(bodyOf("S1"));
    ASSERT_TRUE(waitForAnswer());
    QElapsedTimer shown;
    shown.start();
    ASSERT_TRUE(view.picture().changes);
    EXPECT_FALSE(view.picture().changes->empty());
    ASSERT_TRUE(QTest::qWaitFor([this] { return !view.picture().changes; }, Before::kShownMs + 1000));
    EXPECT_NEAR(static_cast<double>(shown.elapsed()), Before::kShownMs, 500);
    release(bodyOf("S1"));
    ASSERT_TRUE(waitForAnswer());
}

TEST_F(BeforeAndAfter, TheFirstEditOfABenchIsShownToo) {
    open(beacon());
    ASSERT_EQ(document.undoStack().count(), 0);
    ASSERT_FALSE(document.push(setValueEdit(bench(), "PS1", "voltage", 9)));
    ASSERT_TRUE(waitForAnswer());
    ASSERT_TRUE(view.picture().changes);
    EXPECT_FALSE(view.picture().changes->empty());
}

TEST_F(BeforeAndAfter, AnotherBenchIsNotCompared) {
    open(beacon());
    press(bodyOf("S1"));
    ASSERT_TRUE(waitForAnswer());
    release(bodyOf("S1"));
    open(makeNewBench());
    EXPECT_FALSE(view.picture().changes);
}

}  // namespace
}  // namespace tiepoint::ui
