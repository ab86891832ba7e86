// A fault hunt in a real window: what is locked, what is measured, a guess and its proof, hints, and the end.

#include "core/hunt/hunt.h"
#include "core/meter/meter.h"
#include "core/snapshot/lit.h"
#include "support/compact_bench.h"
#include "window_bench.h"

namespace tiepoint::ui {
namespace {

constexpr int kHuntPatienceMs =
    60000;  ///< what is worked out beside has the lowest priority, and the machine may be busy

constexpr const char* kPierText =
    "half; PS1 top+3 bottom-3 5; S1 e5; R1 c16 c21 330; D1 h21 h24 red; W1 top+4 a5 red; W2 d7 d16 blue; "
    "W4 d21 g21 green; W3 j24 bottom-20 black";

class HuntWindow : public testing::Test {
protected:
    HuntWindow() {
        const auto target = std::make_shared<const Bench>(test::compactBench(kPierText));
        const HuntGround ground(target);
        for (const Plant& plant : plantsOf(ground)) {
            if (plant.slip.kind->name != "broken-jumper" || plant.things.front() != "W2") continue;
            window().document().reset(huntBench(ground, plant), {});
            EXPECT_TRUE(desk.waitForAnswer());
            return;
        }
        ADD_FAILURE() << "W2 can't be planted";
    }

    MainWindow& window() { return desk.window(); }
    HuntDesk& hunt() { return window().hunt(); }
    const Bench& bench() { return *window().document().bench(); }

    /// Puts the meter's red tip somewhere and waits for the reading.
    void readAt(const char* hole) {
        Part meter = *std::ranges::find_if(bench().parts, [](const Part& part) { return isMeter(*part.kind); });
        meter.leads[0] = test::holeAt(hole);
        const std::size_t before = hunt().readings().rows().size();
        ASSERT_FALSE(window().document().push({"Move a tip", {ReplacePart{meter}}}));
        ASSERT_TRUE(QTest::qWaitFor([&] { return hunt().readings().rows().size() > before; }, kHuntPatienceMs)) << hole;
        ASSERT_TRUE(desk.waitForAnswer());
    }
    void press() {
        window().live().setHeld("S1", true);
        ASSERT_TRUE(desk.waitForAnswer());
    }
    void choose(const char* thing, const char* fault) {
        ASSERT_NE(hunt().cause().thingButton(thing), nullptr);
        WindowBench::click(hunt().cause().thingButton(thing));
        WindowBench::click(hunt().cause().faultButton(*findFault(fault)));
    }
    void tryIt() {
        ASSERT_TRUE(hunt().cause().tryButton()->isEnabled());
        WindowBench::click(hunt().cause().tryButton());
        ASSERT_TRUE(QTest::qWaitFor([&] { return !hunt().cause().answer().isEmpty(); }, kHuntPatienceMs));
    }

    WindowBench desk{{1920, 1080}};
};

TEST_F(HuntWindow, ItsCardsTakeThePlaceOfTheOthersAndNothingTells) {
    EXPECT_TRUE(hunt().isActive());
    EXPECT_TRUE(hunt().panel().isVisible());
    EXPECT_FALSE(window().cards().isVisible());
    EXPECT_FALSE(window().tray().isVisible());
    EXPECT_EQ(hunt().seen(), QStringLiteral("D1 stays dark while S1 is pressed."));
    EXPECT_FALSE(window().inquiry().whyAction()->isEnabled());
    EXPECT_FALSE(window().actions().voltage->isEnabled());
    EXPECT_FALSE(window().actions().pin->isEnabled());
    EXPECT_FALSE(window().sheetDesk().diagramAction()->isEnabled()) << "a diagram tells what is parted";
    EXPECT_FALSE(window().sheetDesk().tidyAction()->isEnabled());
    Views telling;
    telling.arrows = Arrows::Conventional;
    telling.voltage = telling.readings = true;
    window().view().setViews(telling);
    const Views& shown = window().view().picture().views;
    EXPECT_EQ(shown.arrows, Arrows::Off);
    EXPECT_FALSE(shown.voltage || shown.readings);
    EXPECT_EQ(window().findings().shown(), nullptr);
}

TEST_F(HuntWindow, TheDiagramFoldsUpWhenAHuntBegins) {
    const auto hidden = window().document().bench();
    window().document().reset(test::compactBench(kPierText), {});
    ASSERT_TRUE(desk.waitForAnswer());
    EXPECT_FALSE(hunt().isActive());
    window().sheetDesk().diagramAction()->setChecked(true);
    EXPECT_TRUE(window().sheetDesk().sheet().isVisible());
    window().document().reset(*hidden, {});
    ASSERT_TRUE(desk.waitForAnswer());
    EXPECT_TRUE(hunt().isActive());
    EXPECT_FALSE(window().sheetDesk().sheet().isVisible());
}

TEST_F(HuntWindow, ReadingsHaveNumbersAndStayAsTheyWere) {
    press();
    readAt("A.a7");
    readAt("A.b16");
    ASSERT_EQ(hunt().readings().rows().size(), 2u);
    const HuntRow& first = hunt().readings().rows()[0];
    EXPECT_EQ(first.number, 1);
    EXPECT_EQ(first.place, QStringLiteral("a7"));
    EXPECT_EQ(first.shown, QStringLiteral("5.00 V"));
    EXPECT_EQ(first.when, QStringLiteral("S1 pressed"));
    EXPECT_EQ(hunt().readings().rows()[1].number, 2);
    window().live().setHeld("S1", false);
    ASSERT_TRUE(desk.waitForAnswer());
    EXPECT_EQ(hunt().readings().rows().size(), 2u) << "letting go is no reading";
    EXPECT_EQ(hunt().readings().rows()[0].shown, QStringLiteral("5.00 V"));
    // The tag on the bench says the same.
    ASSERT_TRUE(WindowBench::waitFor([&] { return window().view().picture().pinned != nullptr; }));
    EXPECT_EQ(window().view().picture().pinned->front().text, QStringLiteral("1  5.00 V"));
    // Undone it is gone, and isn't taken again by itself.
    window().document().undoStack().undo();
    ASSERT_TRUE(desk.waitForAnswer());
    EXPECT_EQ(hunt().readings().rows().size(), 1u);
}

TEST_F(HuntWindow, AProvedGuessMendsAndEndsTheHunt) {
    press();
    readAt("A.a7");
    readAt("A.b16");
    choose("W2", "broken-inside");
    WindowBench::click(hunt().proof().readingButton(1));
    WindowBench::click(hunt().proof().readingButton(2));
    tryIt();
    EXPECT_TRUE(hunt().cause().isSolved()) << hunt().cause().answer().toStdString();
    EXPECT_EQ(bench().findJumper("W2")->condition, Condition::Sound);
    ASSERT_TRUE(desk.waitForAnswer());
    EXPECT_TRUE(isLit(*window().live().snapshot(), bench().partIndex("D1")));
    WindowBench::click(hunt().cause().tryButton());
    EXPECT_FALSE(hunt().isActive());
    EXPECT_TRUE(window().cards().isVisible());
    EXPECT_TRUE(window().actions().voltage->isEnabled());
}

TEST_F(HuntWindow, AGuessWithoutProofIsAnsweredByWhatToRead) {
    press();
    readAt("A.b16");
    choose("W2", "broken-inside");
    tryIt();
    EXPECT_FALSE(hunt().cause().isSolved());
    EXPECT_EQ(hunt().cause().answer(), QStringLiteral("Choose the readings that show it."));
    WindowBench::click(hunt().proof().readingButton(1));
    tryIt();
    EXPECT_FALSE(hunt().cause().isSolved());
    EXPECT_TRUE(hunt().cause().answer().contains(QStringLiteral("Take one that tells them apart")))
        << hunt().cause().answer().toStdString();
    EXPECT_TRUE(hunt().isActive());
}

TEST_F(HuntWindow, HintsOpenOneAtATime) {
    for (int open = 1; open <= 3; ++open) {
        WindowBench::click(hunt().proof().hintButton());
        ASSERT_TRUE(QTest::qWaitFor([&] { return hunt().proof().hints().size() == open; }, kHuntPatienceMs)) << open;
    }
    EXPECT_EQ(hunt().proof().hints().front(), QStringLiteral("Plus comes as far as a7 while S1 is pressed."));
    EXPECT_FALSE(hunt().proof().hintButton()->isVisible());
}

/// The menu entry on an open bench: a number is asked for, then what is unsaved.
class HuntMenuWindow : public HuntWindow {
protected:
    HuntMenuWindow() {
        window().document().reset(test::compactBench(kPierText), {});
        EXPECT_TRUE(desk.waitForAnswer());
    }
    MessageBar& bar() { return window().bar(); }
    void begin(const char* number) {
        window().huntMenu().action()->trigger();
        ASSERT_TRUE(bar().isAsking());
        QTest::keyClicks(&bar().phrase(), QString::fromLatin1(number));
        QTest::keyClick(&bar().phrase(), Qt::Key_Return);
        ASSERT_FALSE(bar().isAsking());
    }
};

TEST_F(HuntMenuWindow, TheSameNumberHidesTheSameSlip) {
    begin("7");
    ASSERT_TRUE(QTest::qWaitFor([&] { return hunt().isActive(); }, kHuntPatienceMs));
    EXPECT_FALSE(window().huntMenu().action()->isEnabled()) << "one at a time";
    const Bench first = bench();
    window().document().reset(test::compactBench(kPierText), {});
    begin("7");
    ASSERT_TRUE(QTest::qWaitFor([&] { return hunt().isActive(); }, kHuntPatienceMs));
    EXPECT_EQ(bench(), first);
    EXPECT_EQ(bar().line(), QStringLiteral("Hunt number 7. Good luck."));
}

TEST_F(HuntMenuWindow, UnsavedWorkIsAskedAboutFirst) {
    ASSERT_FALSE(window().document().push({"Rename", {SetTitle{"Pier"}}}));
    desk.unsavedAnswer = FileActions::Answer::Cancel;
    begin("3");
    ASSERT_TRUE(QTest::qWaitFor([&] { return desk.unsavedAsked == 1; }, kHuntPatienceMs));
    EXPECT_FALSE(hunt().isActive());
    EXPECT_EQ(bench().title, "Pier");
    desk.unsavedAnswer = FileActions::Answer::Discard;
    begin("3");
    EXPECT_TRUE(QTest::qWaitFor([&] { return hunt().isActive(); }, kHuntPatienceMs));
}

TEST_F(HuntMenuWindow, WhatIsNoNumberAndWhatHidesNothingIsSaid) {
    begin("seven");
    EXPECT_TRUE(bar().line().contains(QStringLiteral("whole number"))) << bar().line().toStdString();
    begin("-1");
    EXPECT_TRUE(bar().line().contains(QStringLiteral("whole number")));
    window().document().reset(test::compactBench("half; PS1 top+3 bottom-3 5; R1 c8 c14 330"), {});
    begin("1");
    EXPECT_TRUE(QTest::qWaitFor([&] { return bar().line().contains(QStringLiteral("no light")); }, kHuntPatienceMs))
        << bar().line().toStdString();
}

TEST_F(HuntWindow, AnotherBenchEndsIt) {
    window().document().reset(test::compactBench(kPierText), {});
    ASSERT_TRUE(desk.waitForAnswer());
    EXPECT_FALSE(hunt().isActive());
    EXPECT_TRUE(window().tray().isVisible());
    EXPECT_TRUE(window().actions().pin->isEnabled());
}

}  // namespace
}  // namespace tiepoint::ui
