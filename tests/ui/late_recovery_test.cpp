// What a window that went down left behind, recovered while a question stands or after it was answered late.

#include "late_answers.h"

#include <QDir>
#include <QFile>

namespace tiepoint::ui {
namespace {

class LateRecovery : public LateAnswers {
protected:
    LateRecovery() : source(write("mole.bench.json", "Before")) { leave(writeBench(namedBench("Left behind"))); }
    void leave(const std::string& text) {
        QDir().mkpath(bench.recoveryFolder());
        copy = bench.recoveryFolder() + QStringLiteral("/left-behind.bench.json");
        put(copy, text);
        put(bench.recoveryFolder() + QStringLiteral("/left-behind.source"),
            "digest: " + FileGuard::digestOfFile(source).toHex().toStdString() + "\n" + source.toStdString());
    }
    static void put(const QString& path, const std::string& text) {
        QFile file(path);
        ASSERT_TRUE(file.open(QIODevice::WriteOnly));
        file.write(text.data(), static_cast<qint64>(text.size()));
    }
    void recover() {
        window().showStartCard();
        WindowBench::click(window().startCard()->recoverButton());
    }

    QString source, copy;
};

TEST_F(LateRecovery, BeforeTheAnswerBothCopiesStand) {
    edit("Mine");
    recover();
    ASSERT_TRUE(late.waits(Kind::Unsaved));
    QTest::qWait(50);
    EXPECT_EQ(titleInFile(copy), "Left behind");
    EXPECT_TRUE(isKept());
    EXPECT_EQ(title(), "Mine");
}

TEST_F(LateRecovery, CancelLeavesBoth) {
    edit("Mine");
    recover();
    late.unsaved(Answer::Cancel);
    EXPECT_EQ(titleInFile(copy), "Left behind");
    EXPECT_EQ(title(), "Mine");
    EXPECT_TRUE(document().isModified());
    EXPECT_TRUE(isKept());
}

TEST_F(LateRecovery, DiscardGivesUpTheWorkOfThisWindowOnly) {
    edit("Mine");
    recover();
    late.unsaved(Answer::Discard);
    EXPECT_EQ(title(), "Left behind");
    EXPECT_TRUE(document().isModified());
    EXPECT_EQ(document().filePath(), source);
    EXPECT_TRUE(isKept());
    EXPECT_FALSE(QFile::exists(copy)) << "it stands in this window's copy now";
}

TEST_F(LateRecovery, SaveSavesFirst) {
    edit("Mine");
    recover();
    late.unsaved(Answer::Save);
    ASSERT_TRUE(late.waits(Kind::SavePath));
    EXPECT_EQ(titleInFile(copy), "Left behind");
    late.path(bench.file("mine.bench.json"));
    EXPECT_EQ(titleInFile(bench.file("mine.bench.json")), "Mine");
    EXPECT_EQ(title(), "Left behind");
    EXPECT_TRUE(isKept());
    EXPECT_FALSE(QFile::exists(copy));
}

TEST_F(LateRecovery, NowhereToSaveIsLikeCancel) {
    edit("Mine");
    recover();
    late.unsaved(Answer::Save);
    late.path({});
    EXPECT_EQ(title(), "Mine");
    EXPECT_TRUE(isKept());
    EXPECT_EQ(titleInFile(copy), "Left behind");
}

TEST_F(LateRecovery, ACopyThatCanNotBeReadStays) {
    leave("{ \"format\": ");
    recover();
    EXPECT_TRUE(window().bar().isVisible());
    EXPECT_TRUE(window().bar().line().contains(QStringLiteral("left-behind"))) << window().bar().line().toStdString();
    EXPECT_TRUE(QFile::exists(copy));
    EXPECT_TRUE(QFile::exists(bench.recoveryFolder() + QStringLiteral("/left-behind.source")));
}

TEST_F(LateRecovery, ACopyStaysWhereTheOwnOneCanNotBeWritten) {
    const QString own = window().autosave().copyPath();
    ASSERT_TRUE(QDir().mkpath(own)) << "a folder in its place";
    recover();
    EXPECT_EQ(title(), "Left behind");
    EXPECT_EQ(titleInFile(copy), "Left behind");
}

TEST_F(LateRecovery, AFileThatChangedSinceIsAskedAbout) {
    write("mole.bench.json", "Someone else's");
    recover();
    ASSERT_EQ(title(), "Left behind");
    EXPECT_TRUE(window().bar().isVisible());
    EXPECT_TRUE(window().bar().line().contains(QStringLiteral("changed on the disk")));
    QTest::keyClick(&window(), Qt::Key_S, Qt::ControlModifier);
    ASSERT_TRUE(late.waits(Kind::Changed));
    EXPECT_EQ(titleInFile(source), "Someone else's");
    late.changed(Conflict::Cancel);
    EXPECT_EQ(titleInFile(source), "Someone else's");
    EXPECT_TRUE(isKept());
    QTest::keyClick(&window(), Qt::Key_S, Qt::ControlModifier);
    late.changed(Conflict::Overwrite);
    EXPECT_EQ(titleInFile(source), "Left behind");
}

TEST_F(LateRecovery, AFileThatIsAsItWasIsNoQuestion) {
    recover();
    QTest::keyClick(&window(), Qt::Key_S, Qt::ControlModifier);
    EXPECT_TRUE(late.asked().empty());
    EXPECT_EQ(titleInFile(source), "Left behind");
}

TEST_F(LateRecovery, WhereNoDigestWasKeptAYoungerFileCountsAsChanged) {
    put(bench.recoveryFolder() + QStringLiteral("/left-behind.source"), source.toStdString());
    QFile file(source);
    ASSERT_TRUE(file.open(QIODevice::ReadWrite));
    ASSERT_TRUE(file.setFileTime(QDateTime::currentDateTime().addSecs(60), QFileDevice::FileModificationTime));
    file.close();
    recover();
    ASSERT_EQ(document().filePath(), source);
    QTest::keyClick(&window(), Qt::Key_S, Qt::ControlModifier);
    EXPECT_TRUE(late.waits(Kind::Changed));
}

TEST_F(LateRecovery, RecoveredAgainAfterACrashItStillKnowsTheFile) {
    write("mole.bench.json", "Someone else's");
    recover();
    window().autosave().finish();
    const auto own = window().autosave().copyPath();
    QFile beside(QString(own).replace(QStringLiteral(".bench.json"), QStringLiteral(".source")));
    ASSERT_TRUE(beside.open(QIODevice::ReadOnly));
    const QByteArray before = FileGuard::digestOf(writeBench(namedBench("Before"))).toHex();
    EXPECT_TRUE(beside.readAll().startsWith("digest: " + before)) << "that of the file it was a later state of";
}

}  // namespace
}  // namespace tiepoint::ui
