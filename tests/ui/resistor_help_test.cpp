// The resistor helper and the drawer in a real window.

#include "core/snapshot/readings.h"
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
    static void type(ValueField& field, const char* text) {
        field.takeKeyboard();
        QTest::keyClicks(QApplication::focusWidget(), QString::fromLatin1(text));
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
    }

    WindowBench desk;
};

TEST_F(ResistorHelpTest, ReckonsFromTheBenchAndPutsItInAtOneClick) {
    open("beacon-lamp");
    help().helpAction()->trigger();
    ASSERT_TRUE(card().isVisible());
    EXPECT_FALSE(window().cards().legend().isVisible());
    EXPECT_EQ(card().question().supplyVolt, 5);
    type(*card().currentField(), "5mA");
    ASSERT_NE(card().choice(), nullptr);
    EXPECT_EQ(card().choice()->ohm, 680) << "(5 V - 1.87 V) / 5 mA = 626 ohm";
    ASSERT_TRUE(card().putKey()->isEnabled());
    EXPECT_EQ(card().putKey()->text(), QStringLiteral("Take 680 Ω for R1"));
    const int before = window().document().undoStack().count();
    WindowBench::click(card().putKey());
    EXPECT_EQ(ohms("R1"), 680);
    EXPECT_EQ(window().document().undoStack().count(), before + 1);
    window().document().undoStack().undo();
    EXPECT_NE(ohms("R1"), 680);
    WindowBench::click(card().closeKey());
    EXPECT_TRUE(window().cards().legend().isVisible());
}

TEST_F(ResistorHelpTest, SaysInWordsWhyThereIsNone) {
    open("beacon-lamp");
    help().helpAction()->trigger();
    type(*card().supplyField(), "1.5");
    EXPECT_EQ(card().choice(), nullptr);
    EXPECT_TRUE(card().refusal().contains(QStringLiteral("the supply gives 1.50 V"))) << card().refusal().toStdString();
    EXPECT_FALSE(card().putKey()->isEnabled());
}

TEST_F(ResistorHelpTest, TheDrawerIsRememberedAndTakenFrom) {
    open("beacon-lamp");
    help().helpAction()->trigger();
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
    WindowBench::click(drawer.everythingKey());
    EXPECT_TRUE(MyDrawer().drawer().isEverything());
}

}  // namespace
}  // namespace tiepoint::ui
