// The running bench: answers come from a worker, the newest request wins.

#include "support/build_bench.h"
#include "support/moving_runner.h"
#include "ui/document/bench_document.h"
#include "ui/live/live_bench.h"

#include <QElapsedTimer>
#include <QSignalSpy>
#include <QTest>

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <thread>

namespace tiepoint::ui {
namespace {

std::shared_ptr<const Bench> buttonAndResistor(double ohm) {
    return test::BenchBuilder()
        .board("A", "half")
        .part("PS1", "bench-supply", {{"+", "A.top+3"}, {"-", "A.bottom-3"}}, {{"voltage", 5}})
        .part("R1", "resistor", {{"1", "A.c8"}, {"2", "A.c14"}}, {{"resistance", ohm}})
        .part("S1", "push-button", {{"1a", "A.e14"}, {"1b", "A.f14"}, {"2a", "A.e16"}, {"2b", "A.f16"}})
        .jumper("A.top+7", "A.a8")
        .jumper("A.j16", "A.bottom-16")
        .share();
}

bool waitFor(const LiveBench& live, quint64 revision) {
    return QTest::qWaitFor([&] {
        const auto snapshot = live.snapshot();
        return snapshot && snapshot->revision == revision && snapshot->inputSequence == live.inputs().sequence;
    });
}

TEST(LiveBench, PressingJoinsAndReleasingParts) {
    LiveBench live;
    live.setBench(1, buttonAndResistor(1000));
    ASSERT_TRUE(waitFor(live, 1));
    EXPECT_LT(live.snapshot()->largestCurrentAmpere, 1e-9);
    live.setHeld("S1", true);
    ASSERT_TRUE(waitFor(live, 1));
    EXPECT_NEAR(live.snapshot()->largestCurrentAmpere, 5e-3, 5e-6);  // Ohm's law: 5 V over 1 kilohm
    live.releaseAll();
    ASSERT_TRUE(waitFor(live, 1));
    EXPECT_LT(live.snapshot()->largestCurrentAmpere, 1e-9);
}

TEST(LiveBench, TheNewestRequestWins) {
    LiveBench live;
    constexpr int kRequests = 300;
    live.setHeld("S1", true);
    for (int i = 1; i <= kRequests; ++i) live.setBench(static_cast<quint64>(i), buttonAndResistor(i));
    ASSERT_TRUE(waitFor(live, kRequests));
    EXPECT_NEAR(live.snapshot()->largestCurrentAmpere, 5.0 / kRequests, 1e-2 * 5.0 / kRequests);
    QTest::qWait(20);
    EXPECT_EQ(live.snapshot()->revision, static_cast<quint64>(kRequests)) << "no older answer came after the newest";
}

TEST(LiveBench, APartThatIsGoneIsNoLongerHeld) {
    LiveBench live;
    live.setBench(1, buttonAndResistor(1000));
    live.setHeld("S1", true);
    QSignalSpy changes(&live, &LiveBench::inputsChanged);
    live.setBench(2, std::make_shared<const Bench>(makeNewBench()));
    EXPECT_FALSE(live.isHeld("S1"));
    EXPECT_EQ(changes.count(), 1);
    EXPECT_TRUE(waitFor(live, 2));
}

TEST(LiveBench, HoldingTwiceIsOneChange) {
    LiveBench live;
    live.setHeld("S1", true);
    live.setHeld("S1", true);
    EXPECT_EQ(live.inputs().sequence, 1U);
    live.releaseAll();
    live.releaseAll();
    EXPECT_EQ(live.inputs().sequence, 2U);
}

TEST(LiveBench, EndsWhileAnswersAreUnderWay) {
    int answers = 0;
    for (int i = 0; i < 20; ++i) {
        LiveBench live;
        QObject::connect(&live, &LiveBench::snapshotReady, [&answers] { ++answers; });
        live.setBench(1, buttonAndResistor(1000));
    }
    QCoreApplication::processEvents();
    EXPECT_EQ(answers, 0) << "answers that were still queued have no receiver any more";
}

/// A bench that moves in a window.
struct MovingBench {
    test::Motion motion;
    LiveBench live{std::make_unique<test::MovingRunner>(motion)};

    void begin() { live.setBench(1, buttonAndResistor(1000)); }
    bool waitUntil(double second) {
        return QTest::qWaitFor([&] { return live.snapshot() && live.snapshot()->timeSecond >= second; });
    }
};

TEST(LiveBench, RunsABenchThatMoves) {
    MovingBench moving;
    QSignalSpy instants(&moving.live, &LiveBench::snapshotReady), answers(&moving.live, &LiveBench::answerReady);
    moving.begin();
    ASSERT_TRUE(moving.waitUntil(0.2));
    EXPECT_TRUE(moving.live.isTicking());
    EXPECT_GT(instants.count(), 1);
    EXPECT_EQ(answers.count(), 1) << "of the same bench and inputs there is one answer, however often time changes it";
    const auto times = moving.motion.times();
    EXPECT_TRUE(std::is_sorted(times.begin(), times.end()));
    for (std::size_t i = 1; i < times.size(); ++i) EXPECT_LE(times[i] - times[i - 1], 4.0 / 60 + 1e-9);
    moving.live.setHeld("S1", true);
    ASSERT_TRUE(waitFor(moving.live, 1));
    EXPECT_EQ(answers.count(), 2);
}

TEST(LiveBench, ASlowWindowFindsOnlyTheNewestSnapshot) {
    MovingBench moving;
    moving.begin();
    ASSERT_TRUE(moving.waitUntil(0.01));
    QSignalSpy instants(&moving.live, &LiveBench::snapshotReady);
    const int before = moving.motion.advances;
    while (moving.motion.advances < before + 20) std::this_thread::yield();  // the window is busy with something else
    const double reached = moving.motion.times().at(static_cast<std::size_t>(before) + 17);
    moving.motion.moving = false;  // so that no more come while the window takes what waits
    while (moving.live.isTicking()) std::this_thread::yield();
    QCoreApplication::processEvents();
    EXPECT_LE(instants.count(), 1) << "one call waits, not one for each tick";
    EXPECT_GE(moving.live.snapshot()->timeSecond, reached);
}

TEST(LiveBench, SleepsWithoutATimerWhenNothingMoves) {
    MovingBench moving;
    moving.motion.moving = false;
    moving.begin();
    ASSERT_TRUE(waitFor(moving.live, 1));
    EXPECT_TRUE(QTest::qWaitFor([&] { return !moving.live.isTicking(); }));
    const int advances = moving.motion.advances;
    QTest::qWait(100);
    EXPECT_EQ(moving.motion.advances, advances);
    moving.motion.moving = true;
    moving.live.setHeld("S1", true);  // a press sets it moving
    EXPECT_TRUE(QTest::qWaitFor([&] { return moving.motion.advances > advances + 5; }));
}

TEST(LiveBench, ARestingBenchHasNoTimerAtAll) {
    LiveBench live;
    EXPECT_FALSE(live.isTicking());
    live.setBench(1, buttonAndResistor(1000));
    ASSERT_TRUE(waitFor(live, 1));
    EXPECT_FALSE(live.isTicking());
    QSignalSpy instants(&live, &LiveBench::snapshotReady);
    QTest::qWait(100);
    EXPECT_EQ(instants.count(), 0);
}

TEST(LiveBench, PausingStopsTheBenchsClock) {
    MovingBench moving;
    moving.begin();
    ASSERT_TRUE(moving.waitUntil(0.05));
    moving.live.setPaused(true);
    EXPECT_TRUE(QTest::qWaitFor([&] { return !moving.live.isTicking(); }));
    QCoreApplication::processEvents();
    const double second = moving.live.snapshot()->timeSecond;
    moving.live.setHeld("S1", true);
    ASSERT_TRUE(waitFor(moving.live, 1)) << "presses are answered all the same";
    EXPECT_EQ(moving.live.snapshot()->timeSecond, second);
    moving.live.setPaused(false);
    EXPECT_TRUE(moving.waitUntil(second + 0.02));
}

TEST(LiveBench, NeverRunsAheadOfTheWall) {
    MovingBench moving;
    moving.live.setTimeScale(0.25);
    EXPECT_EQ(moving.live.inputs().sequence, 1U);
    moving.begin();
    QElapsedTimer wall;
    wall.start();
    const double begun = 0.05;  // what may have gone by before the clock here was started
    ASSERT_TRUE(moving.waitUntil(0.05));
    EXPECT_LE(moving.live.snapshot()->timeSecond, 0.25 * static_cast<double>(wall.elapsed()) * 1e-3 + begun);
    EXPECT_EQ(moving.live.snapshot()->inputs->timeScale, 0.25);
}

TEST(LiveBench, AWindowThatClosesEndsARunAtOnce) {
    test::Motion motion;
    motion.endless = true;
    {
        LiveBench live(std::make_unique<test::MovingRunner>(motion));
        live.setBench(1, buttonAndResistor(1000));
        while (!motion.inEndless) std::this_thread::yield();
    }
    SUCCEED() << "it would run for ever otherwise";
}

TEST(LiveBench, RunningDirtiesNoDocument) {
    BenchDocument document;
    document.reset(Bench(*buttonAndResistor(1000)), {});
    const auto bench = document.bench();
    const auto revision = document.revision();
    MovingBench moving;
    moving.live.setLayout(revision, buildLayout(bench));
    moving.live.setHeld("S1", true);
    moving.live.setTimeScale(2);
    ASSERT_TRUE(moving.waitUntil(0.1));
    moving.live.setPaused(true);
    moving.live.releaseAll();
    ASSERT_TRUE(waitFor(moving.live, revision));
    EXPECT_FALSE(document.isModified());
    EXPECT_EQ(document.bench(), bench) << "the very same";
    EXPECT_EQ(document.revision(), revision);
}

}  // namespace
}  // namespace tiepoint::ui
