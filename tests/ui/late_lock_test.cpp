// The lock on what is revealed, whose phrases are answered late.

#include "core/findings/reveal.h"
#include "late_answers.h"

namespace tiepoint::ui {
namespace {

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

}  // namespace
}  // namespace tiepoint::ui
