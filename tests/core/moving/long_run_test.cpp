// Long runs, and runs in pieces: a beacon of two transistors chopped in any way does the same, and an hour costs no memory.

#include "core/base/embedded.h"
#include "core/bench/bench_file.h"
#include "core/snapshot/pinned_value.h"
#include "core/snapshot/runner.h"

#include <gtest/gtest.h>
#include <malloc.h>

#include <algorithm>
#include <cmath>
#include <random>
#include <stdexcept>

namespace tiepoint::test {
namespace {

/// The flashing beacon of the harbour.
std::shared_ptr<const Bench> longBeacon() {
    for (const EmbeddedFile& file : embeddedFiles()) {
        if (file.name != "benches/flashing-beacon.bench.json") continue;
        auto read = readBench(file.text);
        if (read.ok()) return std::make_shared<const Bench>(std::move(read).value().bench);
    }
    throw std::runtime_error("there is no flashing beacon");
}

double baseVolt(Runner& runner, const Hole& hole) {
    const auto snapshot = runner.snapshot();
    EXPECT_EQ(snapshot->status(), Status::Solved) << snapshot->solution.reason;
    return pinnedValue(*snapshot, {"M1", VoltsAt{hole}, {}}).value;
}

TEST(LongRun, ChoppedAtRandomItDoesTheSame) {
    const auto bench = longBeacon();
    const Part& transistor = *bench->findPart("Q1");
    const Hole base = *transistor.leads[static_cast<std::size_t>(transistor.kind->leadIndex("base"))];
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
                        other.parts[static_cast<std::size_t>(bench->partIndex("R1"))].values[0] = 470;
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
    runner->setBench(1, longBeacon());
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
