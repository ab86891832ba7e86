// Questions whose answers come later, as those of real dialogues do: whatever happens in between, nothing is lost that wasn't given up.

#include "core/bench/bench_file.h"
#include "core/findings/reveal.h"
#include "late_asker.h"
#include "support/compact_bench.h"
#include "window_bench.h"

#include <QDir>
#include <QFile>

namespace tiepoint::ui {
namespace {

using Answer = FileActions::Answer;
using Conflict = FileActions::Conflict;
using Kind = LateAsker::Kind;

Bench namedBench(const char* title) {
    Bench bench = makeNewBench();
    bench.title = title;
    return bench;
}

std::string titleIn(const QString& path) {
    const auto read = readBenchFile(path.toStdString());
    return read ? read->bench.title : read.error().oneLine();
}

/// A window with a changed bench, and someone who answers late.
class LateAnswers : public testing::Test {
protected:
    LateAnswers() { window().files().setAsker(late.files()); }

    MainWindow& window() { return bench.window(); }
    BenchDocument& document() { return window().document(); }
    std::string title() { return document().bench()->title; }
    void edit(const char* title) { ASSERT_FALSE(document().push({"Rename", {SetTitle{title}}})); }
    /// Whether the unsaved work of this window has a copy that holds it.
    bool isKept() { return window().autosave().finish() && titleIn(window().autosave().copyPath()) == title(); }
    QString write(const char* name, const char* title) {
        EXPECT_TRUE(writeBenchFile(namedBench(title), bench.file(name).toStdString()).ok());
        return bench.file(name);
    }

    WindowBench bench;
    LateAsker late;
};

// --- recovering ---

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
        WindowBench::click(window().startCard()->recoverKey());
    }

    QString source, copy;
};

TEST_F(LateRecovery, BeforeTheAnswerBothCopiesStand) {
    edit("Mine");
    recover();
    ASSERT_TRUE(late.waits(Kind::Unsaved));
    QTest::qWait(50);
    EXPECT_EQ(titleIn(copy), "Left behind");
    EXPECT_TRUE(isKept());
    EXPECT_EQ(title(), "Mine");
}

TEST_F(LateRecovery, CancelLeavesBoth) {
    edit("Mine");
    recover();
    late.unsaved(Answer::Cancel);
    EXPECT_EQ(titleIn(copy), "Left behind");
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
    EXPECT_EQ(titleIn(copy), "Left behind");
    late.path(bench.file("mine.bench.json"));
    EXPECT_EQ(titleIn(bench.file("mine.bench.json")), "Mine");
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
    EXPECT_EQ(titleIn(copy), "Left behind");
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
    EXPECT_EQ(titleIn(copy), "Left behind");
}

TEST_F(LateRecovery, AFileThatChangedSinceIsAskedAbout) {
    write("mole.bench.json", "Someone else's");
    recover();
    ASSERT_EQ(title(), "Left behind");
    EXPECT_TRUE(window().bar().isVisible());
    EXPECT_TRUE(window().bar().line().contains(QStringLiteral("changed on the disk")));
    QTest::keyClick(&window(), Qt::Key_S, Qt::ControlModifier);
    ASSERT_TRUE(late.waits(Kind::Changed));
    EXPECT_EQ(titleIn(source), "Someone else's");
    late.changed(Conflict::Cancel);
    EXPECT_EQ(titleIn(source), "Someone else's");
    EXPECT_TRUE(isKept());
    QTest::keyClick(&window(), Qt::Key_S, Qt::ControlModifier);
    late.changed(Conflict::Overwrite);
    EXPECT_EQ(titleIn(source), "Left behind");
}

TEST_F(LateRecovery, AFileThatIsAsItWasIsNoQuestion) {
    recover();
    QTest::keyClick(&window(), Qt::Key_S, Qt::ControlModifier);
    EXPECT_TRUE(late.asked().empty());
    EXPECT_EQ(titleIn(source), "Left behind");
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

// --- a file that changed on the disk ---

class LateChange : public LateAnswers {
protected:
    LateChange() : path(write("mole.bench.json", "As read")) {
        window().openFile(path);
        edit("Mine");
    }
    void changeAndTakeThatOne() {
        write("mole.bench.json", "Someone else's");
        ASSERT_TRUE(WindowBench::waitFor([&] { return window().bar().isVisible(); }));
        WindowBench::click(window().bar().keys()[0]);
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
    EXPECT_EQ(titleIn(path), "Someone else's");
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
    EXPECT_EQ(titleIn(path), "Third");
    ASSERT_TRUE(late.waits(Kind::Changed));
    late.changed(Conflict::Overwrite);
    EXPECT_EQ(titleIn(path), "Mine");
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
    WindowBench::click(window().bar().keys()[0]);
    EXPECT_EQ(title(), "Mine");
}

TEST_F(LateChange, AChangeRightBehindTheOwnSavingIsSeen) {
    QTest::keyClick(&window(), Qt::Key_S, Qt::ControlModifier);
    write("mole.bench.json", "Someone else's");
    edit("Mine again");
    QTest::keyClick(&window(), Qt::Key_S, Qt::ControlModifier);
    EXPECT_TRUE(late.waits(Kind::Changed));
    EXPECT_EQ(titleIn(path), "Someone else's");
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
    WindowBench::click(window().bar().keys()[0]);
    EXPECT_EQ(titleIn(path), "As read");
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
    EXPECT_EQ(titleIn(path), "As read");
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

// --- saving under a name ---

TEST_F(LateAnswers, TheEndingIsAddedOnlyOverAFileThatMayGo) {
    const QString there = write("foo.bench.json", "There already");
    edit("Mine");
    for (const bool consent : {false, true}) {
        SCOPED_TRACE(consent);
        QTest::keyClick(&window(), Qt::Key_S, Qt::ControlModifier | Qt::ShiftModifier);
        ASSERT_TRUE(late.waits(Kind::SavePath));
        late.path(bench.file("foo"));
        ASSERT_TRUE(late.waits(Kind::Replace));
        EXPECT_EQ(late.asked().back().about, there);
        EXPECT_EQ(titleIn(there), "There already");
        late.replace(consent);
        EXPECT_EQ(titleIn(there), consent ? "Mine" : "There already");
        EXPECT_EQ(document().isModified(), !consent);
    }
}

TEST_F(LateAnswers, ANameThatTheDialogueAskedAboutIsNotAskedAboutAgain) {
    const QString there = write("foo.bench.json", "There already");
    edit("Mine");
    window().files().saveAs();
    late.path(there);
    EXPECT_EQ(late.count(Kind::Replace), 0);
    EXPECT_EQ(titleIn(there), "Mine");
    window().files().saveAs();
    late.path(bench.file("foo"));
    EXPECT_EQ(late.count(Kind::Replace), 0) << "its own file";
}

// --- a first LED ---

TEST_F(LateAnswers, TheFirstBuildOnAChangedBenchAsksOnceAndStaysOnTheNewOne) {
    edit("Mine");
    window().showStartCard();
    WindowBench::click(window().startCard()->firstKey());
    ASSERT_TRUE(late.waits(Kind::Unsaved));
    EXPECT_FALSE(window().tools().guide().isVisible());
    late.unsaved(Answer::Discard);
    EXPECT_EQ(late.asked().size(), 1u);
    ASSERT_TRUE(bench.waitForAnswer());
    QTest::qWait(50);
    EXPECT_TRUE(window().tools().guide().isVisible());
    EXPECT_EQ(title(), makeNewBench().title);
    EXPECT_FALSE(window().tools().guide().advice().holes.empty());
    EXPECT_FALSE(window().startCard());
}

TEST_F(LateAnswers, TheFirstBuildCancelledIsNotBegun) {
    edit("Mine");
    window().actions().firstBuild->trigger();
    late.unsaved(Answer::Cancel);
    EXPECT_FALSE(window().tools().guide().isVisible());
    EXPECT_EQ(title(), "Mine");
    EXPECT_EQ(late.asked().size(), 1u);
}

// --- closing ---

TEST_F(LateAnswers, TheWindowGoesWhenTheAnswerSaysSo) {
    for (const Answer answer : {Answer::Cancel, Answer::Discard, Answer::Save}) {
        SCOPED_TRACE(static_cast<int>(answer));
        bench.restart();
        window().files().setAsker(late.files());
        edit("Mine");
        window().close();
        ASSERT_TRUE(late.waits(Kind::Unsaved));
        EXPECT_TRUE(window().isVisible());
        window().close();
        EXPECT_TRUE(window().isVisible());
        EXPECT_TRUE(isKept());
        const QString copy = window().autosave().copyPath();
        late.unsaved(answer);
        if (answer == Answer::Save) late.path(bench.file("closed.bench.json"));
        EXPECT_EQ(window().isVisible(), answer == Answer::Cancel);
        EXPECT_EQ(QFile::exists(copy), answer == Answer::Cancel);
        bench.drop();
    }
    EXPECT_EQ(titleIn(bench.file("closed.bench.json")), "Mine");
    EXPECT_EQ(late.count(Kind::Unsaved), 3) << "closing again asks nothing new while a question stands";
}

TEST_F(LateAnswers, AnAnswerForAWindowThatIsGoneIsNobodys) {
    edit("Mine");
    window().files().open();
    bench.drop();
    late.path(bench.file("mole.bench.json"));
}

// --- what may come in between ---

TEST_F(LateAnswers, EditsMadeMeanwhileAreNotGivenUpUnasked) {
    edit("Mine");
    QTest::keyClick(&window(), Qt::Key_N, Qt::ControlModifier);
    ASSERT_TRUE(late.waits(Kind::Unsaved));
    edit("Mine, and more");
    late.unsaved(Answer::Discard);
    EXPECT_EQ(title(), "Mine, and more");
    ASSERT_TRUE(late.waits(Kind::Unsaved));
    late.unsaved(Answer::Discard);
    EXPECT_EQ(title(), makeNewBench().title);
}

TEST_F(LateAnswers, EditsMadeWhileAFileIsChosenAreAskedAbout) {
    const QString path = write("mole.bench.json", "Chosen");
    QTest::keyClick(&window(), Qt::Key_O, Qt::ControlModifier);
    ASSERT_TRUE(late.waits(Kind::OpenPath));
    edit("Mine");
    late.path(path);
    EXPECT_EQ(title(), "Mine");
    ASSERT_TRUE(late.waits(Kind::Unsaved));
    late.unsaved(Answer::Discard);
    EXPECT_EQ(title(), "Chosen");
}

TEST_F(LateAnswers, AnAnswerAboutABenchThatIsGoneCountsForNothing) {
    const QString path = write("mole.bench.json", "As read");
    edit("Mine");
    window().files().save();
    ASSERT_TRUE(late.waits(Kind::SavePath));
    document().reset(namedBench("Another"), {});
    late.path(path);
    EXPECT_EQ(titleIn(path), "As read") << "it was chosen for the other bench";
    EXPECT_EQ(title(), "Another");
}

TEST_F(LateAnswers, AnAnswerCountsOnce) {
    edit("Mine");
    window().files().newBench();
    const LateAsker::Question question = late.asked().back();
    late.unsaved(Answer::Cancel);
    LateAsker::answer<Answer>(question, Answer::Discard);
    EXPECT_EQ(title(), "Mine");
}

TEST_F(LateAnswers, OneQuestionStandsAtATime) {
    const QString path = write("mole.bench.json", "Chosen");
    edit("Mine");
    QTest::keyClick(&window(), Qt::Key_N, Qt::ControlModifier);
    ASSERT_TRUE(late.waits(Kind::Unsaved));
    window().openFile(path);
    QTest::keyClick(&window(), Qt::Key_S, Qt::ControlModifier);
    window().files().open();
    window().files().openEmbedded(QStringLiteral("benches/beacon-lamp.bench.json"));
    window().files().reload();
    EXPECT_EQ(late.asked().size(), 1u);
    EXPECT_EQ(title(), "Mine");
    late.unsaved(Answer::Cancel);
    window().openFile(path);
    EXPECT_TRUE(late.waits(Kind::Unsaved)) << "and then the next may";
}

// --- what is being typed ---

TEST_F(LateAnswers, ANoteThatIsBeingWrittenIsAskedAboutToo) {
    window().view().setFocus();
    window().view().setCursorHole(Hole{"A", Line::A, 20});
    QTest::keyClick(&window().view(), Qt::Key_F4);
    ASSERT_TRUE(window().focusWidget());
    QTest::keyClicks(window().focusWidget(), QStringLiteral("High water at ten"));
    window().close();
    EXPECT_TRUE(window().isVisible());
    ASSERT_TRUE(late.waits(Kind::Unsaved));
    ASSERT_EQ(document().bench()->notes.size(), 1u);
    EXPECT_EQ(document().bench()->notes[0].text, "High water at ten");
}

TEST_F(LateAnswers, ATitleThatIsBeingTypedIsSaved) {
    QTest::keyClick(&window(), Qt::Key_F2);
    ASSERT_TRUE(window().focusWidget());
    QTest::keyClicks(window().focusWidget(), QStringLiteral("Tide gauge"));
    window().actions().saveAs->trigger();
    late.path(bench.file("tide.bench.json"));
    EXPECT_EQ(titleIn(bench.file("tide.bench.json")), "Tide gauge");
}

TEST_F(LateAnswers, AFieldOfAnotherBenchIsPutAway) {
    window().view().setFocus();
    window().view().setCursorHole(Hole{"A", Line::A, 20});
    QTest::keyClick(&window().view(), Qt::Key_F4);
    QWidget* field = window().focusWidget();
    ASSERT_TRUE(field && field->isVisible());
    QTest::keyClicks(field, QStringLiteral("High water"));
    document().reset(namedBench("Another"), {});
    EXPECT_FALSE(field->isVisible());
    EXPECT_TRUE(document().bench()->notes.empty());
}

// --- the lock ---

class LateLock : public LateAnswers {
protected:
    LateLock() {
        menu().setAsker(late.phrases());
        edit("Before the lock");
        menu().lockAction()->trigger();
        late.phrase(QStringLiteral("ferry at noon"));
    }
    RevealMenu& menu() { return window().findings().reveal(); }
    bool isLockedNow() { return isLocked(*document().bench()); }
};

TEST_F(LateLock, NoUndoingTakesItOff) {
    ASSERT_TRUE(isLockedNow());
    EXPECT_TRUE(document().isModified());
    while (document().undoStack().canUndo()) {
        QTest::keyClick(&window(), Qt::Key_Z, Qt::ControlModifier);
        EXPECT_TRUE(isLockedNow());
    }
    EXPECT_EQ(title(), makeNewBench().title) << "what is no lock is undone";
    EXPECT_TRUE(document().isModified()) << "the lock stands in no file yet";
    while (document().undoStack().canRedo()) {
        QTest::keyClick(&window(), Qt::Key_Y, Qt::ControlModifier);
        EXPECT_TRUE(isLockedNow());
    }
}

TEST_F(LateLock, WhatWasRevealedBeforeIsNotBroughtBack) {
    menu().lockAction()->trigger();
    late.phrase(QStringLiteral("ferry at noon"));
    ASSERT_FALSE(isLockedNow());
    menu().level(Reveal::Mend)->trigger();
    menu().level(Reveal::Place)->trigger();
    menu().lockAction()->trigger();
    late.phrase(QStringLiteral("bell"));
    ASSERT_TRUE(isLockedNow());
    QTest::keyClick(&window(), Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(revealOf(*document().bench()), Reveal::Place);
    EXPECT_TRUE(isLockedNow());
}

TEST_F(LateLock, ItIsSavedAndKept) {
    EXPECT_TRUE(isKept());
    window().files().saveAs();
    late.path(bench.file("locked.bench.json"));
    EXPECT_TRUE(isLocked(readBenchFile(bench.file("locked.bench.json").toStdString())->bench));
    EXPECT_FALSE(document().isModified());
}

TEST_F(LateLock, APhraseForABenchThatIsGoneOpensNothing) {
    menu().lockAction()->trigger();
    ASSERT_TRUE(late.waits(Kind::Phrase));
    document().reset(namedBench("Another"), {});
    late.phrase(QStringLiteral("ferry at noon"));
    EXPECT_FALSE(document().bench()->disclosure.has_value());
    EXPECT_FALSE(document().isModified());
}

TEST_F(LateLock, TheSecondOfTwoPhrasesDoesNotLockAnew) {
    menu().lockAction()->trigger();
    late.phrase(QStringLiteral("ferry at noon"));
    menu().lockAction()->trigger();
    const LateAsker::Question first = late.asked().back();
    menu().lockAction()->trigger();
    late.phrase(QStringLiteral("bell"));
    ASSERT_TRUE(isLockedNow());
    const auto disclosure = document().bench()->disclosure;
    LateAsker::answer<QString, const QString&>(first, QStringLiteral("gull"));
    EXPECT_EQ(document().bench()->disclosure, disclosure);
}

// --- pictures ---

TEST_F(LateAnswers, APictureIsOfWhatWasSeenWhenItWasAskedFor) {
    window().tools().pictures().setAskPath(late.pictures());
    const auto pictureOf = [&](const char* name, bool replaced) {
        window().files().openEmbedded(QStringLiteral("benches/beacon-lamp.bench.json"));
        EXPECT_TRUE(bench.waitForAnswer());
        QTest::keyClick(&window(), Qt::Key_E, Qt::ControlModifier);
        if (replaced) document().reset(namedBench("Another"), {});
        late.path(bench.file(name));
        QFile file(bench.file(name));
        return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
    };
    const QByteArray usual = pictureOf("usual.svg", false);
    ASSERT_FALSE(usual.isEmpty());
    EXPECT_EQ(pictureOf("replaced.svg", true), usual);
}

}  // namespace
}  // namespace tiepoint::ui
