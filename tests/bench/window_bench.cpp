// The whole window, beside its bars: from the program's start to its first paint; from opening a bench of 100 parts to its first live
// frame; and an idle bench without current, which must have no timer and take no processor time. Each in a process of its own with
// settings of its own, as on a first start. Files are warm in the system's cache.

#include "bench/full_boards.h"
#include "core/bench/bench_file.h"
#include "ui/window/main_window.h"

#include <QApplication>
#include <QElapsedTimer>
#include <QFile>
#include <QProcess>
#include <QSettings>
#include <QTemporaryDir>
#include <QTimer>
#include <QtCore/qtestsupport_core.h>

#include <algorithm>
#include <cstdio>
#include <ctime>
#include <functional>
#include <map>
#include <numeric>
#include <vector>

namespace tiepoint::ui {
namespace {

/// Milliseconds on a clock that all processes share.
double clockMs(clockid_t clock) {
    timespec now{};
    clock_gettime(clock, &now);
    return static_cast<double>(now.tv_sec) * 1e3 + static_cast<double>(now.tv_nsec) * 1e-6;
}

/// Counts what the event loop does.
class CountingApplication : public QApplication {
public:
    using QApplication::QApplication;
    std::map<QEvent::Type, int> events;
    std::map<QByteArray, int> timers;  ///< by the class of who has one

    bool notify(QObject* receiver, QEvent* event) override {
        ++events[event->type()];
        if (event->type() == QEvent::Timer) ++timers[receiver->metaObject()->className()];
        return QApplication::notify(receiver, event);
    }
};

/// Calls back after each paint of a widget.
class PaintWatch : public QObject {
public:
    PaintWatch(QWidget* widget, std::function<void()> painted) : painted_(std::move(painted)) {
        widget->installEventFilter(this);
    }
    bool eventFilter(QObject*, QEvent* event) override {
        // The event is still to be handled; what is posted now comes after the frame.
        if (event->type() == QEvent::Paint)
            QMetaObject::invokeMethod(
                this, [this] { painted_(); }, Qt::QueuedConnection);
        return false;
    }

private:
    std::function<void()> painted_;
};

void print(const char* what, double ms, double barMs) {
    std::printf("  %-52s %8.2f ms   bar %6.1f ms   ratio to the bar %5.2f\n", what, ms, barMs, ms / barMs);
}

/// As the program starts without a file: the window with the start card. Prints when the first frame was shown.
int startChild(double startedMs, const QString& folder) {
    MainWindow window(folder);
    PaintWatch watch(window.view().viewport(), [&] {
        std::printf("%.2f\n", clockMs(CLOCK_MONOTONIC) - startedMs);
        QCoreApplication::quit();
    });
    window.show();
    window.showStartCard();
    return QApplication::exec();
}

void measureOpen(MainWindow& window, const QString& folder) {
    constexpr int kRounds = 20;
    const auto write = [&](const char* name, const Bench& bench) {
        const QString path = folder + QLatin1Char('/') + QLatin1String(name);
        QFile file(path);
        if (!file.open(QIODevice::WriteOnly)) std::abort();
        file.write(QByteArray::fromStdString(writeBench(bench)));
        return path;
    };
    const Bench hundred = test::crowdedBoards(4, test::kHalfFullBoard);
    const QString large = write("hundred.bench.json", hundred), small = write("one.bench.json", makeNewBench());
    bool shown = false;
    PaintWatch watch(window.view().viewport(), [&] {
        const auto snapshot = window.view().picture().snapshot;
        shown = snapshot && snapshot->revision == window.document().revision() && snapshot->status() == Status::Solved;
    });
    std::vector<double> times;
    for (int round = 0; round < kRounds; ++round) {
        window.openFile(small);
        QTest::qWait(300);
        shown = false;
        QElapsedTimer timer;
        timer.start();
        window.openFile(large);
        while (!shown || window.document().bench()->parts.size() != hundred.parts.size())
            QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents);
        times.push_back(static_cast<double>(timer.nsecsElapsed()) * 1e-6);
    }
    std::sort(times.begin(), times.end());
    print(fmt::format("{} parts opened to the first live frame, median", hundred.parts.size()).c_str(),
          times[times.size() / 2], 50);
    print("the same, slowest", times.back(), 50);
}

/// A bench at rest: its button isn't pressed.
void measureIdle(CountingApplication& application, MainWindow& window) {
    constexpr int kSeconds = 10;
    window.files().openEmbedded(QStringLiteral("benches/beacon-lamp.bench.json"));
    QTest::qWait(6000);  // what changed is shown for four seconds
    application.events.clear();
    application.timers.clear();
    const double before = clockMs(CLOCK_PROCESS_CPUTIME_ID);
    QEventLoop loop;
    QTimer::singleShot(kSeconds * 1000, &loop, &QEventLoop::quit);
    loop.exec();
    const double used = clockMs(CLOCK_PROCESS_CPUTIME_ID) - before;
    std::printf("  idle for %d s: %.2f ms of processor time (%.4f %%), timer events: %d, all events: %d\n", kSeconds,
                used, used / (kSeconds * 10.0), application.events[QEvent::Timer],
                static_cast<int>(std::accumulate(application.events.begin(), application.events.end(), 0,
                                                 [](int sum, const auto& entry) { return sum + entry.second; })));
    for (const auto& [name, count] : application.timers) std::printf("    timer of %s: %d\n", name.constData(), count);
}

void measureStart(const QString& folder) {
    constexpr int kRounds = 7;
    std::vector<double> times;
    for (int round = 0; round < kRounds; ++round) {
        QTemporaryDir state;
        QProcess child;
        QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
        environment.insert("XDG_CONFIG_HOME", state.path());
        environment.insert("XDG_STATE_HOME", state.path());
        child.setProcessEnvironment(environment);
        child.setProcessChannelMode(QProcess::ForwardedErrorChannel);
        child.start(QCoreApplication::applicationFilePath(),
                    {QStringLiteral("--start"), QString::number(clockMs(CLOCK_MONOTONIC), 'f', 3), folder});
        child.waitForFinished(-1);
        times.push_back(child.readAllStandardOutput().trimmed().toDouble());
    }
    std::sort(times.begin(), times.end());
    print("start to the first paint, with the start card, median", times[times.size() / 2], 600);
    print("the same, slowest", times.back(), 600);
}

}  // namespace
}  // namespace tiepoint::ui

int main(int argc, char** argv) {
    using namespace tiepoint::ui;
    if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
    CountingApplication application(argc, argv);
    QApplication::setOrganizationName(QStringLiteral("tiepoint-tests"));
    QApplication::setApplicationName(QStringLiteral("tiepoint-tests"));
    if (argc == 4 && QByteArray(argv[1]) == "--start")
        return startChild(QByteArray(argv[2]).toDouble(), QString::fromLocal8Bit(argv[3]));
    QTemporaryDir folder;
    QSettings::setDefaultFormat(QSettings::IniFormat);
    QSettings::setPath(QSettings::IniFormat, QSettings::UserScope, folder.path());
    measureStart(folder.path());
    MainWindow window(folder.filePath(QStringLiteral("recovery")));
    window.resize(1920, 1080);
    window.show();
    measureOpen(window, folder.path());
    measureIdle(application, window);
}
