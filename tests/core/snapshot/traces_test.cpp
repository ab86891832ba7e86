// What instruments show of a bench that moves, through the runner: an oscilloscope, a meter and a pinned reading at a signal source and at
// a capacitor that charges, against closed forms.

#include "core/meter/meter.h"
#include "core/snapshot/runner.h"
#include "support/build_bench.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace tiepoint {
namespace {

using test::BenchBuilder;

/// A sine of 1 kHz and 3 V about 1 V through 50 ohm and 1 kilohm, with an oscilloscope and a meter across the latter.
BenchBuilder waveBench(const char* average) {
    return BenchBuilder()
        .board("A", "half")
        .part("G1", "signal-source", {}, {{"frequency", 1000}, {"amplitude", 3}, {"offset", 1}})
        .jumper("G1.out", "A.a5")
        .part("R1", "resistor", {{"1", "A.b5"}, {"2", "A.b10"}}, {{"resistance", 1000}})
        .jumper("G1.-", "A.a10")
        .part("O1", "oscilloscope", {{"1", "A.c5"}, {"-", "A.c10"}}, {{"time", 0.5e-3}, {"level", 1}})
        .part("M1", "multimeter", {{"+", "A.d5"}, {"com", "A.d10"}}, {{"average", average}});
}

/// RC of 1 s, from power-up.
BenchBuilder chargingCircuit() {
    return BenchBuilder()
        .board("A", "half")
        .part("PS1", "bench-supply", {{"+", "A.top+3"}, {"-", "A.bottom-3"}}, {{"voltage", 5}})
        .jumper("A.top+8", "A.a5")
        .part("R1", "resistor", {{"1", "A.b5"}, {"2", "A.b10"}}, {{"resistance", 10e3}})
        .part("C1", "ceramic-capacitor", {{"1", "A.c10"}, {"2", "A.c12"}}, {{"capacitance", 100e-6}})
        .jumper("A.a12", "A.bottom-14")
        .part("O1", "oscilloscope", {{"1", "A.e10"}, {"-", "A.e12"}}, {{"time", 0.1}});
}

void runTicks(Runner& runner, double fromSecond, double untilSecond, double tick) {
    for (double t = fromSecond + tick; t < untilSecond + tick / 2; t += tick) {
        runner.advanceTo(t);
        runner.snapshot();
    }
}

TEST(Traces, AnOscilloscopeMeasuresASignalSource) {
    const auto runner = makeRunner();
    runner->setBench(1, waveBench("mean").share());
    runTicks(*runner, 0, 0.3, 1.0 / 60);
    const auto shown = runner->snapshot();
    EXPECT_TRUE(shown->moves);
    const ScopeTrace* trace = shown->traces.scopeOf("O1");
    ASSERT_TRUE(trace && trace->hasTrace());
    const double share = 1 / (1 + 50 * (1 / 1e3 + 1 / 1e6 + 1 / 1e7));
    const ScopeMeasures& m = trace->channels[0].measures;
    EXPECT_NEAR(m.hertz, 1000, 0.5);
    EXPECT_NEAR(m.mean, share, 0.01);
    EXPECT_NEAR(m.effective, share * std::sqrt(1 + 4.5), 0.01);
    EXPECT_NEAR(m.greatest, 4 * share, 0.01);
    EXPECT_NEAR(m.least, -2 * share, 0.01);
    EXPECT_TRUE(shown->alternates);
    const auto reading = meterReading(*shown, shown->layout->bench->partIndex("M1"));
    EXPECT_EQ(reading->average, "mean");
    EXPECT_NEAR(reading->value, share, 0.02);
}

TEST(Traces, AMeterReadsTheRootMeanSquareIfItIsSetSo) {
    const auto runner = makeRunner();
    runner->setBench(1, waveBench("rms").share());
    runTicks(*runner, 0, 0.3, 1.0 / 60);
    const auto shown = runner->snapshot();
    const auto reading = meterReading(*shown, shown->layout->bench->partIndex("M1"));
    EXPECT_EQ(reading->average, "rms");
    EXPECT_NEAR(reading->value, std::sqrt(1 + 4.5) / 1.05, 0.02);
}

TEST(Traces, TheTraceIsTheSameHoweverTheRunIsChopped) {
    const double share = 1e6 / (1e6 + 10e3), tau = 1.0 * share;
    std::vector<float> first;
    for (const double tick : {1.0 / 60, 1.0 / 7, 1.0 / 997}) {
        const auto runner = makeRunner();
        runner->setBench(1, chargingCircuit().share());
        runTicks(*runner, 0, 0.9, tick);
        const ScopeTrace& trace = *runner->snapshot()->traces.scopeOf("O1");
        ASSERT_TRUE(trace.hasTrace());
        int compared = 0;
        for (std::size_t i = 0; i < trace.channels[0].least.size(); ++i) {
            const double t = trace.firstSecond + static_cast<double>(i) * trace.columnSecond;
            if (t < 0.01 || t > 0.85 || std::isnan(trace.channels[0].least[i])) continue;
            EXPECT_NEAR(trace.channels[0].least[i], 5 * share * (1 - std::exp(-t / tau)), 2e-3) << t;
            ++compared;
        }
        EXPECT_GT(compared, 300);
    }
}

TEST(Traces, PowerUpBeginsAnew) {
    const auto runner = makeRunner();
    runner->setBench(1, chargingCircuit().share());
    runTicks(*runner, 0, 2, 1.0 / 60);
    const int lead = runner->snapshot()->layout->leadIndex(2, 0);
    EXPECT_GT(runner->snapshot()->leadVoltage(lead), 4);
    runner->restart();
    EXPECT_EQ(runner->snapshot()->timeSecond, 0);
    EXPECT_NEAR(runner->snapshot()->leadVoltage(lead), 0, 1e-3);
    runTicks(*runner, 0, 1, 1.0 / 60);
    EXPECT_NEAR(runner->snapshot()->leadVoltage(lead), 5 * (1 - std::exp(-1.0)), 0.05);
}

TEST(Traces, ArrowsShowTheMeanBetweenTwoSnapshots) {
    const auto runner = makeRunner();
    runner->setBench(1, waveBench("mean").share());
    runTicks(*runner, 0, 0.2, 1.0 / 50);  // whole periods
    const auto shown = runner->snapshot();
    const auto lead = static_cast<std::size_t>(shown->layout->leadIndex(shown->layout->bench->partIndex("R1"), 0));
    EXPECT_NEAR(shown->flowOfLead(lead), 1 / 1050.0, 2e-5);
}

TEST(Traces, APinnedReadingThatVariesHasItsTrace) {
    Bench bench = chargingCircuit().build();
    bench.pinned.push_back({"P1", VoltsAt{test::holeAt("A.d10")}, {}});
    bench.pinned.push_back({"P2", VoltsAt{test::holeAt("A.d5")}, {}});
    const auto runner = makeRunner();
    runner->setBench(1, std::make_shared<const Bench>(bench));
    runTicks(*runner, 0, 1, 1.0 / 60);
    const Traces& traces = runner->snapshot()->traces;
    ASSERT_TRUE(traces.pinnedOf("P1") && traces.pinnedOf("P2"));
    EXPECT_TRUE(traces.pinnedOf("P1")->varies);
    EXPECT_FALSE(traces.pinnedOf("P2")->varies) << "the supply's plus stands still";
}

}  // namespace
}  // namespace tiepoint
