// An oscilloscope's sweeps, measures and averages, against closed forms of the waves that it is fed.

#include "core/scope/sweeper.h"

#include "core/allocations.h"
#include "core/scope/averager.h"
#include "core/scope/spark.h"

#include <gtest/gtest.h>

#include <cmath>
#include <functional>
#include <numbers>

namespace tiepoint {
namespace {

using Wave = std::function<double(double)>;

Piece3 pieceOf(const Wave& wave, double from, double until) {
    const auto at = [&](double share) { return wave(from + share * (until - from)); };
    return Piece3::through(from, until, {at(0), at(1.0 / 3), at(2.0 / 3), at(1 - 1e-9)});
}

void feed(Sweeper& sweeper, const Wave& one, const Wave& two, double from, double until, double step) {
    for (int i = 0; from + i * step < until - step / 2; ++i) {
        const double a = from + i * step, b = a + step;
        sweeper.take({pieceOf(one, a, b), pieceOf(two, a, b)});
    }
}

ScopeSettings settings(double secondsPerSquare) {
    ScopeSettings s;
    s.secondsPerSquare = secondsPerSquare;
    s.levelVolt = 0.5;
    s.plugged = {true, true};
    return s;
}

const Wave kNothing = [](double) { return 0.0; };
const auto sine = [](double hertz, double amplitude, double mean = 0) {
    return [=](double t) { return mean + amplitude * std::sin(2 * std::numbers::pi * hertz * t); };
};
/// 5 V for a share of each period.
const auto pulse = [](double hertz, double duty) {
    return [=](double t) { return t * hertz - std::floor(t * hertz) < duty ? 5.0 : 0.0; };
};

TEST(Sweeper, ASineStandsStillAtItsTriggerAndIsMeasured) {
    Sweeper sweeper(settings(1e-3));
    feed(sweeper, sine(311, 2), kNothing, 0, 0.5, 1e-4);
    ScopeTrace trace;
    sweeper.publish(trace, 1);
    ASSERT_TRUE(trace.hasTrace());
    EXPECT_NEAR(sine(311, 2)(trace.triggerSecond), 0.5, 1e-4) << "just where it passes the level";
    EXPECT_GT(std::cos(2 * std::numbers::pi * 311 * trace.triggerSecond), 0) << "rising";
    EXPECT_NEAR(trace.triggerSecond - trace.leftSecond, 1e-3, 1e-12);
    const ScopeMeasures& m = trace.channels[0].measures;
    EXPECT_NEAR(m.hertz, 311, 0.01);
    EXPECT_NEAR(m.mean, 0, 1e-3);
    EXPECT_NEAR(m.effective, 2 / std::numbers::sqrt2, 1e-3);
    EXPECT_NEAR(m.least, -2, 1e-3);
    EXPECT_NEAR(m.greatest, 2, 1e-3);
    EXPECT_NEAR(m.duty, 0.5, 1e-2);
    // Every column holds just what the wave does in it.
    for (std::size_t i = 1; i < Sweeper::kColumns; ++i) {
        const double begin = trace.firstSecond + static_cast<double>(i) * trace.columnSecond;
        const double a = sine(311, 2)(begin), b = sine(311, 2)(begin + trace.columnSecond);
        EXPECT_LE(trace.channels[0].least[i], std::min(a, b) + 2e-3);
        EXPECT_GE(trace.channels[0].greatest[i], std::max(a, b) - 2e-3);
        EXPECT_NEAR(trace.channels[0].least[i], std::min(a, b), 0.06);
    }
}

TEST(Sweeper, AColumnShowsTheExtremesOfAllThatHappensInIt) {
    Sweeper sweeper(settings(0.02));  // a column is a fifth of a millisecond: three periods
    feed(sweeper, sine(15000, 3, 1), kNothing, 0, 1, 3e-6);
    ScopeTrace trace;
    sweeper.publish(trace, 1);
    ASSERT_TRUE(trace.hasTrace());
    for (std::size_t i = 1; i < Sweeper::kColumns; ++i) {
        ASSERT_NEAR(trace.channels[0].least[i], -2, 0.02) << i;
        ASSERT_NEAR(trace.channels[0].greatest[i], 4, 0.02) << i;
    }
    EXPECT_NEAR(trace.channels[0].measures.hertz, 15000, 1);
}

TEST(Sweeper, ANarrowPulseIsSeenHoweverWideAColumnIs) {
    ScopeSettings waiting = settings(0.1);
    waiting.sweep = ScopeSettings::Sweep::Waits;
    Sweeper sweeper(waiting);
    const Wave spike = [](double t) { return t > 0.50001 && t < 0.500015 ? 5.0 : 0.0; };
    double t = 0;
    for (const double next : {0.3, 0.50001, 0.500015, 0.7, 1.4, 1.9}) {
        sweeper.take({pieceOf([&](double) { return spike((t + next) / 2); }, t, next), pieceOf(kNothing, t, next)});
        t = next;
    }
    ScopeTrace trace;
    sweeper.publish(trace, 1);
    ASSERT_TRUE(trace.hasTrace());
    float highest = 0;
    for (const float v : trace.channels[0].greatest) highest = std::max(highest, v == v ? v : 0);
    EXPECT_EQ(highest, 5);
    EXPECT_NEAR(trace.triggerSecond, 0.50001, 1e-9);
}

TEST(Sweeper, ThePulseOfATimerHasItsDuty) {
    Sweeper sweeper(settings(0.5e-3));
    double t = 0;  // pieces end where it switches
    for (int i = 0; i < 60; ++i) {
        for (const double length : {0.3e-3, 0.7e-3}) {
            const double level = length < 0.5e-3 ? 5 : 0;
            sweeper.take({pieceOf([&](double) { return level; }, t, t + length), pieceOf(kNothing, t, t + length)});
            t += length;
        }
    }
    ScopeTrace trace;
    sweeper.publish(trace, 1);
    EXPECT_NEAR(trace.channels[0].measures.hertz, 1000, 1e-3);
    EXPECT_NEAR(trace.channels[0].measures.duty, 0.3, 1e-6);
    EXPECT_NEAR(trace.channels[0].measures.mean, 1.5, 1e-6);
    EXPECT_NEAR(trace.channels[0].measures.effective, 5 * std::sqrt(0.3), 1e-6);
}

TEST(Sweeper, OneShotSweepsOnceAndThenStandsUntilItIsArmed) {
    ScopeSettings once = settings(1e-3);
    once.sweep = ScopeSettings::Sweep::Once;
    Sweeper sweeper(once);
    ScopeTrace trace;
    feed(sweeper, kNothing, kNothing, 0, 0.1, 1e-3);
    sweeper.publish(trace, 1);
    EXPECT_FALSE(trace.hasTrace());
    EXPECT_TRUE(trace.waits);
    feed(sweeper, sine(100, 2), kNothing, 0.1, 0.2, 1e-4);
    sweeper.publish(trace, 1);
    ASSERT_TRUE(trace.hasTrace());
    EXPECT_TRUE(trace.stands);
    const double first = trace.triggerSecond;
    feed(sweeper, sine(100, 2), kNothing, 0.2, 0.3, 1e-4);
    sweeper.publish(trace, 1);
    EXPECT_EQ(trace.triggerSecond, first);
    sweeper.arm();
    feed(sweeper, sine(100, 2), kNothing, 0.3, 0.4, 1e-4);
    sweeper.publish(trace, 1);
    EXPECT_GT(trace.triggerSecond, 0.3);
}

TEST(Sweeper, AFallingEdgeOfTheOtherChannelTriggers) {
    ScopeSettings other = settings(1e-3);
    other.rising = false;
    other.source = 1;
    other.sweep = ScopeSettings::Sweep::Waits;
    Sweeper sweeper(other);
    feed(sweeper, sine(50, 1), sine(217, 3), 0, 0.3, 1e-4);
    ScopeTrace trace;
    sweeper.publish(trace, 1);
    ASSERT_TRUE(trace.hasTrace());
    EXPECT_NEAR(sine(217, 3)(trace.triggerSecond), 0.5, 1e-3);
    EXPECT_LT(std::cos(2 * std::numbers::pi * 217 * trace.triggerSecond), 0);
}

TEST(Sweeper, WithoutATriggerItSweepsAllTheSameUnlessItIsToldToWait) {
    Sweeper sweeper(settings(1e-3));
    const Wave flat = [](double) { return 3.0; };
    feed(sweeper, flat, kNothing, 0, 0.2, 0.01);
    ScopeTrace trace;
    sweeper.publish(trace, 1);
    ASSERT_TRUE(trace.hasTrace());
    EXPECT_NE(trace.triggerSecond, trace.triggerSecond);
    EXPECT_NEAR(trace.channels[0].measures.mean, 3, 1e-9);
    EXPECT_NE(trace.channels[0].measures.hertz, trace.channels[0].measures.hertz);
}

TEST(Sweeper, ASlowSweepIsSeenWhileItGoesOn) {
    Sweeper sweeper(settings(1));
    feed(sweeper, sine(0.5, 2), kNothing, 0, 4, 0.01);
    ScopeTrace trace;
    sweeper.publish(trace, 1);
    ASSERT_TRUE(trace.hasTrace());
    EXPECT_TRUE(trace.sweeping);
    EXPECT_NEAR(trace.nowSecond, 4, 1e-9);
    const auto columnAt = [&](double second) {
        return static_cast<std::size_t>((second - trace.firstSecond) / trace.columnSecond);
    };
    EXPECT_NEAR(trace.channels[0].least[columnAt(3.5)], sine(0.5, 2)(3.5), 0.05);
    const float after = trace.channels[0].least[columnAt(4.2)];
    EXPECT_NE(after, after) << "nothing was swept there yet";
}

TEST(Sweeper, TakingAndPublishingAllocateNothing) {
    if (!test::countsAllocations()) return;
    Sweeper sweeper(settings(1e-3));
    ScopeTrace trace;
    const Wave wave = sine(311, 2);
    const auto run = [&](double from) {
        for (int i = 0; i < 100; ++i) {
            const double a = from + i * 1e-4;
            sweeper.take({pieceOf(wave, a, a + 1e-4), pieceOf(wave, a, a + 1e-4)});
            sweeper.publish(trace, 1);
        }
    };
    run(0);
    const auto before = test::allocations();
    run(0.01);
    EXPECT_EQ(test::allocations(), before);
}

TEST(Averager, ReadsTheMeanAndTheRootMeanSquareOfWhatAlternates) {
    Averager averager;
    const auto wave = sine(50, 3, 1);
    for (int i = 0; i < 2000; ++i) averager.take(pieceOf(wave, i * 5e-4, (i + 1) * 5e-4));
    MeterAverage average;
    averager.publish(average);
    EXPECT_TRUE(average.alternates);
    EXPECT_NEAR(average.mean, 1, 0.02);
    EXPECT_NEAR(average.effective, std::sqrt(1 + 4.5), 0.02);
}

TEST(Averager, WhatOnlyChargesDoesNotAlternate) {
    Averager averager;
    const Wave charging = [](double t) { return 5 * (1 - std::exp(-t)); };
    for (int i = 0; i < 300; ++i) averager.take(pieceOf(charging, i * 0.01, (i + 1) * 0.01));
    MeterAverage average;
    averager.publish(average);
    EXPECT_FALSE(average.alternates);
    for (int i = 0; i < 30; ++i) averager.take(pieceOf([](double) { return 4.75; }, 3 + i * 10, 13 + i * 10));
    averager.publish(average);
    EXPECT_FALSE(average.alternates);
    EXPECT_NEAR(average.mean, 4.75, 1e-12);
}

TEST(Spark, KeepsTheExtremesOfTheLastSecondsSeen) {
    Spark spark;
    spark.follow(1);
    for (int i = 0; i < 6000; ++i) spark.take(i * 1e-3, sine(40, 2)(i * 1e-3));
    PinnedTrace trace;
    spark.publish(trace, 1e-3);
    EXPECT_TRUE(trace.varies);
    for (std::size_t i = 1; i + 1 < trace.least.size(); ++i) {
        EXPECT_NEAR(trace.least[i], -2, 0.05);
        EXPECT_NEAR(trace.greatest[i], 2, 0.05);
    }
    spark.begin();
    for (int i = 0; i < 100; ++i) spark.take(10 + i * 0.01, 1.5);
    spark.publish(trace, 1e-3);
    EXPECT_FALSE(trace.varies);
}

}  // namespace
}  // namespace tiepoint
