// How a bench is brought along beside the wall's clock. The wall's times are made up, so nothing here depends on how fast a machine is.

#include "ui/live/paced_run.h"

#include "support/build_bench.h"
#include "support/moving_runner.h"
#include "ui/live/mailbox.h"

#include <gtest/gtest.h>

#include <cmath>

namespace tiepoint::ui {
namespace {

constexpr double kTick = PacedRun::kTickSecond;

std::shared_ptr<const Layout> lampLayout() {
    return buildLayout(test::BenchBuilder()
                           .board("A", "half")
                           .part("PS1", "bench-supply", {{"+", "A.a1"}, {"-", "A.a10"}})
                           .part("R1", "resistor", {{"1", "A.b1"}, {"2", "A.b5"}})
                           .part("D1", "led", {{"anode", "A.c5"}, {"cathode", "A.b10"}})
                           .share());
}

/// A run of a bench that moves, from 100 s on the wall.
struct Pace {
    static constexpr double kStart = 100;

    test::Motion motion;
    PacedRun run{std::make_unique<test::MovingRunner>(motion), kStart};

    Pace() { run.setLayout(1, lampLayout()); }
    void setRate(double scale, bool paused, double wallSecond) {
        Inputs inputs;
        inputs.timeScale = scale;
        run.take({wallSecond, inputs, paused});
    }
    double benchSecond() const { return motion.times().back(); }
};

TEST(PacedRun, TicksSixtyTimesASecondWhileSomethingMoves) {
    Pace pace;
    double wall = Pace::kStart;
    for (int tick = 1; tick <= 60; ++tick) {
        EXPECT_NEAR(pace.run.nextTickSecond(), wall + kTick, 1e-9);
        wall = pace.run.nextTickSecond();
        pace.run.bringTo(wall);
        EXPECT_NEAR(pace.benchSecond(), tick / 60.0, 1e-9);
    }
}

TEST(PacedRun, TheClockRunsAtItsScale) {
    Pace pace;
    pace.run.bringTo(Pace::kStart + kTick);
    pace.setRate(0.1, false, Pace::kStart + kTick);
    pace.run.bringTo(Pace::kStart + 2 * kTick);
    EXPECT_NEAR(pace.benchSecond(), 1.1 * kTick, 1e-9);
    EXPECT_NEAR(pace.run.nextTickSecond(), Pace::kStart + 3 * kTick, 1e-9) << "as many pictures as ever";
    pace.setRate(10, false, Pace::kStart + 2 * kTick);
    pace.run.bringTo(Pace::kStart + 3 * kTick);
    EXPECT_NEAR(pace.benchSecond(), 11.1 * kTick, 1e-9);
}

TEST(PacedRun, StandsWhilePausedWithoutATick) {
    Pace pace;
    pace.run.bringTo(Pace::kStart + kTick);
    pace.setRate(1, true, Pace::kStart + 2 * kTick);
    EXPECT_TRUE(std::isinf(pace.run.nextTickSecond()));
    pace.run.bringTo(Pace::kStart + 50);
    EXPECT_NEAR(pace.benchSecond(), 2 * kTick, 1e-9);
    pace.setRate(1, false, Pace::kStart + 60);
    EXPECT_NEAR(pace.run.nextTickSecond(), Pace::kStart + 60 + kTick, 1e-9);
    pace.run.bringTo(Pace::kStart + 60 + kTick);
    EXPECT_NEAR(pace.benchSecond(), 3 * kTick, 1e-9) << "it goes on where it stood";
}

TEST(PacedRun, SleepsWhileNothingMoves) {
    Pace pace;
    pace.motion.moving = false;
    EXPECT_TRUE(std::isinf(pace.run.nextTickSecond()));
    pace.run.bringTo(Pace::kStart + 3600);
    EXPECT_NEAR(pace.benchSecond(), 3600, 1e-9) << "an hour at rest is no work";
    pace.motion.moving = true;
    EXPECT_NEAR(pace.run.nextTickSecond(), Pace::kStart + 3600 + kTick, 1e-9);
}

TEST(PacedRun, ABenchThatCantKeepUpRunsSlow) {
    Pace pace;
    double wall = Pace::kStart;
    for (int tick = 1; tick <= 10; ++tick) {
        wall += 1;  // each takes a second
        pace.run.bringTo(wall);
        EXPECT_NEAR(pace.benchSecond(), tick * PacedRun::kMostSecond, 1e-9);
    }
    pace.run.bringTo(wall + kTick);
    EXPECT_NEAR(pace.benchSecond(), 10 * PacedRun::kMostSecond + kTick, 1e-9) << "it doesn't run after the lost time";
}

TEST(PacedRun, InputsComeAtTheirOwnTimes) {
    Pace pace;
    Inputs pressed, released;
    pressed.held = {"S1"};
    pressed.sequence = 1;
    released.sequence = 2;
    pace.run.take({Pace::kStart + 0.2 * kTick, pressed});
    EXPECT_NEAR(pace.benchSecond(), 0.2 * kTick, 1e-9);
    EXPECT_TRUE(pace.run.snapshot()->inputs->held.contains("S1")) << "a press shorter than a tick isn't lost";
    pace.run.take({Pace::kStart + 0.5 * kTick, released});
    EXPECT_NEAR(pace.benchSecond(), 0.5 * kTick, 1e-9);
    pace.run.take({Pace::kStart + 0.4 * kTick, released});
    EXPECT_NEAR(pace.benchSecond(), 0.5 * kTick, 1e-9) << "time doesn't run back";
}

TEST(PacedRun, RestsUntilAPlannedPress) {
    PacedRun run(makeRestingRunner(), 0);
    run.setLayout(1, lampLayout());
    EXPECT_TRUE(std::isinf(run.nextTickSecond()));
    Inputs inputs;
    inputs.presses = {{"S1", 5, 6}};
    inputs.timeScale = 2;
    run.take({1, inputs});
    EXPECT_NEAR(run.nextTickSecond(), 3, 1e-9) << "1 s of the bench has gone by, 4 s are to come, at twice the speed";
    run.bringTo(3);
    EXPECT_NEAR(run.nextTickSecond(), 3.5, 1e-9);
    run.bringTo(3.5);
    EXPECT_TRUE(std::isinf(run.nextTickSecond()));
}

TEST(Mailbox, TheNewestWinsAndItsReaderIsToldOnce) {
    Mailbox<int> box;
    EXPECT_TRUE(box.put(1));
    EXPECT_FALSE(box.put(2));
    EXPECT_FALSE(box.put(3));
    EXPECT_EQ(box.take(), 3);
    EXPECT_TRUE(box.put(4));
    EXPECT_EQ(box.take(), 4);
}

}  // namespace
}  // namespace tiepoint::ui
