// Text from outside in every place of a window that would read more into it: it stays text. Titles, notes, names of files and of members
// hold markup, ampersands, placeholders, controls and marks of direction.

#include "ui/theme/plain_text.h"

#include "core/bench/bench_file.h"
#include "support/build_bench.h"
#include "ui/access/bench_words.h"
#include "ui/window/questions_in_bar.h"
#include "ui/window/start_card.h"
#include "window_bench.h"

#include <QLineEdit>
#include <QTextDocument>

namespace tiepoint::ui {
namespace {

const QString kEvil = QStringLiteral("<img src=x> & <b>b</b> [*] \x1b[31m\u009b\u202e");
const QString kEvilShown = QStringLiteral("<img src=x> & <b>b</b> [*] \\u001b[31m\\u009b\\u202e");

/// What a person sees of a tool tip.
QString seenTip(const QString& tip) {
    if (!Qt::mightBeRichText(tip)) return tip;
    QTextDocument document;
    document.setHtml(tip);
    return document.toPlainText();
}

/// A file whose name, title, note and unknown member are all evil.
QString evilFile(WindowBench& bench) {
    Bench evil = test::BenchBuilder().title(kEvil.toStdString()).board("A", "half").build();
    evil.notes = {{"N1", test::holeAt("A.c5"), kEvil.toStdString(), {}}};
    evil.extras = {{kEvil.toStdString(), "1"}};
    const QString path = bench.file("x") + QStringLiteral("<b>&y[*].bench.json");
    EXPECT_TRUE(writeBenchFile(evil, path.toStdString()).ok());
    return path;
}

TEST(PlainText, EachHelperKeepsTheTextAsItIsSeen) {
    EXPECT_EQ(plainText(kEvil), kEvilShown);
    EXPECT_EQ(plainLines("a\nb\x1b"), QStringLiteral("a\nb\\u001b"));
    EXPECT_EQ(menuWords(QStringLiteral("A & B\n")), QStringLiteral("A && B\\u000a"));
    EXPECT_EQ(titleWords(QStringLiteral("a[*]b[*]")), QStringLiteral("a[*][*]b[*][*]"));
    EXPECT_FALSE(Qt::mightBeRichText(plainTip(QStringLiteral("R1 & R2"))));
    for (const QString& text : {kEvil, QStringLiteral("<b>x</b>"), QStringLiteral("5 < 6 & 7 > 6")})
        EXPECT_EQ(seenTip(plainTip(text)), plainText(text));
    EXPECT_EQ(fileNameFor("../../etc/passwd \x1b", QStringLiteral(".svg")), QStringLiteral("------etc-passwd--.svg"));
    EXPECT_EQ(fileNameFor("", QStringLiteral(".svg")), QStringLiteral("bench.svg"));
    EXPECT_LT(fileNameFor(std::string(5000, 'x'), QStringLiteral(".bench.json")).size(), 100);
}

TEST(PlainText, TheWindowsTitleShowsTheNameOfTheFile) {
    WindowBench bench;
    bench.window().files().openFile(evilFile(bench));
    ASSERT_FALSE(bench.window().document().filePath().isEmpty());
    EXPECT_EQ(bench.window().windowTitle(), QStringLiteral("x<b>&y[*][*].bench.json[*] \u2013 Tiepoint"));
    // Without a file it is the bench's own title.
    Bench titled = test::BenchBuilder().title(kEvil.toStdString()).board("A", "half").build();
    bench.window().document().reset(titled, {});
    EXPECT_TRUE(bench.window().windowTitle().startsWith(titleWords(kEvil)));
}

TEST(PlainText, AWarningStandsInTheBarAsText) {
    WindowBench bench;
    bench.window().files().openFile(evilFile(bench));
    const auto* bar = bench.window().findChild<MessageBar*>();
    ASSERT_TRUE(bar && bar->isVisible());
    const auto* label = bar->findChild<QLabel*>();
    EXPECT_EQ(label->textFormat(), Qt::PlainText);
    EXPECT_TRUE(bar->accessibleName().contains(QStringLiteral("<img src=x> & <b>b</b> [*] \\u001b[31m\\u009b\\u202e")))
        << bar->accessibleName().toStdString();
    EXPECT_EQ(seenTip(label->toolTip()), bar->accessibleName());
}

TEST(PlainText, RecentFilesKeepTheirAmpersands) {
    WindowBench bench;
    const QString path = evilFile(bench);
    bench.window().files().openFile(path);
    QMenu* recent = nullptr;
    for (QMenu* menu : bench.window().findChildren<QMenu*>())
        if (menu->title().contains(QStringLiteral("recent"))) recent = menu;
    ASSERT_TRUE(recent);
    Q_EMIT recent->aboutToShow();
    ASSERT_FALSE(recent->actions().isEmpty());
    const QAction* first = recent->actions().front();
    EXPECT_EQ(first->text(), QStringLiteral("&1  x<b>&&y[*].bench.json"));
    EXPECT_EQ(seenTip(first->toolTip()), path);
}

TEST(PlainText, QuestionsQuoteTheTitleAsText) {
    WindowBench bench;
    MessageBar& bar = bench.window().bar();
    const FileActions::Asker asker = questionsInBar(bar, &bench.window());
    const auto asName = [](QString text) { return text.remove(QLatin1Char('/')); };  // no file's name holds a slash
    const auto quotes = [&] {
        EXPECT_TRUE(bar.isAsking());
        EXPECT_TRUE(asName(bar.line()).contains(asName(kEvilShown))) << bar.line().toStdString();
        for (const QLabel* label : bar.findChildren<QLabel*>()) EXPECT_EQ(label->textFormat(), Qt::PlainText);
        bar.cancelQuestions();
    };
    asker.unsaved(kEvil, [](FileActions::Answer) {});
    quotes();
    asker.changed(QStringLiteral("/tmp/") + asName(kEvil), [](FileActions::Conflict) {});
    quotes();
    asker.replace(QStringLiteral("/tmp/") + asName(kEvil), [](bool) {});
    quotes();
}

TEST(PlainText, WhatCanBeUndoneIsNoMenuKeyAndOneLine) {
    WindowBench bench;
    const auto refused = bench.window().document().push({"A & B\n<b>\x1b", {SetTitle{"Pier"}}});
    ASSERT_FALSE(refused);
    EXPECT_EQ(bench.window().document().undoStack().text(0), QStringLiteral("A & B\\u000a<b>\\u001b"));
    EXPECT_EQ(bench.window().actions().undo->text(), QStringLiteral("&Undo A && B\\u000a<b>\\u001b"));
    bench.window().document().undoStack().undo();
    EXPECT_EQ(bench.window().actions().redo->text(), QStringLiteral("&Redo A && B\\u000a<b>\\u001b"));
}

TEST(PlainText, ScreenReadersHearTheTitleAndTheNote) {
    Bench evil = test::BenchBuilder().title(kEvil.toStdString()).board("A", "half").build();
    evil.notes = {{"N1", test::holeAt("A.c5"), kEvil.toStdString(), {}}};
    WindowBench bench;
    bench.window().document().reset(evil, {});
    ASSERT_TRUE(bench.waitForAnswer());
    EXPECT_TRUE(benchWords(bench.window().view().picture()).startsWith(kEvilShown));
    EXPECT_TRUE(noteWords(bench.window().view().picture(), 0).endsWith(kEvilShown));
}

TEST(PlainText, AnUntouchedTitleStaysAsItIs) {
    WindowBench bench;
    const std::string title = " " + kEvil.toStdString() + " ";
    bench.window().document().reset(test::BenchBuilder().title(title).board("A", "half").build(), {});
    bench.window().actions().rename->trigger();
    QLineEdit* field = nullptr;
    for (QLineEdit* each : bench.window().findChildren<QLineEdit*>())
        if (each->accessibleName() == QStringLiteral("Title of the bench")) field = each;
    ASSERT_TRUE(field && field->isVisible());
    QTest::keyClick(field, Qt::Key_Return);
    EXPECT_EQ(bench.window().document().bench()->title, title);
    EXPECT_FALSE(bench.window().document().isModified());
}

TEST(PlainText, WorkLeftBehindIsNamedAsText) {
    QWidget stage;
    Recovery left;
    left.sourcePath = QStringLiteral("/tmp/") + kEvil;
    left.savedAt = QDateTime::currentDateTime();
    const StartCard card({left}, {}, &stage);
    EXPECT_TRUE(card.recoveryWords().contains(kEvilShown)) << card.recoveryWords().toStdString();
}

TEST(PlainText, APictureIsNamedAfterTheTitleInItsOwnFolder) {
    WindowBench bench;
    bench.window().document().reset(test::BenchBuilder().title("../up & away\x1b").board("A", "half").build(), {});
    QString suggested;
    bench.window().tools().pictures().setAskPath(
        [&](const QString& suggestion, const PictureActions::GivePath&) { suggested = suggestion; });
    QTest::keyClick(&bench.window(), Qt::Key_E, Qt::ControlModifier);
    EXPECT_EQ(suggested, QStringLiteral("---up---away-.svg"));
}

}  // namespace
}  // namespace tiepoint::ui
