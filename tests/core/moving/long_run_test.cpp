// Long runs, and runs in pieces: a beacon of two transistors chopped in any way does the same, and an hour costs no memory.

#include "core/bench/bench_file.h"
#include "core/snapshot/pinned_value.h"
#include "core/snapshot/runner.h"
#include "support/wired_bench.h"

#include <gtest/gtest.h>
#include <malloc.h>

#include <algorithm>
#include <cmath>
#include <random>

namespace tiepoint::test {
namespace {

WiredBench longBeacon(double farad) {
    WiredBench wired;
    wired.part("PS1", "bench-supply", {{"+", "plus"}, {"-", "minus"}})
        .part("R1", "resistor", {{"1", "plus"}, {"2", "anode"}}, {{"resistance", 330}})
        .part("D1", "led", {{"anode", "anode"}, {"cathode", "c1"}})
        .part("R2", "resistor", {{"1", "plus"}, {"2", "b1"}}, {{"resistance", 15e3}})
        .part("R3", "resistor", {{"1", "plus"}, {"2", "b2"}}, {{"resistance", 15e3}})
        .part("R4", "resistor", {{"1", "plus"}, {"2", "c2"}}, {{"resistance", 330}})
        .part("Q1", "npn", {{"collector", "c1"}, {"base", "b1"}, {"emitter", "minus"}})
        .part("Q2", "npn", {{"collector", "c2"}, {"base", "b2"}, {"emitter", "minus"}})
        .part("C1", "electrolytic-capacitor", {{"+", "c1"}, {"-", "b2"}}, {{"capacitance", farad}})
        .part("C2", "electrolytic-capacitor", {{"+", "c2"}, {"-", "b1"}}, {{"capacitance", farad}});
    return wired;
}

double baseVolt(Runner& runner, const Hole& hole) {
    const auto snapshot = runner.snapshot();
    EXPECT_EQ(snapshot->status(), Status::Solved) << snapshot->solution.reason;
    return pinnedValue(*snapshot, {"M1", VoltsAt{hole}, {}}).value;
}

TEST(LongRun, ChoppedAtRandomItDoesTheSame) {
    const WiredBench wired = longBeacon(1e-5);
    const auto bench = wired.share();
    const Hole base = wired.holeOf("b2");
    constexpr double kEvery = 0.013,
                     kNear = 4e-4;  // a base falls by volts within microseconds: there the time may be out a little
    constexpr int kSamples = 80;
    std::vector<double> least, greatest;
    const auto whole = makeRunner();
    whole->setBench(1, bench);
    for (int i = 1; i <= kSamples; ++i) {
        double low = 100, high = -100;
        for (const double beside : {-kNear, 0.0, kNear}) {
            whole->advanceTo(i * kEvery + beside);
            const double volt = baseVolt(*whole, base);
            low = std::min(low, volt);
            high = std::max(high, volt);
        }
        least.push_back(low);
        greatest.push_back(high);
    }
    EXPECT_LT(*std::ranges::min_element(least), -1);  // it swings
    EXPECT_GT(*std::ranges::max_element(greatest), 0.5);

    for (const std::uint32_t seed : {1U, 2U, 3U}) {
        std::mt19937 random(seed);
        auto runner = makeRunner();
        runner->setBench(1, bench);
        double now = 0, begun = 0;  // by the bench's clock; where the present runner began
        std::uint64_t revision = 1;
        for (int i = 1; i <= kSamples; ++i) {
            const double goal = i * kEvery;
            while (now < goal) {
                now = std::min(goal, now + std::uniform_real_distribution<double>(1e-4, 2e-2)(random));
                runner->advanceTo(now - begun);
                switch (random() % 8) {
                    case 0: {  // edited and back
                        auto other = *bench;
                        other.parts[static_cast<std::size_t>(bench->partIndex("R4"))].values[0] = 470;
                        runner->setBench(++revision, std::make_shared<const Bench>(other));
                        runner->setBench(++revision, bench);
                        break;
                    }
                    case 1: {  // saved and opened again, where it stood
                        const State state = runner->state();
                        auto read = readBench(writeBench(*bench));
                        ASSERT_TRUE(read.ok());
                        runner = makeRunner();
                        begun = now;
                        runner->setBench(1, std::make_shared<const Bench>(std::move(read).value().bench));
                        runner->setState(state);
                        break;
                    }
                    case 2:  // a pause
                        runner->advanceTo(now - begun);
                        break;
                    default:
                        break;
                }
            }
            const double volt = baseVolt(*runner, base);
            const auto sample = static_cast<std::size_t>(i - 1);
            EXPECT_GT(volt, least[sample] - 0.02) << seed << " at " << goal;
            EXPECT_LT(volt, greatest[sample] + 0.02) << seed << " at " << goal;
        }
    }
}

TEST(LongRun, TimeCostsNoMemory) {
    // A sixth of an hour, read sixty times a second at ten times the pace of life.
    const auto runner = makeRunner();
    runner->setBench(1, longBeacon(4.7e-5).share());
    constexpr double kTick = 10.0 / 60, kWarm = 20, kEnd = 620;
    std::size_t before = 0;
    int tick = 0;
    for (; tick * kTick < kEnd; ++tick) {
        runner->advanceTo(tick * kTick);
        ASSERT_EQ(runner->snapshot()->status(), Status::Solved);
        if (before == 0 && tick * kTick >= kWarm) before = mallinfo2().uordblks;
    }
    const std::size_t after = mallinfo2().uordblks;
    constexpr std::size_t kSlack = 4096;
    EXPECT_LT(after, before + kSlack);
    EXPECT_GT(tick, 3600);
}

}  // namespace
}  // namespace tiepoint::test
