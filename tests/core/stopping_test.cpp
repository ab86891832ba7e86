// What is reckoned beside can be given up at once, wherever it is.

#include "core/base/stopping.h"

#include "core/findings/finding.h"
#include "core/truth/truth_table.h"
#include "core/why/explain.h"
#include "support/build_bench.h"
#include "support/troubled_boards.h"

#include <fmt/format.h>
#include <gtest/gtest.h>
#include <pthread.h>
#include <time.h>

#include <atomic>
#include <chrono>
#include <cstdio>
#include <functional>
#include <memory>
#include <thread>

namespace tiepoint {
namespace {

constexpr double kMostMs = 100;
constexpr std::size_t kFewestParts = 800;

TEST(Stopping, OnlyInsideOfAScopeAndOnlyWhenAsked) {
    std::stop_source source;
    EXPECT_NO_THROW(stopIfAsked());
    {
        const StopScope scope(source.get_token());
        EXPECT_NO_THROW(stopIfAsked());
        source.request_stop();
        EXPECT_THROW(stopIfAsked(), Stopped);
        {
            const StopScope inner{std::stop_token()};
            EXPECT_NO_THROW(stopIfAsked());
        }
        EXPECT_THROW(stopIfAsked(), Stopped);
        std::thread([] { EXPECT_NO_THROW(stopIfAsked()); }).join();
    }
    EXPECT_NO_THROW(stopIfAsked());
}

/// Processor time of a thread, so that a busy machine doesn't count.
double msOf(pthread_t thread) {
    clockid_t clock{};
    timespec time{};
    pthread_getcpuclockid(thread, &clock);
    clock_gettime(clock, &time);
    return static_cast<double>(time.tv_sec) * 1e3 + static_cast<double>(time.tv_nsec) * 1e-6;
}

/// How long a work goes on after it was told to stop, so many milliseconds of its own time after its beginning; negative if it was done
/// by itself before.
double msToStop(const std::function<void()>& work, double afterMs) {
    std::stop_source source;
    std::atomic<bool> done = false, stopped = false;
    double endMs = 0;
    std::thread thread([&] {
        const StopScope scope(source.get_token());
        try {
            work();
        } catch (const Stopped&) {
            stopped = true;
        }
        endMs = msOf(pthread_self());
        done = true;
        while (!source.stop_requested()) std::this_thread::yield();
    });
    while (!done && msOf(thread.native_handle()) < afterMs) std::this_thread::sleep_for(std::chrono::milliseconds(1));
    const double askedMs = msOf(thread.native_handle());
    source.request_stop();
    thread.join();
    return stopped ? endMs - askedMs : -1;
}

struct Work {
    const char* name;
    std::function<void()> run;
};

TEST(Stopping, TakesNoTimeHoweverMuchIsLeftToReckon) {
    const auto bench = std::make_shared<const Bench>(test::troubledBoards());
    ASSERT_GE(bench->parts.size(), kFewestParts);
    const auto snapshot = evaluate(bench);
    const int light = bench->partIndex("D1");
    ASSERT_GE(light, 0);
    for (const Work& work :
         {Work{"findings", [&] { inspect(*snapshot); }}, Work{"why", [&] { explain(*snapshot, light); }}}) {
        double worst = 0;
        int stops = 0;
        for (const double afterMs : {0.0, 3.0, 20.0, 50.0, 80.0, 120.0, 180.0, 260.0, 400.0, 600.0, 900.0}) {
            const double ms = msToStop(work.run, afterMs);
            if (ms < 0) continue;
            ++stops;
            worst = std::max(worst, ms);
        }
        std::printf("%s: %d stops, the slowest took %.1f ms; bar %.0f ms\n", work.name, stops, worst, kMostMs);
        EXPECT_GE(stops, 9) << work.name << " is done too soon to tell";
        EXPECT_LT(worst, kMostMs) << work.name;
    }
}

TEST(Stopping, ATruthTableIsGivenUpToo) {
    test::BenchBuilder builder;
    builder.board("A", "full")
        .board("B", "full", 66, 0)
        .part("PS1", "bench-supply", {{"+", "A.top+1"}, {"-", "A.top-1"}});
    for (int i = 1; i <= kMostTableSwitches; ++i) {
        const int column = 4 * i;
        builder.jumper(fmt::format("A.top+{}", i + 1), fmt::format("A.a{}", column));
        builder.part(fmt::format("S{}", i), "push-button",
                     {{"1a", fmt::format("A.e{}", column)},
                      {"1b", fmt::format("A.f{}", column)},
                      {"2a", fmt::format("A.e{}", column + 2)},
                      {"2b", fmt::format("A.f{}", column + 2)}});
        builder.part(fmt::format("R{}", i), "resistor",
                     {{"1", fmt::format("A.j{}", column + 2)}, {"2", fmt::format("B.j{}", column + 2)}});
        builder.part(fmt::format("D{}", i), "led",
                     {{"anode", fmt::format("B.f{}", column + 2)}, {"cathode", fmt::format("B.f{}", column + 3)}});
        builder.jumper(fmt::format("B.j{}", column + 3), fmt::format("A.top-{}", i + 1));
    }
    const auto layout = buildLayout(std::make_shared<const Bench>(builder.build()));
    ASSERT_TRUE(makeTruthTable(layout).ok());
    for (const double afterMs : {0.0, 1.0, 3.0, 8.0, 20.0}) {
        const double ms = msToStop([&] { EXPECT_TRUE(makeTruthTable(layout).ok()); }, afterMs);
        EXPECT_LT(ms, kMostMs) << afterMs;
        if (afterMs < 2) {
            EXPECT_GE(ms, 0) << "it was done before it was stopped";
        }
    }
}

}  // namespace
}  // namespace tiepoint
