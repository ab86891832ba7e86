// How long a frame takes, beside its bar: one full board at 1080 lines with 25 resistors, 15 LEDs, 8 pressed
// buttons and 40 jumpers, all live; the same projected; ten boards with 250 parts, and ten full ones; panning; a press to the
// repaint that shows it; a zoom until it is settled; fifty things dragged. In every theme, with the views of
// a first start and with all views on, at device pixel ratio 1 and 2: each in a process of its own, because
// the ratio is fixed when a program starts. Arguments narrow it: `frame_bench 1 day fresh`.
//
// Figures are process time (both threads) and wall time. Machines differ, so each is printed beside a
// calibration: filling the view with one opaque picture.

#include "bench/full_boards.h"
#include "ui/document/bench_document.h"
#include "ui/live/live_bench.h"
#include "ui/view/bench_view.h"
#include "ui/view/room_mode.h"

#include <QApplication>
#include <QElapsedTimer>
#include <QProcess>
#include <QtCore/qtestsupport_core.h>
#include <QtWidgets/qtestsupport_widgets.h>

#include <fmt/format.h>
#include <unistd.h>

#include <algorithm>
#include <cstdio>
#include <ctime>
#include <fstream>
#include <numeric>
#include <span>
#include <string_view>

namespace tiepoint::ui {
namespace {

constexpr int kFrames = 240;
const QSize kScreen(1920, 1080);

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
    static double average(const std::vector<double>& times) {
        return std::accumulate(times.begin(), times.end(), 0.0) / static_cast<double>(times.size());
    }
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

    Desk(ThemeName theme, const Views& views) {
        view.setThemeName(theme);
        view.setViews(views);
        QObject::connect(&document, &BenchDocument::benchChanged, &view,
                         [this] { live.setLayout(document.revision(), view.picture().layout); });
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
            return snapshot && snapshot->inputSequence == live.inputs().sequence &&
                   snapshot->revision == document.revision();
        };
        while (!answered()) QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents);
    }
    void paint() { view.viewport()->repaint(); }
    void send(QEvent::Type type, QPointF at, Qt::MouseButton button, Qt::MouseButtons buttons) {
        QMouseEvent event(type, at, view.viewport()->mapToGlobal(at), button, buttons, Qt::NoModifier);
        QApplication::sendEvent(view.viewport(), &event);
    }
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
    std::printf("  %-44s %8.2f ms   bar %6.1f ms   ratio to the bar %5.2f   ratio to a blit %6.1f\n", what, ms, barMs,
                ms / barMs, ms / calibrationMs);
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

/// Before a room, with the ring about the pointer.
void measureProjecting(Desk& desk) {
    desk.view.room().setProjecting(true);
    desk.view.viewport()->setAttribute(Qt::WA_UnderMouse);
    QTest::qWait(300);
    measureFrames(desk, "projecting", 4, 6, 5);
    desk.view.viewport()->setAttribute(Qt::WA_UnderMouse, false);
    desk.view.room().setProjecting(false);
    QTest::qWait(300);
}

void measurePan(Desk& desk) {
    desk.view.zoomAt(QPointF(desk.view.viewport()->rect().center()), 1.5625);
    QTest::qWait(300);
    Times frames;
    QPointF at = desk.view.viewport()->rect().center();
    desk.send(QEvent::MouseButtonPress, at, Qt::MiddleButton, Qt::MiddleButton);
    for (int i = 0; i < 120; ++i) {
        at += QPointF(i % 60 < 30 ? 6 : -6, i % 60 < 30 ? 2 : -2);
        frames.add([&] {
            desk.send(QEvent::MouseMove, at, Qt::NoButton, Qt::MiddleButton);
            desk.waitForFrame();
        });
    }
    desk.send(QEvent::MouseButtonRelease, at, Qt::MiddleButton, Qt::NoButton);
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

/// Fifty things follow the pointer so fast that nearly every move takes them to the next hole.
void measureDrag(Desk& desk) {
    constexpr int kThings = 50;
    QStringList ids;
    const Bench& bench = *desk.document.bench();
    for (const Part& part : bench.parts) {
        if (part.kind->package->reach != Reach::Flying && ids.size() < kThings) ids << QString::fromStdString(part.id);
    }
    for (const Jumper& jumper : bench.jumpers) {
        if (ids.size() < kThings) ids << QString::fromStdString(jumper.id);
    }
    desk.view.setSelection(ids);
    QTest::qWait(100);
    const std::size_t first = static_cast<std::size_t>(bench.partIndex(ids.front().toStdString()));
    QPointF at = desk.view.fromMm(desk.view.picture().table->parts[first].pose.centre);
    Times frames;
    desk.send(QEvent::MouseButtonPress, at, Qt::LeftButton, Qt::LeftButton);
    for (int i = 0; i < 120; ++i) {
        at += QPointF(i % 60 < 30 ? 15 : -15, 0);
        frames.add([&] {
            desk.send(QEvent::MouseMove, at, Qt::NoButton, Qt::LeftButton);
            desk.waitForFrame();
        });
        if (i == 60 && (!desk.view.picture().marks.group || desk.view.picture().marks.targets.empty()))
            std::printf("  NOTHING IS DRAGGED\n");
    }
    QKeyEvent escape(QEvent::KeyPress, Qt::Key_Escape, Qt::NoModifier);
    QApplication::sendEvent(&desk.view, &escape);
    desk.send(QEvent::MouseButtonRelease, at, Qt::LeftButton, Qt::NoButton);
    print(fmt::format("{} things dragged: frame, average", ids.size()).c_str(), Times::average(frames.wall), 16.7);
    print("dragged: frame, 95th percentile", Times::at(frames.wall, 0.95), 16.7);
    print("dragged: process time a frame", Times::average(frames.process), 16.7);
    desk.view.setSelection({});
    QTest::qWait(100);
}

double residentMegabytes() {
    std::ifstream statm("/proc/self/statm");
    long total = 0, resident = 0;
    statm >> total >> resident;
    return static_cast<double>(resident) * static_cast<double>(sysconf(_SC_PAGESIZE)) / 1e6;
}

/// What a process measures.
struct Setup {
    const char *ratio, *theme, *views;
};
constexpr const char *kRatios[] = {"1", "2"}, *kThemes[] = {"day", "dark", "projector"}, *kViews[] = {"fresh", "all"};

ThemeName themeNamed(std::string_view name) {
    return name == "day" ? ThemeName::Day : name == "dark" ? ThemeName::Dark : ThemeName::Projector;
}

Views viewsNamed(std::string_view name) {
    Views views;
    if (name == "all") views.voltage = views.strips = true;
    return views;
}

void measure(const Setup& setup) {
    Desk desk(themeNamed(setup.theme), viewsNamed(setup.views));
    const double ratio = desk.view.devicePixelRatioF();
    const QSize device = (QSizeF(desk.view.viewport()->size()) * ratio).toSize();
    calibrationMs = blitMs(device);
    std::printf("%s, %s views, device pixel ratio %g: %d x %d device pixels, calibration blit %.2f ms\n", setup.theme,
                setup.views, ratio, device.width(), device.height(), calibrationMs);
    desk.open(test::crowdedBoards(1, test::kFullBoard));
    std::printf("  %d parts, %d jumpers, arrows move: %s\n", static_cast<int>(desk.document.bench()->parts.size()),
                static_cast<int>(desk.document.bench()->jumpers.size()), desk.view.isMoving() ? "yes" : "no");
    measureFrames(desk, "one full board", 4, 6, 5);
    std::printf("  resident memory at fit: %.0f MB, bar 150 MB\n", residentMegabytes());
    measureProjecting(desk);
    measurePress(desk);
    measureZoom(desk);
    measurePan(desk);
    measureDrag(desk);
    desk.open(test::crowdedBoards(10, test::kHalfFullBoard));
    measureFrames(desk, fmt::format("ten boards, {} parts", desk.document.bench()->parts.size()).c_str(), 8, 12, 8);
    desk.open(test::crowdedBoards(10, test::kFullBoard));
    measureFrames(desk, fmt::format("ten full boards, {} parts", desk.document.bench()->parts.size()).c_str(), 8, 12,
                  8);
}

/// Runs this program again with another ratio, and waits for it.
void measureApart(const char* program, const Setup& setup) {
    std::fflush(stdout);
    QProcess child;
    QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
    environment.insert("QT_SCALE_FACTOR", setup.ratio);
    child.setProcessEnvironment(environment);
    child.setProcessChannelMode(QProcess::ForwardedChannels);
    child.start(QString::fromLocal8Bit(program), {QStringLiteral("--measure"), setup.ratio, setup.theme, setup.views});
    child.waitForFinished(-1);
}

/// Whether the arguments name this one, or none of its kind.
bool isWanted(const char* name, std::span<const char* const> kind, const QStringList& arguments) {
    const bool narrowed = std::any_of(kind.begin(), kind.end(),
                                      [&](const char* other) { return arguments.contains(QLatin1String(other)); });
    return !narrowed || arguments.contains(QLatin1String(name));
}

}  // namespace
}  // namespace tiepoint::ui

int main(int argc, char** argv) {
    using namespace tiepoint::ui;
    if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
    if (argc == 5 && QByteArray(argv[1]) == "--measure") {
        QApplication application(argc, argv);
        measure({argv[2], argv[3], argv[4]});
        return 0;
    }
    QCoreApplication application(argc, argv);
    const QStringList arguments = QCoreApplication::arguments().mid(1);
    for (const char* ratio : kRatios) {
        for (const char* theme : kThemes) {
            for (const char* views : kViews) {
                if (isWanted(ratio, kRatios, arguments) && isWanted(theme, kThemes, arguments) &&
                    isWanted(views, kViews, arguments))
                    measureApart(argv[0], {ratio, theme, views});
            }
        }
    }
}
