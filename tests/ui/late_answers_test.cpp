// Questions whose answers come later, as those of real dialogues do: whatever happens in between, nothing is lost that wasn't given up.

#include "late_answers.h"

#include "core/lesson/first_build.h"
#include "support/compact_bench.h"

#include <QFile>

namespace tiepoint::ui {
namespace {

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
        EXPECT_EQ(titleInFile(there), "There already");
        late.replace(consent);
        EXPECT_EQ(titleInFile(there), consent ? "Mine" : "There already");
        EXPECT_EQ(document().isModified(), !consent);
    }
}

TEST_F(LateAnswers, ANameThatTheDialogueAskedAboutIsNotAskedAboutAgain) {
    const QString there = write("foo.bench.json", "There already");
    edit("Mine");
    window().files().saveAs();
    late.path(there);
    EXPECT_EQ(late.count(Kind::Replace), 0);
    EXPECT_EQ(titleInFile(there), "Mine");
    window().files().saveAs();
    late.path(bench.file("foo"));
    EXPECT_EQ(late.count(Kind::Replace), 0) << "its own file";
}

// --- a first LED ---

TEST_F(LateAnswers, TheFirstBuildOnAChangedBenchAsksOnceAndStaysOnTheNewOne) {
    edit("Mine");
    window().showStartCard();
    WindowBench::click(window().startCard()->firstButton());
    ASSERT_TRUE(late.waits(Kind::Unsaved));
    EXPECT_FALSE(window().tools().guide().isVisible());
    late.unsaved(Answer::Discard);
    EXPECT_EQ(late.asked().size(), 1u);
    ASSERT_TRUE(bench.waitForAnswer());
    QTest::qWait(50);
    EXPECT_TRUE(window().tools().guide().isVisible());
    EXPECT_EQ(title(), firstBuildLesson().start->title);
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
    EXPECT_EQ(titleInFile(bench.file("closed.bench.json")), "Mine");
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
    EXPECT_EQ(titleInFile(path), "As read") << "it was chosen for the other bench";
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
    EXPECT_EQ(titleInFile(bench.file("tide.bench.json")), "Tide gauge");
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
