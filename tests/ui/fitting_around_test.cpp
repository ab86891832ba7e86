// No text around the cards is cut: the tray, the guide, buttons and menus, the start card, questions and what is typed.

#include "core/bench/bench_file.h"
#include "fitting_desk.h"
#include "ui/document/recovery.h"
#include "ui/view/thing_menu.h"
#include "ui/view/value_ladder.h"
#include "ui/window/questions_in_bar.h"

#include <QContextMenuEvent>
#include <QDir>
#include <QFile>
#include <QFileDialog>

namespace tiepoint::ui {
namespace {

TEST_P(FittingTest, TheTrayAndItsDrawers) {
    for (TrayButton* button : window().tray().compartments()) {
        WindowBench::click(button);
        fits(button->text());
        QTest::keyClick(&window().view(), Qt::Key_Escape);
        window().tray().closeDrawer();
    }
    for (const char* typed : {"r", "4k8", "resistor 1", "5 V", "zzz", "1,000", "red", "100 mA supply"}) {
        window().tray().beginSearch();
        QTest::keyClicks(QApplication::focusWidget(), QString::fromLatin1(typed));
        fits(QString::fromLatin1(typed));
    }
}

TEST_P(FittingTest, TheGuideFromStepToStep) {
    window().actions().firstBuild->trigger();
    ASSERT_TRUE(desk.waitForAnswer());
    const char* const kSteps[] = {"half; PS1 - - 5 off",
                                  "half; PS1 - - 5 off; R1 c8 c14 330",
                                  "half; PS1 - - 5 off; R1 c8 c14 330; D1 e14 f14 red",
                                  "half; PS1 top+3 bottom-3 5 off; R1 c8 c14 330; D1 e14 f14 red; W1 top+7 a8 red",
                                  kTroubled[3],
                                  kTroubled[0],
                                  kTroubled[6]};
    for (const char* text : kSteps) {
        open(text);
        ASSERT_TRUE(window().tools().guide().isVisible());
        fits(QStringLiteral("guide: ") + QString::fromStdString(window().tools().guide().advice().title));
    }
    WindowBench::click(window().tools().guide().pictureButton());
    fits(QStringLiteral("the tap"));
}

TEST_P(FittingTest, TheHistoryTellsLongStepsWhole) {
    for (int i = 0; i < 30; ++i) {
        const std::string name = i % 2 ? "Join column 14 with the minus rail, below, by a jumper" : "Move R1";
        ASSERT_FALSE(window().document().push({name, {SetTitle{"Pier " + std::to_string(i)}}}));
    }
    window().actions().steps->trigger();
    ASSERT_TRUE(window().tools().steps().isVisible());
    fits(QStringLiteral("steps so far"));
}

TEST_P(FittingTest, TheStepsBeforeAndAfterTheyAreTaken) {
    window().actions().steps->trigger();
    ASSERT_TRUE(window().tools().steps().isVisible());
    fits(QStringLiteral("no step yet"));
    open("half; PS1 top+3 bottom-3 5; R1 c8 c14 330; W1 top+7 a14 red");
    Part resistor = *window().document().bench()->findPart("R1");
    resistor.values.front() = 1e9;
    ASSERT_FALSE(window().document().push({"Set R1", {ReplacePart{resistor}}}));
    resistor.leads = {Hole{"A", Line::D, 20}, Hole{"A", Line::D, 26}};
    ASSERT_FALSE(window().document().push({"Move R1 to d20", {ReplacePart{resistor}}}));
    ASSERT_FALSE(window().document().push({"Remove W1", {Remove{"W1"}}}));
    window().document().undoStack().undo();
    fits(QStringLiteral("three steps"));
}

TEST_P(FittingTest, TheKeysAndTheMenuAtEachThing) {
    window().actions().keys->trigger();
    ASSERT_TRUE(window().tools().keys().isVisible());
    fits(QStringLiteral("keys"));
    QTest::keyClicks(QApplication::focusWidget(), QStringLiteral("zzz"));
    ASSERT_TRUE(window().tools().keys().none().isVisible());
    fits(QStringLiteral("no key"));
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Escape);
    open(
        "half; PS1 top+3 bottom-3 5; S1 c14 1; R1 c20 c26 330; D1 e26 f26 red; W1 top+7 a14 red; W2 j26 bottom-23 "
        "black");
    for (const char* id : {"PS1", "S1", "R1", "D1", "W1"}) {
        window().view().setFocus();
        window().view().setSelection({QString::fromLatin1(id)});
        QContextMenuEvent asked(QContextMenuEvent::Keyboard, QPoint(), QPoint());
        QApplication::sendEvent(&window().view(), &asked);
        auto* menu = qobject_cast<ThingMenu*>(QApplication::activePopupWidget());
        ASSERT_TRUE(menu) << id;
        for (QAction* row : menu->actions()) {
            menu->setActiveAction(row);
            for (const QString& wrong : misfitsIn(*menu)) ADD_FAILURE() << id << ": " << wrong.toStdString();
        }
        menu->close();
    }
}

TEST_P(FittingTest, TheStartCardWithWorkThatWasLeftBehind) {
    QDir().mkpath(desk.recoveryFolder());
    ASSERT_TRUE(writeBenchFile(makeNewBench(), (desk.recoveryFolder() + "/left.bench.json").toStdString()).ok());
    window().showStartCard();
    ASSERT_TRUE(window().startCard()->recoverButton()->isVisible());
    fits(QStringLiteral("start"));
}

TEST_P(FittingTest, WhatIsSaidAndAsked) {
    window().actions().cautions->trigger();
    fits(QStringLiteral("cautions"));
    MessageBar& bar = window().bar();
    bar.say(
        MessageBar::Tone::Trouble,
        QStringLiteral("%1: /parts/3/leads/anode, line 812, column 40: \u201cA.e77\u201d is no hole of the board A, "
                       "which has 63 columns")
            .arg(QString(150, QLatin1Char('x'))),
        {{QStringLiteral("Take that one"), [] {}}, {QStringLiteral("Keep this one"), [] {}}});
    fits(QStringLiteral("a long line"));
    bar.dismiss();
    const std::string title =
        "The tide gauge at the end of the long pier, with the lamp of the harbour master beside it";
    ASSERT_FALSE(window().document().push({"Rename", {SetTitle{title}}}));
    const QString file =
        desk.file("a-rather-long-name-of-a-file-that-someone-gave-the-bench-of-the-tide-gauge.bench.json");
    ASSERT_TRUE(writeBenchFile(makeNewBench(), file.toStdString()).ok());
    window().files().setAsker(questionsInBar(bar, &window()));
    window().files().newBench();
    ASSERT_TRUE(bar.isAsking());
    fits(QStringLiteral("unsaved"), Shortened::IfToldElsewhere);
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Escape);
    ASSERT_FALSE(bar.isAsking());
    window().findings().reveal().lockAction()->trigger();
    ASSERT_TRUE(bar.isAsking());
    fits(QStringLiteral("phrase"), Shortened::IfToldElsewhere);
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Escape);
    // Names that are longer than their room are shortened in the middle, and told elsewhere.
    window().document().setFilePath(file);
    fits(QStringLiteral("long names"), Shortened::IfToldElsewhere);
}

TEST_P(FittingTest, WhatIsTypedOverTheBoard) {
    open("half; PS1 top+3 bottom-3 5; R1 c8 c14 330");
    window().view().setSelection({QStringLiteral("R1")});
    window().view().setFocus();
    for (int step = 0; step < 6; ++step) window().view().zoomAt({60, 60}, 1.25);  // no room above or below the boards
    QTest::qWait(200);
    window().bar().say(MessageBar::Tone::Notice, QStringLiteral("The clipboard holds no parts."));
    const auto* ladder = window().view().findChild<ValueLadder*>();
    ASSERT_TRUE(ladder && ladder->isVisible());
    EXPECT_FALSE(ladder->geometry().translated(window().view().pos()).intersects(window().bar().geometry()));
    window().bar().dismiss();
    window().view().fitBench();
    QTest::keyClick(&window().view(), Qt::Key_2);
    fits(QStringLiteral("a value"));
    auto* edit = qobject_cast<QLineEdit*>(QApplication::focusWidget());
    ASSERT_TRUE(edit);
    edit->setText(QStringLiteral("lots"));
    QTest::keyClick(edit, Qt::Key_Return);
    fits(QStringLiteral("a refused value"));
    QTest::keyClick(edit, Qt::Key_Escape);
    window().view().setSelection({});
    window().view().setCursorHole(Hole{"A", Line::A, 20});
    window().actions().note->trigger();
    fits(QStringLiteral("a note"));
}

TEST_P(FittingTest, FileDialoguesAndMenusGrowWithTheWindow) {
    QApplication::setAttribute(Qt::AA_DontUseNativeDialogs);
    window().files().setAsker(questionsInBar(window().bar(), &window()));
    window().files().open();
    auto* dialog = window().findChild<QFileDialog*>();
    ASSERT_TRUE(dialog);
    const ui::Look look = lookFor(theme(std::get<1>(GetParam())), window().size());
    EXPECT_EQ(dialog->font().pixelSize(), look.font(text::kSmall).pixelSize());
    auto* name = dialog->findChild<QLineEdit*>(QStringLiteral("fileNameEdit"));
    ASSERT_TRUE(name);
    EXPECT_EQ(name->fontInfo().pixelSize(), look.font(text::kSmall).pixelSize());
    QTest::keyClick(dialog, Qt::Key_Escape);
    QApplication::setAttribute(Qt::AA_DontUseNativeDialogs, false);
    QMenu* menu = window().titleLine().menus().actions().front()->menu();
    menu->ensurePolished();
    EXPECT_EQ(menu->fontInfo().pixelSize(), look.ipx(text::kSmall));
}

}  // namespace
}  // namespace tiepoint::ui
