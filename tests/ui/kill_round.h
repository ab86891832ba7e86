#pragma once
// The program killed while a monkey edits: a child process runs a window, tells each state of its bench by a line on its standard output,
// and is killed by SIGKILL at a random moment. Then the parent looks at what is left on the disk.

#include "core/bench/bench_file.h"
#include "monkey.h"
#include "ui/document/autosave.h"

#include <QCryptographicHash>
#include <QDir>
#include <QProcess>
#include <QSettings>

#include <cstdio>
#include <string>

namespace tiepoint::ui {

inline constexpr const char* kMonkeyChild = "--monkey-child";
inline constexpr int kPaceMs = 25;  ///< between two gestures: faster than any hand

inline std::string digestOf(const Bench& bench) {
    const std::string text = writeBench(bench);
    return QCryptographicHash::hash(QByteArray::fromStdString(text), QCryptographicHash::Sha1).toHex().toStdString();
}

/// Runs until it is killed. The document has a file from the start; the monkey saves it now and then.
inline int runMonkeyChild(const QString& folder, unsigned seed) {
    QApplication::setOrganizationName(QStringLiteral("tiepoint-tests"));
    QApplication::setApplicationName(QStringLiteral("tiepoint-tests"));
    QSettings::setDefaultFormat(QSettings::IniFormat);
    QSettings::setPath(QSettings::IniFormat, QSettings::UserScope, folder);
    MainWindow window(folder + QStringLiteral("/recovery"));
    window.resize(1000, 640);
    window.show();
    window.openFile(folder + QStringLiteral("/work.bench.json"));
    const auto tell = [&] {
        std::printf("%s\n", digestOf(*window.document().bench()).c_str());
        std::fflush(stdout);
    };
    tell();
    Monkey monkey(window, seed);
    std::mt19937 random(seed);
    for (;;) {
        monkey.act();
        if (random() % 12 == 0) window.files().save();
        tell();
        QTest::qWait(kPaceMs);
    }
}

struct KillReport {
    bool ran = false;  ///< the child told at least one state
    bool killed = false;
    int lost =
        -1;  ///< gestures between the last told state and the one on the disk; 0: none; -1: the one on the disk was never told
    int states = 0;          ///< told
    std::string unreadable;  ///< a file that can't be read, and why
};

/// One child, killed so many milliseconds after its first state.
inline KillReport killRound(const QString& program, const QString& folder, unsigned seed, int afterMs) {
    KillReport report;
    Bench start = makeNewBench();
    start.title = "Round " + std::to_string(seed);
    if (!writeBenchFile(start, (folder + QStringLiteral("/work.bench.json")).toStdString())) return report;
    QProcess child;
    QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
    environment.insert(QStringLiteral("QT_QPA_PLATFORM"), QStringLiteral("offscreen"));
    child.setProcessEnvironment(environment);
    child.start(program, {QString::fromLatin1(kMonkeyChild), folder, QString::number(seed)});
    constexpr int kStartMs = 60'000;
    while (!child.canReadLine() && child.waitForReadyRead(kStartMs)) {
    }
    if (!child.canReadLine()) return report;
    report.ran = true;
    QTest::qWait(afterMs);
    child.kill();  // SIGKILL on this system: nothing of the child runs any more
    report.killed = child.waitForFinished() && child.exitStatus() == QProcess::CrashExit;

    std::vector<std::string> told;
    for (const QByteArray& line : child.readAllStandardOutput().split('\n'))
        if (!line.isEmpty()) told.push_back(line.toStdString());
    report.states = static_cast<int>(told.size());

    const auto recoveries = findRecoveries(folder + QStringLiteral("/recovery"));
    const QString newest =
        recoveries.empty() ? folder + QStringLiteral("/work.bench.json") : recoveries.front().copyPath;
    for (const QString& path : {folder + QStringLiteral("/work.bench.json"), newest}) {
        const auto read = readBenchFile(path.toStdString());
        if (!read) report.unreadable = read.error().oneLine();
        if (path != newest || !read) continue;
        const std::string onDisk = digestOf(read->bench);
        // States repeat where a gesture changed nothing; the latest of them counts.
        for (int i = 0; i < report.states; ++i)
            if (told[static_cast<std::size_t>(i)] == onDisk) report.lost = 0;
        if (report.lost < 0) continue;
        std::string last;
        int lost = 0;
        for (auto state = told.rbegin(); state != told.rend() && *state != onDisk; ++state) {
            if (*state != last) ++lost;
            last = *state;
        }
        report.lost = lost;
    }
    for (const Recovery& recovery : recoveries) removeCopy(recovery.copyPath);
    return report;
}

}  // namespace tiepoint::ui
