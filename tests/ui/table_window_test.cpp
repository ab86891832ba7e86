// What the window does for the table: the Board menu, my drawer in the tray and in the ladder, words for screen readers.

#include "core/edit/boards.h"
#include "support/build_bench.h"
#include "ui/view/bench_marks.h"
#include "ui/view/value_ladder.h"
#include "ui/window/board_menu.h"
#include "window_bench.h"

#include <QAccessible>

namespace tiepoint::ui {
namespace {

class TableWindow : public testing::Test {
protected:
    TableWindow() {
        window().activateWindow();
        window().document().reset(test::BenchBuilder()
                                      .board("A", "half")
                                      .part("PS1", "bench-supply", {{"+", "A.top+3"}, {"-", "A.bottom-3"}})
                                      .jumper("A.top+20", "A.a20")
                                      .part("R1", "resistor", {{"1", "A.c20"}, {"2", "A.c25"}}, {{"resistance", 220}})
                                      .build(),
                                  {});
        window().view().setFocus();
    }
    MainWindow& window() { return bench_.window(); }
    const Bench& bench() { return *window().document().bench(); }
    std::string said() { return window().view().picture().marks.say; }

    /// Triggers the line of the Board menu, or of one of its submenus, that begins so.
    void choose(const QString& beginning) {
        BoardMenu& menu = window().tools().boards();
        Q_EMIT menu.aboutToShow();
        QList<QAction*> lines = menu.actions();
        for (qsizetype i = 0; i < lines.size(); ++i) {
            if (lines[i]->menu()) lines << lines[i]->menu()->actions();
        }
        for (QAction* line : lines) {
            if (line->text().remove(QLatin1Char('&')).startsWith(beginning)) return line->trigger();
        }
        FAIL() << "no line " << beginning.toStdString();
    }

    WindowBench bench_{{1366, 768}};
};

TEST_F(TableWindow, TheMenuDocksToEachSide) {
    choose("Add: half");
    for (const auto& [words, side] : {std::pair{"To the left of board A", Side::Left},
                                      {"Above board A", Side::Above},
                                      {"To the right of board A", Side::Right},
                                      {"Below board A", Side::Below}}) {
        choose(QString::fromLatin1(words));
        const Board& b = *bench().findBoard("B");
        const Point at = dockedAt(*bench().findBoard("A"), side, *b.kind);
        EXPECT_EQ((Point{b.atX, b.atY}), at) << words;
    }
    while (window().document().undoStack().canUndo()) window().document().undoStack().undo();
    EXPECT_EQ(bench().boards.size(), 1u);
}

TEST_F(TableWindow, WhatIsInTheWayIsSaidAtTheBoard) {
    choose("Add: half");
    choose("Add: mini");
    const auto before = window().document().bench();
    // Where the mini board lies the half board can't: the menu says so at the board's place and in the bar.
    const std::string mini = bench().boards[2].id;
    const Board& lies = *bench().findBoard(mini);
    const Point at{lies.atX, lies.atY};
    ASSERT_FALSE(moveBoardEdit(bench(), "B", at).ok());
    choose("Remove board A");
    EXPECT_EQ(window().document().bench(), before);
    EXPECT_NE(said().find("plugged into it"), std::string::npos) << said();
    EXPECT_TRUE(window().bar().isVisible());
}

TEST_F(TableWindow, SplittingTheRailsIsSaidAndUndone) {
    choose("Split the rails of board A");
    EXPECT_EQ(bench().boards[0].rails, Rails::Split);
    EXPECT_NE(said().find("top+ is parted between holes 12 and 13"), std::string::npos) << said();
    choose("Join the rails of board A");
    EXPECT_EQ(bench().boards[0].rails, Rails::Through);
    window().document().undoStack().undo();
    EXPECT_EQ(bench().boards[0].rails, Rails::Split);
    window().document().undoStack().undo();
    EXPECT_EQ(bench().boards[0].rails, Rails::Through);
}

TEST_F(TableWindow, TheMenuPutsABoardIntoTheHand) {
    choose("With the arrow keys");
    EXPECT_TRUE(window().view().isGesturing());
    EXPECT_TRUE(window().view().hasFocus());
    QTest::keyClick(&window().view(), Qt::Key_Down, Qt::ControlModifier);
    QTest::keyClick(&window().view(), Qt::Key_Return);
    EXPECT_EQ(bench().boards[0].atY, 5);
}

TEST_F(TableWindow, MyDrawerFiltersTheTrayAndAllCanBeSeen) {
    Tray& tray = window().tray();
    tray.setDrawer(ResistorDrawer({220, 470, 1000}));
    TrayButton* resistors = nullptr;
    for (TrayButton* button : tray.compartments()) {
        if (button->text() == QStringLiteral("Resistor")) resistors = button;
    }
    ASSERT_TRUE(resistors);
    EXPECT_TRUE(isHeld(resistors->item(), ResistorDrawer({220, 470, 1000}))) << "what a drag takes is at hand";
    WindowBench::click(resistors);
    ASSERT_TRUE(tray.drawer().isVisible());
    EXPECT_EQ(tray.drawer().buttons().size(), 3u);
    ASSERT_TRUE(tray.drawer().offerButton().isVisible());
    WindowBench::click(&tray.drawer().offerButton());
    ASSERT_TRUE(tray.drawer().isVisible());
    EXPECT_GT(tray.drawer().buttons().size(), 8u);
    for (const TrayButton* button : tray.drawer().buttons())
        EXPECT_EQ(button->isPale(), !isHeld(button->item(), ResistorDrawer({220, 470, 1000})))
            << button->text().toStdString();
    WindowBench::click(&tray.drawer().offerButton());
    EXPECT_EQ(tray.drawer().buttons().size(), 3u);
    tray.setDrawer(ResistorDrawer());
    WindowBench::click(resistors);
    EXPECT_FALSE(tray.drawer().offerButton().isVisible()) << "everything is there";
}

TEST_F(TableWindow, AClickInTheTrayPicksUpWhatComesInOneKind) {
    TrayButton* lamp = nullptr;
    for (TrayButton* button : window().tray().compartments()) {
        if (button->text() == QStringLiteral("Lamp")) lamp = button;
    }
    ASSERT_TRUE(lamp);
    WindowBench::click(lamp);
    EXPECT_TRUE(window().view().isGesturing());
    EXPECT_FALSE(window().tray().drawer().isVisible());
    EXPECT_TRUE(lamp->isActive()) << "it shows that its part is in the hand";
    QTest::keyClick(&window().view(), Qt::Key_Escape);
    EXPECT_FALSE(window().view().isGesturing());
    EXPECT_FALSE(lamp->isActive());
}

TEST_F(TableWindow, TheLadderStepsAlongMyDrawer) {
    window().view().setDrawer(ResistorDrawer({220, 470, 1000}));
    window().view().setSelection({"R1"});
    const auto ohms = [this] { return bench().findPart("R1")->value(0); };
    QTest::keyClick(&window().view(), Qt::Key_Plus);
    EXPECT_EQ(ohms(), 470);
    QTest::keyClick(&window().view(), Qt::Key_Plus);
    QTest::keyClick(&window().view(), Qt::Key_Plus);
    EXPECT_EQ(ohms(), 1000) << "there is no larger one";
    QTest::keyClick(&window().view(), Qt::Key_Minus);
    QTest::keyClick(&window().view(), Qt::Key_Minus);
    QTest::keyClick(&window().view(), Qt::Key_Minus);
    EXPECT_EQ(ohms(), 220);
    window().view().setDrawer(ResistorDrawer());
    QTest::keyClick(&window().view(), Qt::Key_Plus);
    EXPECT_NE(ohms(), 470) << "the next of the series";
}

TEST_F(TableWindow, AClickOnACardLeavesTheKeyboardWithTheBoard) {
    window().view().setSelection({"R1"});
    for (QWidget* button : window().cards().findChildren<QToolButton*>()) {
        EXPECT_FALSE(button->focusPolicy() & Qt::ClickFocus) << button->accessibleName().toStdString();
    }
    for (QWidget* words : window().cards().findChildren<QLabel*>()) EXPECT_FALSE(words->focusPolicy() & Qt::ClickFocus);
}

TEST_F(TableWindow, ARefusalIsInTheAccessibleText) {
    window().view().marks().flash("c9 is taken", {10, 10});
    QAccessibleInterface* view = QAccessible::queryAccessibleInterface(&window().view());
    ASSERT_TRUE(view);
    EXPECT_TRUE(view->text(QAccessible::Description).startsWith(QStringLiteral("c9 is taken. ")));
}

TEST_F(TableWindow, ASplitAndADockedBoardAreInTheAccessibleText) {
    choose("Add: half");
    choose("Split the rails of board B");
    QAccessibleInterface* view = QAccessible::queryAccessibleInterface(&window().view());
    QStringList names;
    for (int i = 0; i < view->childCount(); ++i) names << view->child(i)->text(QAccessible::Name);
    EXPECT_TRUE(names.contains(
        QStringLiteral("Board B, half board, 400 tie points, its rails broken in the middle, below board A")))
        << names.join(QLatin1Char('\n')).toStdString();
}

}  // namespace
}  // namespace tiepoint::ui
