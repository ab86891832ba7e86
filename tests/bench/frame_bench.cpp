// How long a frame takes, beside its bar: one full board at 1080 lines with 25 resistors, 15 LEDs, 8 pressed buttons and 40 jumpers, all
// live; ten such boards; panning; a press to the repaint that shows it; a zoom until it is settled. Device pixel ratios 1 and 2, each in a
// process of its own, because the ratio is fixed when a program starts.
//
// Figures are process time (both threads) and wall time. Machines differ, so each is printed beside a calibration: filling the view with one opaque picture.

#include "support/build_bench.h"
#include "ui/document/bench_document.h"
#include "ui/live/live_bench.h"
#include "ui/view/bench_view.h"

#include <QApplication>
#include <QElapsedTimer>
#include <QProcess>
#include <QtCore/qtestsupport_core.h>
#include <QtWidgets/qtestsupport_widgets.h>

#include <fmt/format.h>

#include <algorithm>
#include <cstdio>
#include <ctime>
#include <fstream>
#include <numeric>
#include <set>
#include <unistd.h>

namespace tiepoint::ui {
namespace {

using test::BenchBuilder;

constexpr int kLedBranches = 15, kButtonBranches = 8, kPlainBranches = 2;
constexpr int kFrames = 240;
const QSize kScreen(1920, 1080);

/// Gives out the holes of one rail, the nearest to a column first.
class RailHoles {
public:
    RailHoles(std::string board, std::string line) : board_(std::move(board)), line_(std::move(line)) {}
    std::string near(int column) {
        const BoardKind& kind = *findBoardKind("full");
        int best = 0;
        for (int n = 1; n <= kind.railHoles; ++n) {
            if (taken_.contains(n)) continue;
            if (best == 0 || std::abs(kind.railColumn(n) - column) < std::abs(kind.railColumn(best) - column)) best = n;
        }
        taken_.insert(best);
        return fmt::format("{}.{}{}", board_, line_, best);
    }

private:
    std::string board_, line_;
    std::set<int> taken_;
};

void addBranches(BenchBuilder& bench, const std::string& board, const std::string& supply, int& number) {
    RailHoles plus(board, "top+"), minus(board, "bottom-");
    bench.part(supply, "bench-supply", {{"+", plus.near(3)}, {"-", minus.near(3)}}, {{"voltage", 5}, {"currentLimit", 5}});
    const auto hole = [&](char row, int column) { return fmt::format("{}.{}{}", board, row, column); };
    const char* const colours[] = {"red", "amber", "green", "blue", "white"};
    for (int i = 0; i < kLedBranches; ++i, ++number) {
        const int column = 1 + 2 * i;
        bench.jumper(fmt::format("WA{}", number), plus.near(column), hole('a', column));
        bench.part(fmt::format("R{}", number), "resistor", {{"1", hole('c', column)}, {"2", hole('h', column)}}, {{"resistance", 220 + 20 * i}});
        bench.part(fmt::format("D{}", number), "led", {{"anode", hole('i', column)}, {"cathode", hole('i', column + 1)}}, {{"colour", colours[i % 5]}});
        bench.jumper(fmt::format("WB{}", number), hole('j', column + 1), minus.near(column + 1), "black");
    }
    for (int i = 0; i < kButtonBranches; ++i, ++number) {
        const int column = 32 + 3 * i;
        bench.part(fmt::format("R{}", number), "resistor", {{"1", plus.near(column)}, {"2", hole('c', column)}}, {{"resistance", 470 + 100 * i}});
        bench.part(fmt::format("S{}", number), "push-button",
                   {{"1a", hole('e', column)}, {"1b", hole('f', column)}, {"2a", hole('e', column + 2)}, {"2b", hole('f', column + 2)}});
        bench.jumper(fmt::format("WC{}", number), hole('j', column + 2), minus.near(column + 2), "blue");
    }
    for (int i = 0; i < kPlainBranches; ++i, ++number) {
        const int column = 58 + 3 * i;
        bench.part(fmt::format("R{}", number), "resistor", {{"1", plus.near(column)}, {"2", hole('c', column)}}, {{"resistance", 1000}});
        bench.jumper(fmt::format("WD{}", number), hole('e', column), minus.near(column), "green");
    }
}

Bench boards(int count) {
    BenchBuilder bench;
    int number = 1;
    for (int i = 0; i < count; ++i) {
        const std::string id(1, static_cast<char>('A' + i));
        bench.board(id, "full", (i % 2) * 66, (i / 2) * 23);
    }
    for (int i = 0; i < count; ++i) addBranches(bench, std::string(1, static_cast<char>('A' + i)), fmt::format("PS{}", i + 1), number);
    return bench.build();
}

double processMs() {
    timespec now{};
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &now);
    return static_cast<double>(now.tv_sec) * 1e3 + static_cast<double>(now.tv_nsec) * 1e-6;
}

struct Times {
    std::vector<double> wall, process;
    template <class Work>
    void add(Work work) {
        QElapsedTimer timer;
        const double before = processMs();
        timer.start();
        work();
        wall.push_back(static_cast<double>(timer.nsecsElapsed()) * 1e-6);
        process.push_back(processMs() - before);
    }
    static double average(const std::vector<double>& times) { return std::accumulate(times.begin(), times.end(), 0.0) / static_cast<double>(times.size()); }
    static double at(std::vector<double> times, double share) {
        std::sort(times.begin(), times.end());
        return times[static_cast<std::size_t>(share * static_cast<double>(times.size() - 1))];
    }
};

/// A view that notes how long its frames take.
class TimedView : public BenchView {
public:
    using BenchView::BenchView;
    Times frames;

protected:
    void paintEvent(QPaintEvent* event) override {
        frames.add([&] { BenchView::paintEvent(event); });
    }
};

struct Desk {
    BenchDocument document;
    LiveBench live;
    TimedView view{document, live};

    Desk() {
        QObject::connect(&document, &BenchDocument::benchChanged, &view, [this] { live.setBench(document.revision(), document.bench()); });
        view.resize(kScreen);
        view.show();
        (void)QTest::qWaitForWindowExposed(&view);
    }
    void open(Bench bench) {
        document.reset(std::move(bench), {});
        for (const Part& part : document.bench()->parts) {
            if (part.kind->hasCap) live.setHeld(part.id, true);
        }
        view.fitBench();
        wait();
        QTest::qWait(400);  // sprites are made in the first frames
    }
    void wait() {
        // Not qWaitFor, which sleeps for ten milliseconds between two looks.
        const auto answered = [this] {
            const auto snapshot = view.picture().snapshot;
            return snapshot && snapshot->inputSequence == live.inputs().sequence && snapshot->revision == document.revision();
        };
        while (!answered()) QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents);
    }
    void paint() { view.viewport()->repaint(); }
    void waitForFrame() {
        const std::size_t before = view.frames.wall.size();
        while (view.frames.wall.size() == before) QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents);
        QCoreApplication::processEvents();  // what a frame that was under way left to the next
    }
};

double blitMs(const QSize& device) {
    QImage from(device, QImage::Format_ARGB32_Premultiplied), to = from;
    from.fill(Qt::darkGreen);
    Times times;
    for (int i = 0; i < 30; ++i) {
        times.add([&] {
            QPainter painter(&to);
            painter.drawImage(0, 0, from);
        });
    }
    return Times::at(times.process, 0.5);
}

double calibrationMs = 1;

void print(const char* what, double ms, double barMs) {
    std::printf("  %-44s %8.2f ms   bar %6.1f ms   ratio to the bar %5.2f   ratio to a blit %6.1f\n", what, ms, barMs, ms / barMs, ms / calibrationMs);
}

void measureFrames(Desk& desk, const char* name, double barMs, double barP95Ms, double barProcessMs) {
    // Frames as the ticks of the arrows ask for them; the process time holds all that a tick does.
    Times& frames = desk.view.frames;
    frames = {};
    const double before = processMs();
    while (frames.wall.size() < kFrames) QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents);
    const double process = (processMs() - before) / kFrames;
    print(fmt::format("{}: frame, average", name).c_str(), Times::average(frames.wall), barMs);
    print(fmt::format("{}: frame, 95th percentile", name).c_str(), Times::at(frames.wall, 0.95), barP95Ms);
    print(fmt::format("{}: process time a frame", name).c_str(), process, barProcessMs);
}

void measurePan(Desk& desk) {
    desk.view.zoomAt(QPointF(desk.view.viewport()->rect().center()), 1.5625);
    QTest::qWait(300);
    Times frames;
    const auto drag = [&](QEvent::Type type, QPointF at, Qt::MouseButton button, Qt::MouseButtons buttons) {
        QMouseEvent event(type, at, desk.view.viewport()->mapToGlobal(at), button, buttons, Qt::NoModifier);
        QApplication::sendEvent(desk.view.viewport(), &event);
    };
    QPointF at = desk.view.viewport()->rect().center();
    drag(QEvent::MouseButtonPress, at, Qt::MiddleButton, Qt::MiddleButton);
    for (int i = 0; i < 120; ++i) {
        at += QPointF(i % 60 < 30 ? 6 : -6, i % 60 < 30 ? 2 : -2);
        frames.add([&] {
            drag(QEvent::MouseMove, at, Qt::NoButton, Qt::MiddleButton);
            desk.waitForFrame();
        });
    }
    drag(QEvent::MouseButtonRelease, at, Qt::MiddleButton, Qt::NoButton);
    print("pan: frame, average", Times::average(frames.wall), 4);
    print("pan: process time a frame", Times::average(frames.process), 4);
    print("pan: frame, slowest (a margin is used up)", Times::at(frames.wall, 1), 16.7);
    desk.view.fitBench();
    QTest::qWait(200);
}

void measurePress(Desk& desk) {
    std::string button;
    for (const Part& part : desk.document.bench()->parts) {
        if (part.kind->hasCap) button = part.id;
    }
    Times presses;
    for (int i = 0; i < 30; ++i) {
        presses.add([&] {
            desk.live.setHeld(button, i % 2 != 0);
            desk.wait();
            desk.waitForFrame();
        });
        QTest::qWait(20);
    }
    print("press to the repaint that shows it, median", Times::at(presses.wall, 0.5), 8);
    print("press: process time, median", Times::at(presses.process, 0.5), 8);
    print("press to the repaint that shows it, p95", Times::at(presses.wall, 0.95), 16.7);
}

void measureZoom(Desk& desk) {
    Times zooms;
    for (int i = 0; i < 8; ++i) {
        zooms.add([&] {
            desk.view.zoomAt(QPointF(900, 500), i % 2 == 0 ? 1.25 : 0.8);
            QTest::qWait(80);
            QCoreApplication::processEvents();
            desk.paint();
        });
        QTest::qWait(100);
    }
    print("zoom until it is settled, slowest", Times::at(zooms.wall, 1), 250);
    print("zoom: process time, median", Times::at(zooms.process, 0.5), 250);
    desk.view.fitBench();
    QTest::qWait(100);
}

double residentMegabytes() {
    std::ifstream statm("/proc/self/statm");
    long total = 0, resident = 0;
    statm >> total >> resident;
    return static_cast<double>(resident) * static_cast<double>(sysconf(_SC_PAGESIZE)) / 1e6;
}

void measure() {
    Desk desk;
    const double ratio = desk.view.devicePixelRatioF();
    const QSize device = (QSizeF(desk.view.viewport()->size()) * ratio).toSize();
    calibrationMs = blitMs(device);
    std::printf("device pixel ratio %g: %d x %d device pixels, calibration blit %.2f ms\n", ratio, device.width(), device.height(), calibrationMs);
    desk.open(boards(1));
    std::printf("  %d parts, %d jumpers, arrows move: %s\n", static_cast<int>(desk.document.bench()->parts.size()),
                static_cast<int>(desk.document.bench()->jumpers.size()), desk.view.isMoving() ? "yes" : "no");
    measureFrames(desk, "one full board", 4, 6, 5);
    std::printf("  resident memory at fit: %.0f MB, bar 150 MB\n", residentMegabytes());
    measurePress(desk);
    measureZoom(desk);
    measurePan(desk);
    desk.open(boards(10));
    measureFrames(desk, "ten full boards", 8, 12, 8);
}

/// Runs this program again with another ratio, and waits for it.
void measureAt(const char* program, const char* ratio) {
    QProcess child;
    QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
    environment.insert("QT_SCALE_FACTOR", ratio);
    child.setProcessEnvironment(environment);
    child.setProcessChannelMode(QProcess::ForwardedChannels);
    child.start(QString::fromLocal8Bit(program), {QStringLiteral("--measure")});
    child.waitForFinished(-1);
}

}  // namespace
}  // namespace tiepoint::ui

int main(int argc, char** argv) {
    if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
    if (argc > 1 && QByteArray(argv[1]) == "--measure") {
        QApplication application(argc, argv);
        tiepoint::ui::measure();
        return 0;
    }
    QCoreApplication application(argc, argv);
    for (const char* ratio : {"1", "2"}) tiepoint::ui::measureAt(argv[0], ratio);
}
