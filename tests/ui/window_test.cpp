// The window: it only arranges, follows the theme, scales its furniture, and its shortcuts reach the document.

#include "ui/document/edit_command.h"
#include "ui/theme/theme_choice.h"
#include "ui/window/message_bar.h"
#include "window_bench.h"

#include <QAccessible>
#include <QMenuBar>

#include <gtest/gtest.h>

#include <set>

namespace tiepoint::ui {
namespace {

QRect inWindow(MainWindow& window, QWidget& widget) { return {widget.mapTo(&window, QPoint(0, 0)), widget.size()}; }

TEST(Window, StandsTitleBenchCardsTrayBelowEachOther) {
    WindowBench bench;
    for (const QSize size : {QSize(1280, 720), QSize(1920, 1080), QSize(1000, 900)}) {
        MainWindow& window = bench.window();
        window.resize(size);
        QApplication::processEvents();
        const QRect title = inWindow(window, window.titleLine()), view = inWindow(window, window.view());
        const QRect cards = inWindow(window, window.cards()), tray = inWindow(window, window.tray());
        EXPECT_LE(title.bottom(), view.top());
        EXPECT_LE(view.bottom(), cards.top());
        EXPECT_LE(cards.bottom(), tray.top());
        EXPECT_LE(tray.bottom(), window.height());
        EXPECT_GT(view.height(), window.height() / 2) << "the bench has most of the window";
        EXPECT_EQ(view.width(), window.width()) << "no side panel";
    }
}

TEST(Window, FoldingGivesTheBenchTheWindow) {
    WindowBench bench;
    const int before = bench.window().view().height();
    QTest::keyClick(&bench.window(), Qt::Key_F9);
    EXPECT_FALSE(bench.window().cards().isVisible());
    EXPECT_FALSE(bench.window().tray().isVisible());
    EXPECT_GT(bench.window().view().height(), before + 100);
    QTest::keyClick(&bench.window(), Qt::Key_F9);
    EXPECT_TRUE(bench.window().cards().isVisible());
    EXPECT_EQ(bench.window().view().height(), before);
}

TEST(Window, ScreenReadersFindTheBench) {
    WindowBench bench;
    QAccessibleInterface* node = QAccessible::queryAccessibleInterface(&bench.window().view());
    ASSERT_TRUE(node);
    EXPECT_GT(node->childCount(), 1);
    EXPECT_TRUE(node->child(0)->text(QAccessible::Name).startsWith("Board A"));
}

TEST(Window, NoTwoActionsShareAShortcut) {
    WindowBench bench;
    std::set<QString> seen;
    for (const QAction* action :
         bench.window().actions().newBench->parent()->findChildren<QAction*>(QString(), Qt::FindDirectChildrenOnly))
        for (const QKeySequence& keys : action->shortcuts())
            EXPECT_TRUE(seen.insert(keys.toString()).second) << keys.toString().toStdString();
}

TEST(Window, AnUndoThatFailsIsSaidAndTheKeysGoOnWorking) {
    WindowBench bench;
    MainWindow& window = bench.window();
    ASSERT_FALSE(window.document().push({"Rename", {SetTitle{"Bell"}}}));
    Bench renamed = *window.document().bench();
    renamed.title = "Buoy";
    const Edit impossible{"Remove", {Remove{"R99"}}};
    window.document().undoStack().push(
        new EditCommand(window.document(), {"Name it Buoy", {SetTitle{"Buoy"}}}, Applied{renamed, impossible}, -1));
    QTest::keyClick(&window, Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(window.document().bench()->title, "Buoy");
    auto* bar = window.findChild<MessageBar*>();
    ASSERT_TRUE(bar && bar->isVisible());
    EXPECT_TRUE(bar->line().contains("Name it Buoy") && bar->line().contains("can't be undone"))
        << bar->line().toStdString();
    EXPECT_TRUE(window.actions().undo->isEnabled());
    EXPECT_FALSE(window.actions().redo->isEnabled());
    EXPECT_EQ(window.actions().undo->text(), "&Undo Name it Buoy");
}

TEST(Window, UndoAndRedoByTheirKeys) {
    WindowBench bench;
    MainWindow& window = bench.window();
    ASSERT_FALSE(window.document().push({"Rename", {SetTitle{"Bell"}}}));
    const auto title = [&] { return window.document().bench()->title; };
    QTest::keyClick(&window, Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(title(), makeNewBench().title);
    QTest::keyClick(&window, Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
    EXPECT_EQ(title(), "Bell");
}

TEST(Window, DigitsSwitchTheViewsUnlessAPartIsSelected) {
    WindowBench bench;
    MainWindow& window = bench.window();
    window.files().openEmbedded(QStringLiteral("benches/beacon-lamp.bench.json"));
    window.view().setFocus();
    const bool before = window.view().views().voltage;
    QTest::keyClick(&window.view(), Qt::Key_2);
    EXPECT_NE(window.view().views().voltage, before);
    window.view().setSelection({QStringLiteral("R1")});
    QTest::keyClick(&window.view(), Qt::Key_2);
    EXPECT_NE(window.view().views().voltage, before) << "the digit belongs to the value";
}

TEST(Window, SelectAllDuplicateAndDelete) {
    WindowBench bench;
    MainWindow& window = bench.window();
    window.files().openEmbedded(QStringLiteral("benches/beacon-lamp.bench.json"));
    window.view().setSelection({QStringLiteral("R1")});
    QTest::keyClick(&window, Qt::Key_D, Qt::ControlModifier);
    ASSERT_EQ(window.view().selection(), QStringList{QStringLiteral("R2")});
    EXPECT_EQ(window.document().bench()->findPart("R2")->values, window.document().bench()->findPart("R1")->values);
    QTest::keyClick(&window, Qt::Key_Delete);
    EXPECT_FALSE(window.document().bench()->findPart("R2"));
    QTest::keyClick(&window, Qt::Key_A, Qt::ControlModifier);
    const Bench& now = *window.document().bench();
    EXPECT_EQ(static_cast<std::size_t>(window.view().selection().size()), now.parts.size() + now.jumpers.size());
}

TEST(Window, PartsPassThroughTheClipboard) {
    WindowBench bench;
    MainWindow& window = bench.window();
    window.files().openEmbedded(QStringLiteral("benches/beacon-lamp.bench.json"));
    window.view().setSelection({QStringLiteral("D1")});
    QTest::keyClick(&window, Qt::Key_X, Qt::ControlModifier);
    EXPECT_FALSE(window.document().bench()->findPart("D1"));
    QTest::keyClick(&window, Qt::Key_V, Qt::ControlModifier);
    const Part* pasted = window.document().bench()->findPart("D1");
    ASSERT_TRUE(pasted);
    EXPECT_EQ(toString(*pasted->leads[0]), "A.h16") << "back where it was, since that place is free";
}

TEST(Window, ThemesAreChosenAndRemembered) {
    WindowBench bench;
    bench.window().actions().themeProjector->trigger();
    EXPECT_EQ(bench.window().view().picture().theme->name, ThemeName::Projector);
    bench.restart();
    EXPECT_EQ(bench.window().view().picture().theme->name, ThemeName::Projector);
    EXPECT_TRUE(bench.window().actions().themeProjector->isChecked());
    bench.window().actions().themeSystem->trigger();
    EXPECT_FALSE(chosenTheme());
}

TEST(Window, ADarkSystemMakesADarkBench) {
    WindowBench bench;
    const QPalette bright = QApplication::palette();
    QPalette dark = bright;
    dark.setColor(QPalette::Window, Qt::black);
    dark.setColor(QPalette::WindowText, Qt::white);
    QApplication::setPalette(dark);
    QApplication::processEvents();
    EXPECT_EQ(bench.window().view().picture().theme->name, ThemeName::Dark);
    QApplication::setPalette(bright);
    QApplication::processEvents();
    EXPECT_EQ(bench.window().view().picture().theme->name, ThemeName::Day);
}

TEST(Window, TheTitleIsRenamedInPlace) {
    WindowBench bench;
    MainWindow& window = bench.window();
    window.titleLine().beginRename();
    auto* edit = window.titleLine().findChild<QLineEdit*>();
    ASSERT_TRUE(edit && edit->isVisible());
    QTest::keyClicks(edit, QStringLiteral("Tide gauge"));
    QTest::keyClick(edit, Qt::Key_Return);
    EXPECT_EQ(window.document().bench()->title, "Tide gauge");
    EXPECT_EQ(window.titleLine().shownTitle(), QStringLiteral("Tide gauge \u2022"));
}

TEST(Window, MenusHoldEveryActionOnce) {
    WindowBench bench;
    std::set<QAction*> seen;
    std::function<void(const QList<QAction*>&)> walk = [&](const QList<QAction*>& actions) {
        for (QAction* action : actions) {
            if (action->menu()) {
                walk(action->menu()->actions());
            } else if (!action->isSeparator()) {
                EXPECT_TRUE(seen.insert(action).second) << action->text().toStdString();
            }
        }
    };
    walk(bench.window().titleLine().menus().actions());
    for (QAction* action : bench.window().findChildren<QAction*>(QString(), Qt::FindDirectChildrenOnly))
        EXPECT_TRUE(seen.contains(action)) << action->text().toStdString() << " is in no menu";
}

}  // namespace
}  // namespace tiepoint::ui
