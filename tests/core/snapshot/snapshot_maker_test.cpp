// Snapshots of a bench that moves: light added up over time for each emitter, and no allocation from one to the next.

#include "core/snapshot/snapshot_maker.h"

#include "core/allocations.h"
#include "core/snapshot/lit.h"
#include "support/build_bench.h"
#include "support/moving_runner.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <condition_variable>
#include <deque>
#include <set>
#include <string>
#include <thread>

namespace tiepoint {
namespace {

using test::BenchBuilder;

/// A light that is made to take just its rated current: 20 mA through it.
BenchBuilder ratedLight() {
    return BenchBuilder()
        .board("A", "half")
        .part("PS1", "bench-supply", {{"+", "A.a1"}, {"-", "A.a10"}}, {{"voltage", 5}, {"currentLimit", 0.02}})
        .part("D1", "led", {{"anode", "A.b1"}, {"cathode", "A.b10"}});
}

/// A light fed through columns each of which two jumpers join to the next, above the gap and below it: two loops for each pair. With
/// many of them a net is no longer taken loop by loop.
std::shared_ptr<const Bench> ladderOfJumpers(int pairs) {
    BenchBuilder builder = BenchBuilder()
                               .board("A", "full")
                               .board("B", "mini", 0, 30)
                               .part("PS1", "bench-supply", {{"+", "A.e1"}, {"-", "B.a1"}})
                               .part("R1", "resistor", {{"1", "B.b2"}, {"2", "B.b1"}})
                               .jumper("A.f1", "A.a1");
    const auto hole = [](const char* row, int column) { return std::string("A.") + row + std::to_string(column); };
    for (int column = 1; column <= pairs; ++column) {
        for (const auto& [from, to] : {std::pair{"b", "a"}, {"d", "c"}, {"h", "g"}, {"j", "i"}})
            builder.jumper(hole(from, column), hole(to, column + 1));
    }
    const std::string end = hole("e", pairs + 1);
    return builder.part("D1", "led", {{"anode", pairs == 0 ? std::string_view("A.b1") : end}, {"cathode", "B.a2"}})
        .share();
}

std::unique_ptr<Runner> movingRunner(test::Motion& motion, const BenchBuilder& builder) {
    auto runner = std::make_unique<test::MovingRunner>(motion);
    runner->setBench(1, builder.share());
    return runner;
}

TEST(SnapshotMaker, AddsUpLightNotBrightness) {
    // Half of the time at 20 mA, half dark: the light of 10 mA (Talbot-Plateau), whose CIE 1976 lightness is 76.07.
    test::Motion motion;
    motion.hertz = 240;
    const auto runner = movingRunner(motion, ratedLight());
    EXPECT_NEAR(runner->snapshot()->brightness(1), 1, 1e-9) << "at once, before anything moved";
    runner->advanceTo(1.0 / 60);
    EXPECT_NEAR(runner->snapshot()->brightness(1), 0.76069261, 1e-8);
}

TEST(SnapshotMaker, EachSnapshotHasTheLightSinceTheOneBefore) {
    test::Motion motion;
    motion.hertz = 30;  // two ticks: one lit, one dark
    const auto runner = movingRunner(motion, ratedLight());
    std::array<double, 4> seen{};
    for (std::size_t tick = 0; tick < seen.size(); ++tick) {
        runner->advanceTo(static_cast<double>(tick + 1) / 60);
        seen[tick] = runner->snapshot()->brightness(1);
    }
    EXPECT_NEAR(seen[0], 1, 1e-6);
    EXPECT_NEAR(seen[1], 0, 1e-6);
    EXPECT_NEAR(seen[2], 1, 1e-6);
    EXPECT_NEAR(seen[3], 0, 1e-6);
}

TEST(SnapshotMaker, APartMayHaveSeveralLights) {
    // Two junctions against each other between the same leads, such as a lamp that is red one way and green the other.
    Bench bench = ratedLight().build();
    PartKind twoColours = *bench.parts[1].kind;
    twoColours.model.push_back(twoColours.model[0]);
    std::ranges::reverse(twoColours.model[1].between);
    bench.parts[1].kind = &twoColours;
    const auto oneWay = evaluate(std::make_shared<const Bench>(bench));
    ASSERT_EQ(oneWay->emitters->all.size(), 2u);
    EXPECT_EQ(oneWay->emitters->all[1].part, 1);
    EXPECT_EQ(oneWay->emitters->firstOfPart, (std::vector<int>{0, 0, 2}));
    EXPECT_NEAR(oneWay->emitterBrightness[0], 1, 1e-6);
    EXPECT_LT(oneWay->emitterBrightness[1], 1e-6);
    EXPECT_EQ(oneWay->brightness(1), oneWay->emitterBrightness[0]);

    std::swap(bench.parts[1].leads[0], bench.parts[1].leads[1]);
    const auto otherWay = evaluate(std::make_shared<const Bench>(bench));
    EXPECT_LT(otherWay->emitterBrightness[0], 1e-6);
    EXPECT_NEAR(otherWay->emitterBrightness[1], 1, 1e-6);
    EXPECT_EQ(otherWay->brightness(1), otherWay->emitterBrightness[1]);
    EXPECT_TRUE(isLit(*otherWay, 1));
    EXPECT_EQ(otherWay->brightness(0), 0) << "a supply gives no light";
}

TEST(SnapshotMaker, AThousandTicksAllocateNothing) {
    if (!test::countsAllocations()) return;
    for (const int pairs : {0, 5, 62}) {
        test::Motion motion;
        motion.keepsTimes = false;
        test::MovingRunner runner(motion);
        runner.setBench(1, ladderOfJumpers(pairs));
        std::shared_ptr<const Snapshot> shown, waiting;  // as in a window: one that it shows, one that is on its way
        double second = 0;
        const auto tick = [&] {
            runner.advanceTo(second += 1.0 / 60);
            shown = std::move(waiting);
            waiting = runner.snapshot();
        };
        for (int warm = 0; warm < 10; ++warm) tick();
        const auto before = test::allocations();
        for (int n = 0; n < 1000; ++n) tick();
        EXPECT_EQ(test::allocations() - before, 0);
        EXPECT_NEAR(waiting->timeSecond, 1010.0 / 60, 1e-9);
    }
    const auto before = test::allocations();
    const std::vector<double> counted(100);
    EXPECT_GT(test::allocations(), before) << "they are counted";
}

TEST(SnapshotPool, OutlivesItsOwnerAndIsFilledAgain) {
    std::shared_ptr<Snapshot> kept;
    {
        SnapshotPool pool;
        kept = pool.take();
        kept->pieceCurrent.assign(100, 1);
        const Snapshot* at = pool.take().get();  // let go at once
        EXPECT_EQ(pool.take().get(), at);
        EXPECT_NE(pool.take().get(), kept.get()) << "someone still has it";
    }
    EXPECT_EQ(kept->pieceCurrent[99], 1);
}

TEST(SnapshotPool, WhatWasShownIsRoundedAnewForTheNext) {
    SnapshotMaker maker(buildLayout(ratedLight().share()));
    OperatingPoint point;
    point.setLayout(buildLayout(ratedLight().share()));
    Solution solution = point.solve({});
    auto first = maker.make(solution);
    const auto* at = first.get();
    EXPECT_NEAR(first->shown().power(1).exact(), first->partPower[1], 1e-12);
    first.reset();
    for (double& watt : solution.elementWatt) watt *= 2;
    const auto second = maker.make(solution);
    ASSERT_EQ(second.get(), at);
    EXPECT_NEAR(second->shown().power(1).exact(), second->partPower[1], 1e-12);
}

TEST(SnapshotPool, SnapshotsComeBackFromOtherThreads) {
    // Three readers check that nobody writes to what they hold, and let it go.
    constexpr int kSnapshots = 20'000, kReaders = 3;
    constexpr std::size_t kLength = 16, kMostWaiting = 8;
    std::mutex mutex;
    std::condition_variable changed;
    std::deque<std::pair<std::shared_ptr<const Snapshot>, double>> waiting;
    bool done = false;
    std::atomic<int> wrong = 0;
    std::vector<std::thread> readers;
    for (int r = 0; r < kReaders; ++r) {
        readers.emplace_back([&] {
            for (;;) {
                std::unique_lock lock(mutex);
                changed.wait(lock, [&] { return done || !waiting.empty(); });
                if (waiting.empty()) return;
                const auto [snapshot, expected] = std::move(waiting.front());
                waiting.pop_front();
                changed.notify_all();
                lock.unlock();
                for (const double each : snapshot->pieceCurrent) wrong += each != expected;
            }
        });
    }
    std::set<const Snapshot*> all;
    {
        SnapshotPool pool;
        for (int n = 0; n < kSnapshots; ++n) {
            auto snapshot = pool.take();
            snapshot->pieceCurrent.assign(kLength, n);
            all.insert(snapshot.get());
            std::unique_lock lock(mutex);
            changed.wait(lock, [&] { return waiting.size() < kMostWaiting; });
            waiting.emplace_back(std::move(snapshot), n);
            changed.notify_all();
        }
        const std::lock_guard lock(mutex);
        done = true;
        changed.notify_all();
    }
    for (std::thread& reader : readers) reader.join();
    EXPECT_EQ(wrong, 0);
    EXPECT_LE(all.size(), kMostWaiting + kReaders + 2) << "they are filled again";
}

}  // namespace
}  // namespace tiepoint
