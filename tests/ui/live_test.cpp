// The running bench: answers come from a worker, the newest request wins.

#include "support/build_bench.h"
#include "ui/live/live_bench.h"

#include <QSignalSpy>
#include <QTest>

#include <gtest/gtest.h>

#include <cmath>

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

}  // namespace
}  // namespace tiepoint::ui
