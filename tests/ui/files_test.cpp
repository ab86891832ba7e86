// Files: what is saved comes back, damaged files change nothing, and unsaved work is never lost without a question.

#include "core/bench/bench_file.h"
#include "window_bench.h"

#include <QCloseEvent>
#include <QFile>

#include <gtest/gtest.h>

namespace tiepoint::ui {
namespace {

QByteArray contentOf(const QString& path) {
    QFile file(path);
    return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
}

void writeFile(const QString& path, const QByteArray& content) {
    QFile file(path);
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write(content);
}

void renameBench(MainWindow& window, const char* title) {
    ASSERT_FALSE(window.document().push({"Rename", {SetTitle{title}}}));
}

TEST(Files, SavedAndReopenedIsTheSameByteForByte) {
    WindowBench bench;
    MainWindow& window = bench.window();
    window.files().openEmbedded(QStringLiteral("benches/beacon-lamp.bench.json"));
    renameBench(window, "Beacon at the north mole");
    bench.saveAnswer = bench.file("first.bench.json");
    QTest::keyClick(&window, Qt::Key_S, Qt::ControlModifier);
    ASSERT_FALSE(window.document().isModified());
    const QByteArray first = contentOf(bench.saveAnswer);
    EXPECT_EQ(first.toStdString(), writeBench(*window.document().bench()));

    window.files().newBench();
    window.openFile(bench.saveAnswer);
    EXPECT_EQ(window.document().bench()->title, "Beacon at the north mole");
    EXPECT_EQ(window.document().filePath(), bench.saveAnswer);
    bench.saveAnswer = bench.file("second.bench.json");
    window.files().saveAs();
    EXPECT_EQ(contentOf(bench.saveAnswer), first);
}

TEST(Files, SaveAsAddsTheEndingAndTheTitleFollows) {
    WindowBench bench;
    renameBench(bench.window(), "Ferry bell");
    EXPECT_TRUE(bench.window().isWindowModified());
    EXPECT_TRUE(bench.window().titleLine().shownTitle().endsWith(QStringLiteral("\u2022")));
    bench.saveAnswer = bench.file("ferry");
    bench.window().files().saveAs();
    EXPECT_TRUE(QFile::exists(bench.file("ferry.bench.json")));
    EXPECT_FALSE(bench.window().isWindowModified());
    EXPECT_TRUE(bench.window().windowTitle().startsWith(QStringLiteral("ferry.bench.json")));
    EXPECT_EQ(bench.window().titleLine().shownTitle(), QStringLiteral("Ferry bell"));
}

struct Damaged {
    const char* name;
    QByteArray text;
};

TEST(Files, ADamagedFileIsOneLineInTheBarAndChangesNothing) {
    WindowBench bench;
    MainWindow& window = bench.window();
    window.files().openEmbedded(QStringLiteral("benches/lock-gate.bench.json"));
    const auto before = window.document().bench();
    const Damaged cases[] = {
        {"no JSON", "{ \"format\": "},
        {"another format", "{\"format\": \"something\", \"version\": 1}"},
        {"a newer version",
         "{\"format\": \"tiepoint-bench\", \"version\": 99, \"title\": \"\", \"boards\": [], \"parts\": [], "
         "\"jumpers\": []}"},
        {"an unknown kind",
         "{\"format\": \"tiepoint-bench\", \"version\": 1, \"boards\": [], \"parts\": [{\"id\": \"X1\", \"kind\": "
         "\"rudder\"}]}"},
    };
    for (const Damaged& damaged : cases) {
        SCOPED_TRACE(damaged.name);
        const QString path = bench.file("damaged.bench.json");
        writeFile(path, damaged.text);
        window.bar().hide();
        window.openFile(path);
        EXPECT_TRUE(window.bar().isVisible());
        EXPECT_TRUE(window.bar().line().contains(QStringLiteral("damaged.bench.json")));
        EXPECT_FALSE(window.bar().line().contains(QLatin1Char('\n')));
        EXPECT_EQ(window.document().bench(), before);
    }
    window.bar().hide();
    window.openFile(bench.file("not-there.bench.json"));
    EXPECT_TRUE(window.bar().isVisible());
    EXPECT_EQ(window.document().bench(), before);
}

TEST(Files, ClosingAsksAboutUnsavedWork) {
    using Answer = FileActions::Answer;
    struct Case {
        Answer answer;
        bool closes, saves;
    };
    for (const Case& given :
         {Case{Answer::Cancel, false, false}, Case{Answer::Discard, true, false}, Case{Answer::Save, true, true}}) {
        SCOPED_TRACE(static_cast<int>(given.answer));
        WindowBench bench;
        bench.unsavedAnswer = given.answer;
        bench.saveAnswer = bench.file("kept.bench.json");
        renameBench(bench.window(), "Tide gauge");
        bench.window().close();
        EXPECT_EQ(bench.unsavedAsked, 1);
        EXPECT_EQ(!bench.window().isVisible(), given.closes);
        EXPECT_EQ(QFile::exists(bench.saveAnswer), given.saves);
    }
}

TEST(Files, AnUnchangedBenchClosesWithoutAQuestion) {
    WindowBench bench;
    bench.window().close();
    EXPECT_EQ(bench.unsavedAsked, 0);
    EXPECT_FALSE(bench.window().isVisible());
}

TEST(Files, ACancelledQuestionKeepsTheBench) {
    WindowBench bench;
    renameBench(bench.window(), "Tide gauge");
    QTest::keyClick(&bench.window(), Qt::Key_N, Qt::ControlModifier);
    EXPECT_EQ(bench.unsavedAsked, 1);
    EXPECT_EQ(bench.window().document().bench()->title, "Tide gauge");
    bench.unsavedAnswer = FileActions::Answer::Discard;
    QTest::keyClick(&bench.window(), Qt::Key_N, Qt::ControlModifier);
    EXPECT_EQ(bench.window().document().bench()->title, makeNewBench().title);
}

TEST(Files, SavingToAFolderThatIsNotThereSaysSo) {
    WindowBench bench;
    renameBench(bench.window(), "Tide gauge");
    bench.saveAnswer = bench.file("nowhere/at/all.bench.json");
    bench.window().files().save();
    EXPECT_TRUE(bench.window().bar().isVisible());
    EXPECT_TRUE(bench.window().document().isModified());
}

}  // namespace
}  // namespace tiepoint::ui
