// The document: edits, one undo step each, refusals that change nothing.

#include "ui/document/bench_document.h"

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
