// The document: edits, one undo step each, refusals that change nothing.

#include "ui/document/bench_document.h"
#include "ui/document/edit_command.h"

#include <QSignalSpy>

#include <gtest/gtest.h>

namespace tiepoint::ui {
namespace {

Edit title(const char* text) { return {std::string("Rename to ") + text, {SetTitle{text}}}; }

TEST(BenchDocument, BeginsWithANewBenchAndNothingToUndo) {
    BenchDocument document;
    EXPECT_EQ(*document.bench(), makeNewBench());
    EXPECT_FALSE(document.isModified());
    EXPECT_FALSE(document.undoStack().canUndo());
}

TEST(BenchDocument, UndoAndRedoGiveBackTheSameBenches) {
    BenchDocument document;
    const Bench before = *document.bench();
    QSignalSpy changes(&document, &BenchDocument::benchChanged);
    ASSERT_FALSE(document.push(title("Ferry bell")));
    const Bench after = *document.bench();
    EXPECT_EQ(after.title, "Ferry bell");
    EXPECT_EQ(document.undoStack().undoText(), "Rename to Ferry bell");
    const auto revision = document.revision();
    document.undoStack().undo();
    EXPECT_EQ(*document.bench(), before);
    EXPECT_GT(document.revision(), revision) << "every change is a new revision, an undo too";
    document.undoStack().redo();
    EXPECT_EQ(*document.bench(), after);
    EXPECT_EQ(changes.count(), 3);
}

TEST(BenchDocument, ARefusedEditChangesNothingAndSaysWhy) {
    BenchDocument document;
    const auto before = document.bench();
    const auto why = document.push({"Remove", {Remove{"R99"}}});
    ASSERT_TRUE(why);
    EXPECT_TRUE(why->contains("R99")) << why->toStdString();
    EXPECT_EQ(document.bench(), before);
    EXPECT_FALSE(document.undoStack().canUndo());
}

TEST(BenchDocument, StepsOfOneGestureAreOneUndoStep) {
    BenchDocument document;
    const Bench before = *document.bench();
    const int gesture = document.newGesture();
    for (const char* text : {"T", "Ti", "Tide gauge"}) ASSERT_FALSE(document.push(title(text), gesture));
    EXPECT_EQ(document.undoStack().count(), 1);
    ASSERT_FALSE(document.push(title("Lock"), document.newGesture()));
    EXPECT_EQ(document.undoStack().count(), 2);
    document.undoStack().undo();
    EXPECT_EQ(document.bench()->title, "Tide gauge");
    document.undoStack().undo();
    EXPECT_EQ(*document.bench(), before);
    document.undoStack().redo();
    EXPECT_EQ(document.bench()->title, "Tide gauge");
}

/// A step whose way back, or whose way forth after that, isn't possible.
void pushStep(BenchDocument& document, const char* text, const Edit& again, const Edit& inverse) {
    Bench bench = *document.bench();
    bench.title = text;
    document.undoStack().push(new EditCommand(document, again, Applied{std::move(bench), inverse}, -1));
}
const Edit kImpossible{"Remove", {Remove{"R99"}}};

TEST(BenchDocument, AFailedUndoLeavesBenchAndHistoryTogetherAndSaysSo) {
    BenchDocument document;
    QStringList said;
    QObject::connect(&document, &BenchDocument::refused, [&](const QString& line) { said << line; });
    ASSERT_FALSE(document.push(title("First")));
    pushStep(document, "Second", {"Rename to Second", {SetTitle{"Second"}}}, kImpossible);
    ASSERT_FALSE(document.push(title("Third")));

    QUndoStack& history = document.undoStack();
    history.undo();
    ASSERT_EQ(document.bench()->title, "Second");
    for (int attempt = 1; attempt <= 2; ++attempt) {
        const auto before = document.bench();
        history.undo();
        EXPECT_EQ(document.bench(), before);
        EXPECT_EQ(history.index(), 2);
        EXPECT_TRUE(history.canUndo());
        EXPECT_EQ(history.undoText(), "Rename to Second") << "the step is still there";
        ASSERT_EQ(said.size(), attempt);
        EXPECT_TRUE(said.back().contains("can't be undone") && said.back().contains("R99"))
            << said.back().toStdString();
    }
    history.redo();
    EXPECT_EQ(document.bench()->title, "Third");
    history.setIndex(0);  // as a click into the list of steps does
    EXPECT_EQ(document.bench()->title, "Second") << "what lies before the failed step stays as it is too";
    EXPECT_EQ(history.index(), 2);
    EXPECT_EQ(said.size(), 3);
    ASSERT_FALSE(document.push(title("Fourth")));
    EXPECT_EQ(history.count(), 3);
    history.undo();
    EXPECT_EQ(document.bench()->title, "Second");
}

TEST(BenchDocument, AFailedRedoLeavesBenchAndHistoryTogetherAndSaysSo) {
    BenchDocument document;
    QStringList said;
    QObject::connect(&document, &BenchDocument::refused, [&](const QString& line) { said << line; });
    const std::string opened = document.bench()->title;
    pushStep(document, "First", kImpossible, {"Rename back", {SetTitle{opened}}});
    ASSERT_FALSE(document.push(title("Second")));
    document.markSaved();
    QUndoStack& history = document.undoStack();
    history.setIndex(0);
    ASSERT_EQ(document.bench()->title, opened);
    for (const int wanted : {1, 2}) {
        history.setIndex(wanted);
        EXPECT_EQ(document.bench()->title, opened);
        EXPECT_EQ(history.index(), 0);
        EXPECT_TRUE(document.isModified());
        ASSERT_EQ(said.size(), wanted);
        EXPECT_TRUE(said.back().contains("can't be done again")) << said.back().toStdString();
    }
    ASSERT_FALSE(document.push(title("Third")));
    EXPECT_EQ(history.count(), 1);
    history.undo();
    EXPECT_EQ(document.bench()->title, opened);
}

TEST(BenchDocument, KnowsWhetherItIsSaved) {
    BenchDocument document;
    QSignalSpy files(&document, &BenchDocument::fileChanged);
    ASSERT_FALSE(document.push(title("Beacon")));
    EXPECT_TRUE(document.isModified());
    document.setFilePath("beacon.bench.json");
    document.markSaved();
    EXPECT_FALSE(document.isModified());
    document.undoStack().undo();
    EXPECT_TRUE(document.isModified());
    EXPECT_GE(files.count(), 4);
}

TEST(BenchDocument, AResetForgetsTheHistory) {
    BenchDocument document;
    ASSERT_FALSE(document.push(title("Beacon")));
    Bench other = makeNewBench();
    other.title = "Ferry";
    document.reset(other, "ferry.bench.json");
    EXPECT_EQ(document.bench()->title, "Ferry");
    EXPECT_EQ(document.filePath(), "ferry.bench.json");
    EXPECT_FALSE(document.isModified());
    EXPECT_FALSE(document.undoStack().canUndo());
}

}  // namespace
}  // namespace tiepoint::ui
