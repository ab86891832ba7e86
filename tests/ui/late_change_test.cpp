// A file that changes on the disk or is taken away, before and after a question about it is answered.

#include "late_answers.h"

#include <QFile>

namespace tiepoint::ui {
namespace {

class LateChange : public LateAnswers {
protected:
    LateChange() : path(write("mole.bench.json", "As read")) {
        window().openFile(path);
        edit("Mine");
    }
    void changeAndTakeThatOne() {
        write("mole.bench.json", "Someone else's");
        ASSERT_TRUE(WindowBench::waitFor([&] { return window().bar().isVisible(); }));
        WindowBench::click(window().bar().buttons()[0]);
    }
    QString path;
};

TEST_F(LateChange, TakeThatOneAsksBeforeUnsavedEditsGo) {
    changeAndTakeThatOne();
    ASSERT_TRUE(late.waits(Kind::Changed));
    EXPECT_EQ(title(), "Mine");
    EXPECT_TRUE(isKept());
    late.changed(Conflict::Cancel);
    EXPECT_EQ(title(), "Mine");
    EXPECT_TRUE(document().isModified());
    EXPECT_TRUE(isKept());
    EXPECT_EQ(titleInFile(path), "Someone else's");
}

TEST_F(LateChange, TheOneOnTheDiskIsTakenWhenThatIsTheAnswer) {
    changeAndTakeThatOne();
    late.changed(Conflict::Reload);
    EXPECT_EQ(title(), "Someone else's");
    EXPECT_FALSE(document().isModified());
}

TEST_F(LateChange, YetAnotherChangeIsAskedAboutAnew) {
    write("mole.bench.json", "Second");
    QTest::keyClick(&window(), Qt::Key_S, Qt::ControlModifier);
    ASSERT_TRUE(late.waits(Kind::Changed));
    write("mole.bench.json", "Third");
    late.changed(Conflict::Overwrite);
    EXPECT_EQ(titleInFile(path), "Third");
    ASSERT_TRUE(late.waits(Kind::Changed));
    late.changed(Conflict::Overwrite);
    EXPECT_EQ(titleInFile(path), "Mine");
}

TEST_F(LateChange, EditsMadeMeanwhileAreAskedAboutToo) {
    changeAndTakeThatOne();
    edit("Mine, and more");
    late.changed(Conflict::Reload);
    EXPECT_EQ(title(), "Mine, and more");
    EXPECT_TRUE(late.waits(Kind::Changed));
}

TEST_F(LateChange, AnOfferOfAFileThatIsNotThisOneAnyMoreDoesNothing) {
    write("mole.bench.json", "Someone else's");
    ASSERT_TRUE(WindowBench::waitFor([&] { return window().bar().isVisible(); }));
    document().setFilePath(bench.file("elsewhere.bench.json"));
    WindowBench::click(window().bar().buttons()[0]);
    EXPECT_EQ(title(), "Mine");
}

TEST_F(LateChange, AChangeRightBehindTheOwnSavingIsSeen) {
    QTest::keyClick(&window(), Qt::Key_S, Qt::ControlModifier);
    write("mole.bench.json", "Someone else's");
    edit("Mine again");
    QTest::keyClick(&window(), Qt::Key_S, Qt::ControlModifier);
    EXPECT_TRUE(late.waits(Kind::Changed));
    EXPECT_EQ(titleInFile(path), "Someone else's");
}

// --- a file that is taken away ---

TEST_F(LateAnswers, AFileThatIsTakenAwayLeavesTheBenchUnsaved) {
    const QString path = write("mole.bench.json", "As read");
    window().openFile(path);
    ASSERT_TRUE(QFile::remove(path));
    ASSERT_TRUE(WindowBench::waitFor([&] { return window().bar().isVisible(); }));
    EXPECT_TRUE(window().bar().line().contains(QStringLiteral("gone from the disk")));
    EXPECT_TRUE(document().isModified());
    EXPECT_TRUE(isKept());
    WindowBench::click(window().bar().buttons()[0]);
    EXPECT_EQ(titleInFile(path), "As read");
    EXPECT_FALSE(document().isModified());
}

TEST_F(LateAnswers, ClosingAsksAtOnceWhenTheFileIsGone) {
    const QString path = write("mole.bench.json", "As read");
    window().openFile(path);
    ASSERT_TRUE(QFile::remove(path));
    window().close();
    EXPECT_TRUE(window().isVisible());
    ASSERT_TRUE(late.waits(Kind::Unsaved));
    late.unsaved(Answer::Save);
    EXPECT_FALSE(window().isVisible());
    EXPECT_EQ(titleInFile(path), "As read");
}

TEST_F(LateAnswers, AFileThatIsPutInPlaceAnewIsNotMissed) {
    const QString path = write("mole.bench.json", "As read");
    window().openFile(path);
    ASSERT_TRUE(QFile::remove(path));
    QTest::qWait(FileGuard::kPatienceMs / 4);
    write("mole.bench.json", "As read");
    QTest::qWait(2 * FileGuard::kPatienceMs);
    EXPECT_FALSE(document().isModified());
    EXPECT_FALSE(window().bar().isVisible()) << window().bar().line().toStdString();
}

}  // namespace
}  // namespace tiepoint::ui
