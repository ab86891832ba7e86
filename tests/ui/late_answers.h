#pragma once
// A window with a changed bench, and someone who answers late: for tests of questions whose answers come after something else has happened.

#include "core/bench/bench_file.h"
#include "late_asker.h"
#include "support/build_bench.h"
#include "window_bench.h"

namespace tiepoint::ui {

inline Bench namedBench(const char* title) {
    Bench bench = makeNewBench();
    bench.title = title;
    return bench;
}

/// The title of the bench in a file, or why it can't be read.
inline std::string titleInFile(const QString& path) {
    const auto read = readBenchFile(path.toStdString());
    return read ? read->bench.title : read.error().oneLine();
}

/// A window with a changed bench, and someone who answers late.
class LateAnswers : public testing::Test {
protected:
    using Answer = FileActions::Answer;
    using Conflict = FileActions::Conflict;
    using Kind = LateAsker::Kind;

    LateAnswers() { window().files().setAsker(late.files()); }

    MainWindow& window() { return bench.window(); }
    BenchDocument& document() { return window().document(); }
    std::string title() { return document().bench()->title; }
    void edit(const char* title) { ASSERT_FALSE(document().push({"Rename", {SetTitle{title}}})); }
    /// Whether the unsaved work of this window has a copy that holds it.
    bool isKept() { return window().autosave().finish() && titleInFile(window().autosave().copyPath()) == title(); }
    QString write(const char* name, const char* title) {
        EXPECT_TRUE(writeBenchFile(namedBench(title), bench.file(name).toStdString()).ok());
        return bench.file(name);
    }

    WindowBench bench;
    LateAsker late;
};

}  // namespace tiepoint::ui
