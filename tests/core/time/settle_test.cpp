// What becomes of benches that are left alone, against closed forms.

#include "core/time/settle.h"

#include "support/build_bench.h"
#include "support/test_catalogue.h"

#include <gtest/gtest.h>

#include <cmath>

namespace tiepoint::test {
namespace {

/// 5 V, S1, R1 and C1 in a ring.
BenchBuilder charging(double ohm, double farad) {
    BenchBuilder builder(testCatalogue());
    builder.board("A", "half")
        .part("PS1", "bench-supply", {{"+", "A.top+1"}, {"-", "A.bottom-1"}}, {{"voltage", 5}, {"seriesResistance", 0}})
        .part("S1", "push-button", {{"1a", "A.e5"}, {"1b", "A.f5"}, {"2a", "A.e7"}, {"2b", "A.f7"}})
        .part("R1", "resistor", {{"1", "A.c7"}, {"2", "A.c13"}}, {{"resistance", ohm}})
        .part("C1", "electrolytic-capacitor", {{"+", "A.a13"}, {"-", "A.a15"}},
              {{"capacitance", farad}, {"seriesResistance", 0.001}, {"leakageResistance", 1e12}})
        .jumper("W1", "A.top+3", "A.a5", "red")
        .jumper("W2", "A.bottom-13", "A.e15", "black");
    return builder;
}

/// Two transistors and two capacitors crosswise: the flashing beacon.
BenchBuilder settlingBeacon(double farad) {
    BenchBuilder builder(testCatalogue());
    builder.board("A", "half")
        .part("PS1", "bench-supply", {{"+", "A.top+1"}, {"-", "A.bottom-1"}})
        .part("R1", "resistor", {{"1", "A.top+3"}, {"2", "A.b3"}}, {{"resistance", 330}})
        .part("D1", "led", {{"anode", "A.d3"}, {"cathode", "A.d4"}})
        .part("R2", "resistor", {{"1", "A.top+8"}, {"2", "A.b8"}}, {{"resistance", 15e3}})
        .part("R3", "resistor", {{"1", "A.top+14"}, {"2", "A.b14"}}, {{"resistance", 15e3}})
        .part("R4", "resistor", {{"1", "A.top+20"}, {"2", "A.b20"}}, {{"resistance", 330}})
        .part("Q1", "test-npn", {{"emitter", "A.h2"}, {"base", "A.h3"}, {"collector", "A.h4"}})
        .part("Q2", "test-npn", {{"emitter", "A.h20"}, {"base", "A.h21"}, {"collector", "A.h22"}})
        .part("C1", "electrolytic-capacitor", {{"+", "A.a4"}, {"-", "A.a6"}}, {{"capacitance", farad}})
        .part("C2", "electrolytic-capacitor", {{"+", "A.d20"}, {"-", "A.d18"}}, {{"capacitance", farad}})
        .jumper("W1", "A.e4", "A.f4", "red")
        .jumper("W2", "A.bottom-3", "A.j2", "black")
        .jumper("W3", "A.bottom-20", "A.j20", "black")
        .jumper("W4", "A.c20", "A.g22", "green")
        .jumper("W5", "A.d6", "A.c14", "green")
        .jumper("W6", "A.d14", "A.g21", "blue")
        .jumper("W7", "A.c18", "A.c8", "green")
        .jumper("W8", "A.d8", "A.g3", "blue");
    return builder;
}

Inputs held(const char* part) {
    Inputs inputs;
    inputs.held = {part};
    return inputs;
}

Settled settledBench(const BenchBuilder& builder, const Inputs& inputs = {}, double relative = 1e-5) {
    BenchRun run(Tolerance{relative, relative / 10, relative / 1e4});
    run.setLayout(buildLayout(builder.share()));
    run.setInputs(inputs);
    return settle(run);
}

int leadAt(const Bench& bench, const char* part, int lead) {
    return buildLayout(std::make_shared<const Bench>(bench))->leadIndex(bench.partIndex(part), lead);
}

TEST(Settle, AChargedCapacitorIsSteadyAndItsInrushIsKnown) {
    const BenchBuilder builder = charging(1000, 1e-4);
    const Settled settled = settledBench(builder, held("S1"));
    ASSERT_EQ(settled.ending, Ending::Steady);
    const auto lead = static_cast<std::size_t>(leadAt(builder.build(), "R1", 0));
    EXPECT_NEAR(settled.lasting.leadInjection[lead], 0, 1e-5 * 5e-3);  // within the tolerance of what once flowed
    // Through the contact (20 mohm), the resistor and the capacitor's own: 5 mA at first, falling by RC.
    EXPECT_NEAR(settled.leadAmpere[lead].greatest, 5e-3, 1e-5);
    EXPECT_LT(settled.leadAmpere[lead].greatestSecond, 1e-3);
    ASSERT_FALSE(settled.extremes.empty());
    EXPECT_NEAR(settled.extremes.front().solution.leadInjection[lead], 5e-3, 5e-5);
    EXPECT_FALSE(settled.extremes.front().returns);
    EXPECT_NEAR(settled.state.of("C1", Memory::Voltage), 5, 1e-4);
    // Heat lasts: with 25 mW falling by half the time constant, smoothed over a second, the peak of a e^(-t/b) - e^(-t/c).
    const double fast = 0.05, slow = 1, at = std::log(slow / fast) * fast * slow / (slow - fast);
    const double most = 0.025 * fast / (slow - fast) * (std::exp(-at / slow) - std::exp(-at / fast));
    EXPECT_NEAR(settled.warmWatt[static_cast<std::size_t>(builder.build().partIndex("R1"))], most, 0.05 * most);
}

TEST(Settle, WhatTakesLongerThanItIsFollowedIsUndecided) {
    const Settled settled = settledBench(charging(1e6, 1e-4), held("S1"));
    EXPECT_EQ(settled.ending, Ending::Undecided);
    EXPECT_NEAR(settled.followedSecond, 10, 1e-6);
    EXPECT_EQ(settled.lasting.status, Status::Solved);
}

TEST(Settle, ABeaconRepeatsAndItsPeriodIsThatOfItsFlips) {
    const BenchBuilder builder = settlingBeacon(1e-5);
    const Settled settled = settledBench(builder);
    ASSERT_EQ(settled.ending, Ending::Repeating);
    // Each base falls by what its capacitor's other side does, and rises towards 5 V until it conducts at about 0.7 V: R C ln((4.3 + fall) /
    // 4.3). One collector falls from 5 V, the other from 1.7 V less, for D1 holds it there, both to some tenths (common practice).
    const auto half = [](double fall) { return 15e3 * 1e-5 * std::log((4.3 + fall) / 4.3); };
    const double expected = half(4.8) + half(3.1);
    EXPECT_NEAR(settled.periodSecond, expected, 0.07 * expected);
    const Settled finer = settledBench(builder, {}, 1e-7);
    ASSERT_EQ(finer.ending, Ending::Repeating);
    EXPECT_NEAR(settled.periodSecond, finer.periodSecond, 1e-3 * finer.periodSecond);
    // Half the time D1 is lit, else dark; a capacitor passes nothing in the mean.
    const Bench bench = builder.build();
    const Envelope& light = settled.leadAmpere[static_cast<std::size_t>(leadAt(bench, "D1", 0))];
    EXPECT_LT(light.lastingLeast, 1e-4);
    EXPECT_GT(light.lastingGreatest, 6e-3);
    EXPECT_NEAR(light.mean / light.lastingGreatest, 0.5, 0.15);
    EXPECT_GT(light.rootMeanSquare, light.mean);
    const Envelope& store = settled.leadAmpere[static_cast<std::size_t>(leadAt(bench, "C2", 0))];
    EXPECT_NEAR(store.mean, 0, 1e-5);
}

TEST(Settle, AFlasherOfAboutOneHertzIsKnownWithinTheTimeThatItIsFollowed) {
    const BenchBuilder builder = settlingBeacon(4.7e-5);
    const Settled settled = settledBench(builder);
    ASSERT_EQ(settled.ending, Ending::Repeating);
    EXPECT_NEAR(settled.periodSecond, 1, 0.3);
    const Settled finer = settledBench(builder, {}, 1e-7);  // a hundredth of the tolerance
    ASSERT_EQ(finer.ending, Ending::Repeating);
    EXPECT_NEAR(settled.periodSecond, finer.periodSecond, 1e-3 * finer.periodSecond);
}

TEST(Settle, ABeaconThatTakesMoreThanThreeSecondsIsKnownToRepeat) {
    for (const double farad : {1.6e-4, 1.8e-4, 2e-4}) {
        const BenchBuilder builder = settlingBeacon(farad);
        const Settled settled = settledBench(builder);
        ASSERT_EQ(settled.ending, Ending::Repeating) << farad;
        EXPECT_GT(settled.periodSecond, 3) << farad;
        EXPECT_LT(settled.followedSecond, 10.001);
        const Settled quick = settledBench(settlingBeacon(farad / 10));  // the same, ten times as fast
        EXPECT_NEAR(settled.periodSecond, 10 * quick.periodSecond, 2e-3 * settled.periodSecond) << farad;
    }
}

TEST(Settle, FastBeaconsTakeNoMoreWorkThanSlowOnes) {
    BenchRun slow(Tolerance{1e-5, 1e-6, 1e-9}), fast(Tolerance{1e-5, 1e-6, 1e-9});
    slow.setLayout(buildLayout(settlingBeacon(1e-5).share()));
    fast.setLayout(buildLayout(settlingBeacon(1e-7).share()));
    EXPECT_EQ(settle(slow).ending, Ending::Repeating);
    EXPECT_EQ(settle(fast).ending, Ending::Repeating);
    EXPECT_LT(fast.run().workDone(), 2 * slow.run().workDone());
    EXPECT_LT(slow.run().workDone(), SettleLimits().mostWork / 3);
}

TEST(Settle, WorkIsBoundedAndThenNothingIsDecided) {
    BenchRun run;
    run.setLayout(buildLayout(settlingBeacon(1e-7).share()));
    const Settled settled = settle(run, {}, {10, 3000});
    EXPECT_EQ(settled.ending, Ending::Undecided);
    EXPECT_LT(run.run().workDone(), 5000);
}

}  // namespace
}  // namespace tiepoint::test
