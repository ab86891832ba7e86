// Two windows on one file, and files that change on the disk: said, asked, never overwritten unseen.

#include "core/bench/bench_file.h"
#include "window_bench.h"

#include <QFile>

namespace tiepoint::ui {
namespace {

Bench titled(const char* title) {
    Bench bench = makeNewBench();
    bench.title = title;
    return bench;
}

class FileGuardTest : public testing::Test {
protected:
    FileGuardTest() : path(bench.file("mole.bench.json")) {
        EXPECT_TRUE(writeBenchFile(titled("As read"), path.toStdString()).ok());
        bench.window().openFile(path);
    }
    void someoneElseWrites() { EXPECT_TRUE(writeBenchFile(titled("Someone else's"), path.toStdString()).ok()); }
    std::string onDisk() const { return readBenchFile(path.toStdString())->bench.title; }
    void edit() { ASSERT_FALSE(bench.window().document().push({"Rename", {SetTitle{"Mine"}}})); }

    WindowBench bench;
    QString path;
};

TEST_F(FileGuardTest, TheSecondWindowSaysSo) {
    EXPECT_FALSE(bench.window().guard().isOpenElsewhere());
    MainWindow second(bench.recoveryFolder());
    second.show();
    second.openFile(path);
    EXPECT_TRUE(WindowBench::waitFor([&] { return second.bar().isVisible(); }));
    EXPECT_TRUE(second.bar().line().contains(QStringLiteral("another window"))) << second.bar().line().toStdString();
    EXPECT_FALSE(bench.window().bar().isVisible()) << "the first has nothing to say";
}

TEST_F(FileGuardTest, ALinkIsTheSameFile) {
    const QString link = bench.file("link.bench.json");
    ASSERT_TRUE(QFile::link(path, link));
    MainWindow second(bench.recoveryFolder());
    second.openFile(link);
    EXPECT_TRUE(second.guard().isOpenElsewhere());
}

TEST_F(FileGuardTest, ClosedInOneItIsFreeForAnother) {
    bench.window().files().newBench();
    MainWindow second(bench.recoveryFolder());
    second.openFile(path);
    EXPECT_FALSE(second.guard().isOpenElsewhere());
}

TEST_F(FileGuardTest, AChangeOnTheDiskIsSaidAndCanBeTaken) {
    someoneElseWrites();
    ASSERT_TRUE(WindowBench::waitFor([&] { return bench.window().bar().isVisible(); }));
    EXPECT_TRUE(bench.window().bar().line().contains(QStringLiteral("changed on the disk")));
    WindowBench::click(bench.window().bar().buttons()[0]);
    EXPECT_EQ(bench.window().document().bench()->title, "Someone else's");
    EXPECT_FALSE(bench.window().document().isModified());
}

TEST_F(FileGuardTest, SavingOverAChangeIsAsked) {
    struct Case {
        FileActions::Conflict answer;
        const char *onDisk, *here;
    };
    using enum FileActions::Conflict;
    for (const Case& given : {Case{Cancel, "Someone else's", "Mine"}, Case{Reload, "Someone else's", "Someone else's"},
                              Case{Overwrite, "Mine", "Mine"}}) {
        SCOPED_TRACE(given.onDisk);
        EXPECT_TRUE(writeBenchFile(titled("As read"), path.toStdString()).ok());
        bench.unsavedAnswer = FileActions::Answer::Discard;
        bench.window().openFile(path);
        edit();
        someoneElseWrites();
        bench.conflictAsked = 0;
        bench.conflictAnswer = given.answer;
        QTest::keyClick(&bench.window(), Qt::Key_S, Qt::ControlModifier);
        EXPECT_EQ(bench.conflictAsked, 1);
        EXPECT_EQ(onDisk(), given.onDisk);
        EXPECT_EQ(bench.window().document().bench()->title, given.here);
    }
}

TEST_F(FileGuardTest, OnesOwnSavingIsNoChange) {
    for (int i = 0; i < 3; ++i) {
        ASSERT_FALSE(bench.window().document().push({"Rename", {SetTitle{"Round " + std::to_string(i)}}}));
        QTest::keyClick(&bench.window(), Qt::Key_S, Qt::ControlModifier);
        QTest::qWait(30);
        EXPECT_FALSE(bench.window().bar().isVisible()) << bench.window().bar().line().toStdString();
        EXPECT_EQ(bench.conflictAsked, 0);
    }
    EXPECT_EQ(onDisk(), "Round 2");
}

TEST_F(FileGuardTest, AFileThatWasTakenAwayIsSavedAnew) {
    edit();
    ASSERT_TRUE(QFile::remove(path));
    QTest::keyClick(&bench.window(), Qt::Key_S, Qt::ControlModifier);
    EXPECT_EQ(bench.conflictAsked, 0);
    EXPECT_EQ(onDisk(), "Mine");
}

}  // namespace
}  // namespace tiepoint::ui
