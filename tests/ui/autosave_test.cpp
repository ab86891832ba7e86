// Autosave and recovery: what was done before a crash is offered at the next start, and keeping it costs the window next to nothing.

#include "core/bench/bench_file.h"
#include "support/build_bench.h"
#include "window_bench.h"

#include <QDir>
#include <QFile>

#include <gtest/gtest.h>
#include <sys/resource.h>

#include <algorithm>
#include <csignal>
#include <cstdio>
#include <vector>

namespace tiepoint::ui {
namespace {

constexpr double kMostWindowThreadMs = 10;  // the bar of the project

QStringList copiesIn(const QString& folder) {
    return QDir(folder).entryList({QStringLiteral("*.bench.json")}, QDir::Files);
}

/// A copy as a program that crashed leaves it: bench and source, and no living lock.
Recovery leaveCopy(const QString& folder, const Bench& bench, const QString& source) {
    QDir().mkpath(folder);
    const QString copy = folder + QStringLiteral("/left-behind.bench.json");
    EXPECT_TRUE(writeBenchFile(bench, copy.toStdString()).ok());
    QFile file(folder + QStringLiteral("/left-behind.source"));
    EXPECT_TRUE(file.open(QIODevice::WriteOnly));
    file.write(source.toUtf8());
    return {copy, source, QDateTime::currentDateTime(), std::nullopt};
}

Bench renamed(const char* title) {
    Bench bench = makeNewBench();
    bench.title = title;
    return bench;
}

/// Ten full boards with a thousand resistors.
Bench largeBench() {
    tiepoint::test::BenchBuilder builder;
    constexpr int kBoards = 10, kColumnsUsed = 12;
    for (int board = 0; board < kBoards; ++board) {
        const std::string id = "B" + std::to_string(board);
        builder.board(id, "full", 0, board * 25);
        for (int row = 0; row < 8; ++row)
            for (int column = 1; column <= kColumnsUsed; ++column) {
                const std::string line(1, "abcdfghi"[row]);
                const std::string from = id + "." + line + std::to_string(column * 5 - 4),
                                  to = id + "." + line + std::to_string(column * 5);
                builder.part("R" + std::to_string(board * 1000 + row * 100 + column), "resistor",
                             {{"1", from}, {"2", to}});
            }
    }
    return builder.build();
}

TEST(Autosave, WritesACopyOfUnsavedWorkAndTakesItAwayWhenSaved) {
    WindowBench bench;
    MainWindow& window = bench.window();
    EXPECT_TRUE(copiesIn(bench.recoveryFolder()).isEmpty());
    ASSERT_FALSE(window.document().push({"Rename", {SetTitle{"Half built"}}}));
    window.autosave().finish();
    const auto read = readBenchFile(window.autosave().copyPath().toStdString());
    ASSERT_TRUE(read.ok()) << read.error().oneLine();
    EXPECT_EQ(read->bench, *window.document().bench());

    bench.saveAnswer = bench.file("done.bench.json");
    window.files().save();
    window.autosave().finish();
    EXPECT_TRUE(copiesIn(bench.recoveryFolder()).isEmpty());
}

TEST(Autosave, HappensByItselfSoonAfterAnEdit) {
    WindowBench bench;
    ASSERT_FALSE(bench.window().document().push({"Rename", {SetTitle{"Half built"}}}));
    EXPECT_TRUE(WindowBench::waitFor([&] { return QFile::exists(bench.window().autosave().copyPath()); }));
}

TEST(Autosave, ABurstOfEditsLeavesTheLastOne) {
    WindowBench bench;
    MainWindow& window = bench.window();
    for (int i = 0; i < 50; ++i)
        ASSERT_FALSE(window.document().push({"Rename", {SetTitle{"Round " + std::to_string(i)}}}));
    const auto copied = [&] {
        const auto read = readBenchFile(window.autosave().copyPath().toStdString());
        return read.ok() && read->bench == *window.document().bench();
    };
    EXPECT_TRUE(WindowBench::waitFor(copied)) << "without anyone asking for it";
}

TEST(Autosave, TheCopyOfARunningProgramIsNotOffered) {
    WindowBench bench;
    ASSERT_FALSE(bench.window().document().push({"Rename", {SetTitle{"In use"}}}));
    bench.window().autosave().finish();
    EXPECT_EQ(copiesIn(bench.recoveryFolder()).size(), 1);
    EXPECT_TRUE(findRecoveries(bench.recoveryFolder()).empty());
}

TEST(Autosave, WorkLeftBehindByACrashIsOfferedAndRecovered) {
    WindowBench bench;
    const Bench work = renamed("Left behind");
    leaveCopy(bench.recoveryFolder(), work, bench.file("mole.bench.json"));
    MainWindow& window = bench.window();
    window.showStartCard();
    ASSERT_TRUE(window.startCard()->recoverButton()->isVisible());
    WindowBench::click(window.startCard()->recoverButton());
    EXPECT_FALSE(window.startCard());
    EXPECT_EQ(*window.document().bench(), work);
    EXPECT_EQ(window.document().filePath(), bench.file("mole.bench.json"));
    EXPECT_TRUE(window.document().isModified()) << "the copy is not what stands in the file";
    EXPECT_TRUE(QFile::exists(window.autosave().copyPath())) << "recovered work is never without a copy";
    EXPECT_EQ(copiesIn(bench.recoveryFolder()).size(), 1);
}

TEST(Autosave, WorkLeftBehindIsOfferedInTheBarBesideAnOpenedFile) {
    WindowBench bench;
    leaveCopy(bench.recoveryFolder(), renamed("Left behind"), {});
    bench.window().offerRecovery();
    ASSERT_TRUE(bench.window().bar().isVisible());
    ASSERT_EQ(bench.window().bar().buttons().size(), 3u);
    WindowBench::click(bench.window().bar().buttons()[1]);
    EXPECT_TRUE(copiesIn(bench.recoveryFolder()).isEmpty()) << "thrown away";
    EXPECT_FALSE(bench.window().bar().isVisible());
}

TEST(Autosave, ACopyThatCanNotBeWrittenIsSaidOnce) {
    WindowBench bench;
    QFile obstacle(bench.recoveryFolder());
    ASSERT_TRUE(obstacle.open(QIODevice::WriteOnly));
    ASSERT_FALSE(bench.window().document().push({"Rename", {SetTitle{"Anything"}}}));
    bench.window().autosave().finish();
    EXPECT_TRUE(WindowBench::waitFor([&] { return bench.window().bar().isVisible(); }));
}

TEST(Autosave, AFolderThatIsTakenAwayIsMadeAnew) {
    WindowBench bench;
    MainWindow& window = bench.window();
    ASSERT_FALSE(window.document().push({"Rename", {SetTitle{"Half built"}}}));
    ASSERT_TRUE(window.autosave().finish());
    ASSERT_TRUE(QDir(bench.recoveryFolder()).removeRecursively());
    ASSERT_FALSE(window.document().push({"Rename", {SetTitle{"More than half"}}}));
    EXPECT_TRUE(window.autosave().finish());
    const auto read = readBenchFile(window.autosave().copyPath().toStdString());
    ASSERT_TRUE(read.ok()) << read.error().oneLine();
    EXPECT_EQ(read->bench.title, "More than half");
    EXPECT_TRUE(findRecoveries(bench.recoveryFolder()).empty()) << "it is locked again";
    EXPECT_FALSE(window.bar().isVisible()) << window.bar().line().toStdString();
}

TEST(Autosave, WhenTheDiskIsFullNothingIsLostAndAllIsSaid) {
    WindowBench bench;
    MainWindow& window = bench.window();
    const QString path = bench.file("mole.bench.json");
    ASSERT_TRUE(writeBenchFile(renamed("As read"), path.toStdString()).ok());
    window.openFile(path);
    rlimit usual{};
    ASSERT_EQ(getrlimit(RLIMIT_FSIZE, &usual), 0);
    const auto handler = std::signal(SIGXFSZ, SIG_IGN);
    const rlimit none{0, usual.rlim_max};
    ASSERT_EQ(setrlimit(RLIMIT_FSIZE, &none), 0);
    ASSERT_FALSE(window.document().push({"Rename", {SetTitle{"Mine"}}}));
    const bool kept = window.autosave().finish();
    const bool said = WindowBench::waitFor([&] { return window.bar().isVisible(); });
    window.files().save();
    const QString line = window.bar().line();
    setrlimit(RLIMIT_FSIZE, &usual);
    std::signal(SIGXFSZ, handler);
    EXPECT_FALSE(kept);
    EXPECT_TRUE(said);
    EXPECT_TRUE(line.contains(QStringLiteral("mole.bench.json"))) << line.toStdString();
    EXPECT_TRUE(window.document().isModified());
    EXPECT_EQ(readBenchFile(path.toStdString())->bench.title, "As read");

    ASSERT_FALSE(window.document().push({"Rename", {SetTitle{"Mine again"}}}));
    EXPECT_TRUE(window.autosave().finish()) << "there is room again";
    window.files().save();
    EXPECT_EQ(readBenchFile(path.toStdString())->bench.title, "Mine again");
    EXPECT_FALSE(window.document().isModified());
}

TEST(Autosave, TakesLittleOfTheWindowsThread) {
    WindowBench bench;
    MainWindow& window = bench.window();
    window.document().reset(largeBench(), {});
    constexpr std::size_t kEdits = 21;
    std::vector<double> ms;
    while (ms.size() < kEdits) {
        ASSERT_FALSE(window.document().push({"Rename", {SetTitle{"Round " + std::to_string(ms.size())}}}));
        window.autosave().finish();
        ms.push_back(window.autosave().lastWindowThreadMs());
    }
    std::ranges::sort(ms);
    const double middle = ms[kEdits / 2];  // a busy machine may take the processor away at any one of them
    std::printf("autosave of %zu parts: %.3f ms of the window's thread in the middle, %.3f at worst; bar %.0f ms\n",
                window.document().bench()->parts.size(), middle, ms.back(), kMostWindowThreadMs);
    EXPECT_LT(middle, kMostWindowThreadMs);
}

}  // namespace
}  // namespace tiepoint::ui
