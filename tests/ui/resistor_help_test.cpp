// The resistor helper and the drawer in a real window.

#include "core/snapshot/readings.h"
#include "support/compact_bench.h"
#include "window_bench.h"

#include <QSettings>

#include <gtest/gtest.h>

namespace tiepoint::ui {
namespace {

class ResistorHelpTest : public testing::Test {
protected:
    ResistorHelpTest() { QSettings().remove(QStringLiteral("drawer")); }
    ~ResistorHelpTest() override { QSettings().remove(QStringLiteral("drawer")); }

    MainWindow& window() { return desk.window(); }
    ResistorHelp& help() { return window().resistorHelp(); }
    ResistorCard& card() { return help().card(); }
    void open(const char* name) {
        window().files().openEmbedded(QStringLiteral("benches/%1.bench.json").arg(QString::fromLatin1(name)));
        ASSERT_TRUE(desk.waitForAnswer());
    }
    double ohms(const char* id) {
        const Part& part = *window().document().bench()->findPart(id);
        return part.value(part.kind->valueIndex("resistance"));
    }
    /// Asks, and waits for the card.
    void ask() {
        help().helpAction()->trigger();
        ASSERT_TRUE(WindowBench::waitFor([this] { return card().isVisible(); }));
    }
    bool waitForPlace() {
        return WindowBench::waitFor([this] { return card().putButton()->isEnabled(); });
    }
    static void type(ValueField& field, const char* text) {
        field.takeKeyboard();
        QTest::keyClicks(QApplication::focusWidget(), QString::fromLatin1(text));
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
    }

    WindowBench desk;
};

TEST_F(ResistorHelpTest, ReckonsFromTheBenchAndPutsItInAtOneClick) {
    open("beacon-lamp");
    ask();
    EXPECT_FALSE(window().cards().legend().isVisible());
    EXPECT_EQ(card().question().supplyVolt, 5);
    type(*card().currentField(), "5mA");
    ASSERT_NE(card().choice(), nullptr);
    EXPECT_EQ(card().choice()->ohm, 680) << "(5 V - 1.87 V) / 5 mA = 626 ohm";
    ASSERT_TRUE(waitForPlace());
    EXPECT_EQ(card().putButton()->text(), QStringLiteral("Take 680 Ω for R1"));
    const int before = window().document().undoStack().count();
    WindowBench::click(card().putButton());
    EXPECT_EQ(ohms("R1"), 680);
    EXPECT_EQ(window().document().undoStack().count(), before + 1);
    window().document().undoStack().undo();
    EXPECT_NE(ohms("R1"), 680);
    WindowBench::click(card().closeButton());
    EXPECT_TRUE(window().cards().legend().isVisible());
}

/// Each light is driven by the supply of its own loop, and by what stands in a row in it.
TEST_F(ResistorHelpTest, OfTwoSuppliesTakesTheOneThatDrivesThePart) {
    window().document().reset(
        test::compactBench(
            "half; PS1 top+3 top-3 5; PS2 bottom+3 bottom-3 12; R1 c5 c10 330; D1 e10 e11 red; W1 a5 top+8 "
            "red; W2 a11 top-9 black; R2 h15 h20 1000; D2 f20 f21 green; W3 j15 bottom+14 red; W4 j21 "
            "bottom-18 black"),
        {});
    ASSERT_TRUE(desk.waitForAnswer());
    for (const auto& [part, volt] : {std::pair{"D1", 5.0}, std::pair{"D2", 12.0}, std::pair{"R2", 12.0}}) {
        window().view().setSelection({QString::fromLatin1(part)});
        help().helpAction()->trigger();
        ASSERT_TRUE(WindowBench::waitFor([&] { return card().isVisible() && card().question().supplyVolt == volt; }))
            << part << ": " << card().question().supplyVolt;
        WindowBench::click(card().closeButton());
    }
}

TEST_F(ResistorHelpTest, AnswersComeBesideAndOnlyForTheBenchAsItIs) {
    open("beacon-lamp");
    ask();
    type(*card().currentField(), "5mA");
    ASSERT_TRUE(waitForPlace());
    ASSERT_FALSE(window().document().push({"Rename", {SetTitle{"Lamp"}}}));
    QApplication::processEvents();
    ASSERT_TRUE(waitForPlace()) << "found anew for the bench as it is now";
    WindowBench::click(card().putButton());
    EXPECT_EQ(ohms("R1"), 680);
}

TEST_F(ResistorHelpTest, SaysInWordsWhyThereIsNone) {
    open("beacon-lamp");
    ask();
    type(*card().supplyField(), "1.5");
    EXPECT_EQ(card().choice(), nullptr);
    EXPECT_TRUE(card().refusal().contains(QStringLiteral("the supply gives 1.50 V"))) << card().refusal().toStdString();
    EXPECT_FALSE(card().putButton()->isEnabled());
}

TEST_F(ResistorHelpTest, TheDrawerIsRememberedAndTakenFrom) {
    open("beacon-lamp");
    ask();
    help().drawerAction()->trigger();
    DrawerCard& drawer = help().drawerCard();
    ASSERT_TRUE(drawer.isVisible());
    EXPECT_FALSE(card().isVisible());
    drawer.list()->setFocus();
    QTest::keyClicks(drawer.list(), QStringLiteral("100 1k 10k"));
    QTest::keyClick(drawer.list(), Qt::Key_Return);
    EXPECT_EQ(card().question().drawer, ResistorDrawer({100, 1e3, 10e3}));
    EXPECT_EQ(card().choice()->ohm, 1e3);
    EXPECT_EQ(MyDrawer().drawer(), ResistorDrawer({100, 1e3, 10e3})) << "the next start";
    drawer.list()->selectAll();
    QTest::keyClicks(drawer.list(), QStringLiteral("100 what"));
    QTest::keyClick(drawer.list(), Qt::Key_Return);
    EXPECT_TRUE(drawer.refusal().contains(QStringLiteral("what")));
    EXPECT_EQ(MyDrawer().drawer(), ResistorDrawer({100, 1e3, 10e3}));
    WindowBench::click(drawer.everythingButton());
    EXPECT_TRUE(MyDrawer().drawer().isEverything());
}

}  // namespace
}  // namespace tiepoint::ui
