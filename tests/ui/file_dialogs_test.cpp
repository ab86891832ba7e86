// The real dialogues of File: what they ask before a file goes, and what they answer when they are put away.

#include "core/bench/bench_file.h"
#include "core/findings/reveal.h"
#include "ui/window/questions_in_bar.h"
#include "window_bench.h"

#include <QFile>
#include <QFileDialog>
#include <QMessageBox>

namespace tiepoint::ui {
namespace {

/// A window that asks by its own dialogues.
class RealDialogs : public testing::Test {
protected:
    RealDialogs() {
        QApplication::setAttribute(Qt::AA_DontUseNativeDialogs);
        window().files().setAsker(questionsInBar(window().bar(), &window()));
    }
    ~RealDialogs() override { QApplication::setAttribute(Qt::AA_DontUseNativeDialogs, false); }

    MainWindow& window() { return bench.window(); }
    QString write(const char* name, const char* title) {
        Bench made = makeNewBench();
        made.title = title;
        EXPECT_TRUE(writeBenchFile(made, bench.file(name).toStdString()).ok());
        return bench.file(name);
    }
    std::string titleIn(const QString& path) { return readBenchFile(path.toStdString())->bench.title; }
    void edit(const char* title) { ASSERT_FALSE(window().document().push({"Rename", {SetTitle{title}}})); }

    /// The dialogue of that kind that stands in the window, or null.
    template <class Dialog>
    Dialog* standing() {
        Dialog* found = nullptr;
        WindowBench::waitFor([&] {
            for (Dialog* each : window().findChildren<Dialog*>()) {
                if (each->isVisible()) found = each;
            }
            return found != nullptr;
        });
        return found;
    }
    void saveAs(const QString& typed) {
        QTest::keyClick(&window(), Qt::Key_S, Qt::ControlModifier | Qt::ShiftModifier);
        auto* dialog = standing<QFileDialog>();
        ASSERT_TRUE(dialog);
        auto* name = dialog->findChild<QLineEdit*>(QStringLiteral("fileNameEdit"));
        ASSERT_TRUE(name);
        name->setText(typed);
        QTest::keyClick(name, Qt::Key_Return);
    }
    MessageBar& bar() { return window().bar(); }
    /// Whether the bar asks; no dialogue of the system's stands beside it.
    bool isAskedInTheBar() {
        return WindowBench::waitFor([this] { return bar().isAsking() && bar().isVisible(); }) &&
               window().findChildren<QMessageBox*>().isEmpty();
    }
    QToolButton* answer(const QString& word) {
        for (QToolButton* button : bar().buttons())
            if (button->text() == word) return button;
        ADD_FAILURE() << "no such answer: " << word.toStdString();
        return bar().buttons().front();
    }
    void press(const QString& word) {
        ASSERT_TRUE(isAskedInTheBar());
        WindowBench::click(answer(word));
    }

    WindowBench bench;
};

TEST_F(RealDialogs, SaveAsWithoutTheEndingAsksBeforeItReplaces) {
    const QString there = write("foo.bench.json", "There already");
    edit("Mine");
    saveAs(bench.file("foo"));
    press(QStringLiteral("Cancel"));
    EXPECT_EQ(titleIn(there), "There already");
    EXPECT_TRUE(window().document().isModified());
    EXPECT_TRUE(WindowBench::waitFor([this] { return !window().files().isAsking(); }));

    saveAs(bench.file("foo"));
    press(QStringLiteral("Replace it"));
    EXPECT_EQ(titleIn(there), "Mine");
    EXPECT_FALSE(window().document().isModified());
}

TEST_F(RealDialogs, ADialogueThatIsPutAwayLeavesRoomForTheNext) {
    for (int i = 0; i < 2; ++i) {
        QTest::keyClick(&window(), Qt::Key_O, Qt::ControlModifier);
        auto* dialog = standing<QFileDialog>();
        ASSERT_TRUE(dialog) << i;
        EXPECT_TRUE(window().files().isAsking());
        QTest::keyClick(dialog, Qt::Key_Escape);
        EXPECT_TRUE(WindowBench::waitFor([this] { return !window().files().isAsking(); }));
    }
    edit("Mine");
    window().close();
    ASSERT_TRUE(isAskedInTheBar());
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Escape);
    EXPECT_TRUE(WindowBench::waitFor([this] { return !window().files().isAsking(); }));
    EXPECT_TRUE(window().isVisible());
}

TEST_F(RealDialogs, ClosingGoesOnWhenTheKeyIsPressed) {
    edit("Mine");
    window().close();
    EXPECT_TRUE(window().isVisible());
    press(QStringLiteral("Discard"));
    EXPECT_TRUE(WindowBench::waitFor([this] { return !window().isVisible(); }));
}

TEST_F(RealDialogs, TakingTheOneOnTheDiskIsAskedInTheWindow) {
    const QString path = write("mole.bench.json", "As read");
    window().openFile(path);
    edit("Mine");
    write("mole.bench.json", "Someone else's");
    ASSERT_TRUE(WindowBench::waitFor([&] { return window().bar().isVisible(); }));
    WindowBench::click(window().bar().buttons()[0]);
    ASSERT_TRUE(isAskedInTheBar());
    EXPECT_TRUE(bar().more().contains(QStringLiteral("gives up the unsaved changes")));
    EXPECT_EQ(window().document().bench()->title, "Mine");
    press(QStringLiteral("Take the one on the disk"));
    EXPECT_EQ(window().document().bench()->title, "Someone else's");
}

TEST_F(RealDialogs, APictureWithoutAnEndingAsksBeforeItReplaces) {
    QFile there(bench.file("lamp.svg"));
    ASSERT_TRUE(there.open(QIODevice::WriteOnly));
    there.write("kept");
    there.close();
    QTest::keyClick(&window(), Qt::Key_E, Qt::ControlModifier);
    auto* dialog = standing<QFileDialog>();
    ASSERT_TRUE(dialog);
    auto* name = dialog->findChild<QLineEdit*>(QStringLiteral("fileNameEdit"));
    ASSERT_TRUE(name);
    name->setText(bench.file("lamp"));
    QTest::keyClick(name, Qt::Key_Return);
    press(QStringLiteral("Cancel"));
    ASSERT_TRUE(there.open(QIODevice::ReadOnly));
    EXPECT_EQ(there.readAll(), QByteArray("kept"));
}

// --- questions in the bar, by the keyboard ---

TEST_F(RealDialogs, EnterGivesTheAnswerThatLosesNothing) {
    edit("Mine");
    window().close();
    ASSERT_TRUE(isAskedInTheBar());
    EXPECT_EQ(QApplication::focusWidget(), answer(QStringLiteral("Save")));
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
    auto* dialog = standing<QFileDialog>();
    ASSERT_TRUE(dialog) << "it has no file yet";
    QTest::keyClick(dialog, Qt::Key_Escape);
    EXPECT_TRUE(window().isVisible());

    const QString there = write("foo.bench.json", "There already");
    saveAs(bench.file("foo"));
    ASSERT_TRUE(isAskedInTheBar());
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Enter);
    EXPECT_EQ(titleIn(there), "There already");
    EXPECT_FALSE(window().files().isAsking());
}

TEST_F(RealDialogs, TabGoesRoundTheAnswersAndEscapeLeadsBack) {
    window().view().setFocus();
    edit("Mine");
    QTest::keyClick(&window(), Qt::Key_N, Qt::ControlModifier);
    ASSERT_TRUE(isAskedInTheBar());
    const auto tab = [](Qt::Key key) { QTest::keyClick(QApplication::focusWidget(), key); };
    for (const char* word : {"Save", "Discard", "Cancel", "Save"}) {
        EXPECT_EQ(QApplication::focusWidget(), answer(QString::fromLatin1(word)));
        tab(Qt::Key_Tab);
    }
    tab(Qt::Key_Backtab);
    EXPECT_EQ(QApplication::focusWidget(), answer(QStringLiteral("Save")));
    tab(Qt::Key_Escape);
    EXPECT_FALSE(bar().isVisible());
    EXPECT_FALSE(window().files().isAsking());
    EXPECT_EQ(QApplication::focusWidget(), &window().view());
    EXPECT_EQ(window().document().bench()->title, "Mine");
}

TEST_F(RealDialogs, EnterOnAnotherAnswerGivesThatOne) {
    edit("Mine");
    QTest::keyClick(&window(), Qt::Key_N, Qt::ControlModifier);
    ASSERT_TRUE(isAskedInTheBar());
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Tab);
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
    EXPECT_EQ(window().document().bench()->title, makeNewBench().title);
}

TEST_F(RealDialogs, ScreenReadersHearTheQuestion) {
    edit("Mine");
    window().close();
    ASSERT_TRUE(isAskedInTheBar());
    EXPECT_TRUE(bar().accessibleName().contains(QStringLiteral("Save the changes of \u201cMine\u201d?")));
    EXPECT_TRUE(bar().accessibleName().contains(bar().more()));
    EXPECT_EQ(QApplication::focusWidget()->accessibleDescription(), bar().accessibleName());
}

TEST_F(RealDialogs, TheBenchCanBeWorkedOnWhileAQuestionStands) {
    edit("Mine");
    QTest::keyClick(&window(), Qt::Key_N, Qt::ControlModifier);
    ASSERT_TRUE(isAskedInTheBar());
    edit("Mine, and more");
    EXPECT_TRUE(bar().isAsking());
    press(QStringLiteral("Discard"));
    EXPECT_EQ(window().document().bench()->title, "Mine, and more") << "more would be lost than was asked about";
    press(QStringLiteral("Discard"));
    EXPECT_EQ(window().document().bench()->title, makeNewBench().title);
}

TEST_F(RealDialogs, WhatIsSaidMeanwhileComesAfterTheAnswer) {
    edit("Mine");
    QTest::keyClick(&window(), Qt::Key_N, Qt::ControlModifier);
    ASSERT_TRUE(isAskedInTheBar());
    const QString question = bar().line();
    bar().say(MessageBar::Tone::Trouble, QStringLiteral("The disk is full."));
    EXPECT_EQ(bar().line(), question);
    bar().dismiss();
    EXPECT_TRUE(bar().isAsking()) << "only a notice can be put away";
    bar().say(MessageBar::Tone::Trouble, QStringLiteral("The disk is full."));
    press(QStringLiteral("Cancel"));
    EXPECT_TRUE(bar().isVisible());
    EXPECT_EQ(bar().line(), QStringLiteral("The disk is full."));
}

TEST_F(RealDialogs, AQuestionAboutABenchThatIsGoneGoesToo) {
    edit("Mine");
    window().files().newBench();
    ASSERT_TRUE(isAskedInTheBar());
    window().document().reset(makeNewBench(), {});
    EXPECT_FALSE(bar().isAsking());
    EXPECT_FALSE(window().files().isAsking());
}

TEST_F(RealDialogs, APassPhraseIsTypedInTheBarAndNotShown) {
    window().findings().reveal().lockAction()->trigger();
    ASSERT_TRUE(isAskedInTheBar());
    EXPECT_EQ(QApplication::focusWidget(), &bar().phrase());
    EXPECT_EQ(bar().phrase().echoMode(), QLineEdit::Password);
    QTest::keyClicks(&bar().phrase(), QStringLiteral("gate 5"));
    QTest::keyClick(&bar().phrase(), Qt::Key_Return);
    EXPECT_TRUE(isLocked(*window().document().bench()));
    EXPECT_TRUE(bar().phrase().text().isEmpty());

    window().findings().reveal().lockAction()->trigger();
    ASSERT_TRUE(isAskedInTheBar());
    QTest::keyClick(&bar().phrase(), Qt::Key_Escape);
    EXPECT_TRUE(isLocked(*window().document().bench()));
}

TEST_F(RealDialogs, QuestionsWaitForEachOther) {
    edit("Mine");
    window().files().newBench();
    ASSERT_TRUE(isAskedInTheBar());
    const QString first = bar().line();
    window().findings().reveal().lockAction()->trigger();
    EXPECT_EQ(bar().line(), first);
    press(QStringLiteral("Cancel"));
    ASSERT_TRUE(isAskedInTheBar());
    EXPECT_TRUE(bar().phrase().isVisible());
    press(QStringLiteral("Cancel"));
    EXPECT_FALSE(bar().isVisible());
}

TEST_F(RealDialogs, ADrawingInTrueSizeIsOfferedOnBothPapers) {
    QTest::keyClick(&window(), Qt::Key_E, Qt::ControlModifier);
    auto* dialog = standing<QFileDialog>();
    ASSERT_TRUE(dialog);
    for (const char* paper : {"Letter", "A4"}) {
        const QStringList kinds = dialog->nameFilters().filter(QLatin1String(paper));
        ASSERT_EQ(kinds.size(), 1) << paper;
        EXPECT_TRUE(kinds.front().endsWith(QStringLiteral("(*.pdf)")));
    }
    dialog->selectNameFilter(dialog->nameFilters().filter(QStringLiteral("Letter")).front());
    auto* name = dialog->findChild<QLineEdit*>(QStringLiteral("fileNameEdit"));
    name->setText(bench.file("sheet"));
    QTest::keyClick(name, Qt::Key_Return);
    QFile sheet(bench.file("sheet.pdf"));
    ASSERT_TRUE(sheet.open(QIODevice::ReadOnly));
    // Letter is 8.5 by 11 inches (ANSI/ASME Y14.1, size A): 612 by 792 points.
    const QByteArray text = sheet.readAll();
    EXPECT_TRUE(text.contains("612") && text.contains("792")) << text.left(2000).toStdString();
    EXPECT_EQ(usualPaper(), Paper::Letter) << "and is remembered";
}

}  // namespace
}  // namespace tiepoint::ui
