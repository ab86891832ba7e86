// Readings against circuits whose figures follow from Ohm's and Kirchhoff's laws by hand.

#include "core/snapshot/readings.h"

#include "support/build_bench.h"

#include <gtest/gtest.h>

#include <cmath>
#include <memory>

namespace tiepoint {
namespace {

using test::BenchBuilder;

constexpr double kSupplyVolt = 5;
constexpr double kReadingTolerance = 1e-6;  // relative; the supply's 10 mOhm are in the figures below

std::shared_ptr<const Snapshot> readOff(const BenchBuilder& builder, const Inputs& inputs = {}) {
    return evaluate(std::make_shared<const Bench>(builder.build()), inputs);
}

BenchBuilder withSupply() {
    return BenchBuilder()
        .board("A", "half")
        .part("PS1", "bench-supply", {{"+", "A.top+3"}, {"-", "A.bottom-3"}},
              {{"voltage", kSupplyVolt}, {"currentLimit", 0.5}, {"seriesResistance", 0.01}});
}

/// Two resistors in series, 300 and 200 ohm.
BenchBuilder seriesBench() {
    return withSupply()
        .jumper("A.top+7", "A.a5")
        .part("R1", "resistor", {{"1", "A.c5"}, {"2", "A.c10"}}, {{"resistance", 300.0}})
        .part("R2", "resistor", {{"1", "A.d10"}, {"2", "A.d15"}}, {{"resistance", 200.0}})
        .jumper("A.a15", "A.bottom-14");
}

/// Two resistors in parallel, 500 and 1000 ohm, that part at the plus rail and meet in the minus rail.
BenchBuilder parallelBench() {
    return withSupply()
        .jumper("A.top+7", "A.a8")
        .part("R1", "resistor", {{"1", "A.c8"}, {"2", "A.c13"}}, {{"resistance", 500.0}})
        .jumper("A.e13", "A.bottom-11")
        .jumper("A.top+17", "A.a20")
        .part("R2", "resistor", {{"1", "A.c20"}, {"2", "A.c25"}}, {{"resistance", 1000.0}})
        .jumper("A.e25", "A.bottom-21");
}

TEST(Readings, ALoopNamesEachDropInTheOrderOfTheCurrent) {
    const auto snapshot = readOff(seriesBench());
    const auto loop = simpleLoop(*snapshot);
    ASSERT_TRUE(loop);
    const double ampere = kSupplyVolt / 500.01;
    EXPECT_NEAR(loop->currentAmpere, ampere, ampere * kReadingTolerance);
    ASSERT_EQ(loop->drops.size(), 2u);
    EXPECT_EQ(snapshot->layout->bench->parts[loop->drops[0].part].id, "R1");
    EXPECT_EQ(snapshot->layout->bench->parts[loop->drops[1].part].id, "R2");
    EXPECT_NEAR(loop->drops[0].volt(), 300 * ampere, kReadingTolerance);
    EXPECT_NEAR(loop->drops[1].volt(), 200 * ampere, kReadingTolerance);
    EXPECT_NEAR(loop->drops[0].volt() + loop->drops[1].volt(), loop->supplyVolt, kReadingTolerance);
}

TEST(Readings, BranchesAndRestAreNoSimpleLoop) {
    EXPECT_FALSE(simpleLoop(*readOff(parallelBench())));
    EXPECT_FALSE(simpleLoop(*readOff(withSupply())));
}

TEST(Readings, CurrentComesInAndGoesOutOfAPartAlike) {
    const auto snapshot = readOff(seriesBench());
    const double ampere = kSupplyVolt / 500.01;
    for (int part = 0; part < 3; ++part) {
        const Through through = currentThrough(*snapshot, part);
        EXPECT_NEAR(through.inAmpere, ampere, ampere * kReadingTolerance) << part;
        EXPECT_NEAR(through.outAmpere, ampere, ampere * kReadingTolerance) << part;
    }
}

TEST(Readings, ABranchPointAddsUpAndNamesItsBranches) {
    const auto snapshot = readOff(parallelBench());
    const auto found = branchPoints(*snapshot);
    ASSERT_EQ(found.size(), 2u) << "one where the plus rail parts, one where the minus rail meets";
    for (const BranchPoint& point : found) {
        double sum = 0;
        for (const Branch& branch : point.branches) sum += branch.ampere;
        EXPECT_NEAR(sum, 0, 1e-9);
        ASSERT_EQ(point.branches.size(), 3u);
        EXPECT_NEAR(std::abs(point.branches[0].ampere), 15e-3, 15e-3 * 1e-3);
        EXPECT_NEAR(std::abs(point.branches[1].ampere), 10e-3, 10e-3 * 1e-3);
        EXPECT_NEAR(std::abs(point.branches[2].ampere), 5e-3, 5e-3 * 1e-3);
    }
}

TEST(Readings, TheShareOfARatingIsFigureOverLimit) {
    // 5 V across 50 ohm is 0.5 W in a part that bears 0.25 W: twice its rating. 100 mA stay under the supply's limit.
    const auto snapshot = readOff(withSupply()
                                      .jumper("A.top+7", "A.a5")
                                      .part("R1", "resistor", {{"1", "A.c5"}, {"2", "A.c10"}}, {{"resistance", 50.0}})
                                      .jumper("A.a10", "A.bottom-9"));
    const auto rating = tightestRating(*snapshot, 1);
    ASSERT_TRUE(rating);
    EXPECT_EQ(rating->rating->quantity, "power");
    EXPECT_DOUBLE_EQ(rating->limit, 0.25);
    EXPECT_NEAR(rating->share(), 2, 0.002);
}

TEST(Readings, AReversedLightIsRatedByItsReverseVoltage) {
    const auto snapshot = readOff(withSupply()
                                      .jumper("A.top+7", "A.a5")
                                      .part("D1", "led", {{"anode", "A.c10"}, {"cathode", "A.c5"}}, {{"colour", "red"}})
                                      .jumper("A.a10", "A.bottom-9"));
    const auto rating = tightestRating(*snapshot, 1);
    ASSERT_TRUE(rating);
    EXPECT_EQ(rating->rating->quantity, "reverseVoltage");
    EXPECT_NEAR(rating->figure, kSupplyVolt, 1e-3);
}

TEST(Readings, TheSupplyDeliversWhatTheBranchesTake) {
    const Delivery total = delivery(*readOff(parallelBench()));
    ASSERT_EQ(total.supplies.size(), 1u);
    EXPECT_EQ(total.supplies[0].current.text(), "15.00 mA");
    EXPECT_EQ(total.supplies[0].volt.text(), "5.00 V");
    EXPECT_NEAR(total.powerWatt, 75e-3, 75e-3 * 1e-3);
}

TEST(Readings, TooMuchIsMoreInterestingThanAnyLight) {
    // 50 ohm straight across 5 V take 0.5 W, twice what the part bears; the light beside it has its resistor.
    const auto snapshot =
        readOff(withSupply()
                    .jumper("A.top+7", "A.a5")
                    .part("R1", "resistor", {{"1", "A.c5"}, {"2", "A.c10"}}, {{"resistance", 50.0}})
                    .jumper("A.a10", "A.bottom-9")
                    .jumper("A.top+12", "A.a14")
                    .part("R2", "resistor", {{"1", "A.c14"}, {"2", "A.c19"}}, {{"resistance", 330.0}})
                    .part("D1", "led", {{"anode", "A.d19"}, {"cathode", "A.d22"}}, {{"colour", "red"}})
                    .jumper("A.a22", "A.bottom-18"));
    EXPECT_EQ(snapshot->layout->bench->parts[mostInteresting(*snapshot)].id, "R1");
}

TEST(Readings, ALightIsMoreInterestingThanALoadedResistor) {
    auto builder = withSupply()
                       .jumper("A.top+7", "A.a5")
                       .part("R1", "resistor", {{"1", "A.c5"}, {"2", "A.c10"}}, {{"resistance", 50.0}})
                       .part("D1", "led", {{"anode", "A.d10"}, {"cathode", "A.d13"}}, {{"colour", "red"}})
                       .jumper("A.a13", "A.bottom-12");
    const auto snapshot = readOff(builder);
    EXPECT_EQ(snapshot->layout->bench->parts[mostInteresting(*snapshot)].id, "D1");
}

TEST(Readings, ABenchThatIsOffHasNone) {
    auto bench = seriesBench().build();
    bench.parts[0].state[bench.parts[0].kind->stateIndex("on")] = 0;
    const auto snapshot = evaluate(std::make_shared<const Bench>(bench));
    EXPECT_EQ(snapshot->status(), Status::Off);
    EXPECT_FALSE(simpleLoop(*snapshot));
    EXPECT_TRUE(ratingShares(*snapshot, 1).empty());
    EXPECT_TRUE(branchPoints(*snapshot).empty());
    EXPECT_EQ(currentThrough(*snapshot, 1).inAmpere, 0);
}

/// At 24 V a meter of 10 Mohm takes a microampere: that is no branch worth a word.
TEST(Readings, AVoltmeterDoesntBreakTheLoop) {
    Bench bench = seriesBench().part("M1", "multimeter", {{"+", "A.e10"}, {"com", "A.e15"}}).build();
    bench.parts[0].values[0] = 24;
    const auto loop = simpleLoop(*evaluate(std::make_shared<const Bench>(bench)));
    ASSERT_TRUE(loop);
    EXPECT_EQ(loop->drops.size(), 2u);
    EXPECT_NEAR(loop->currentAmpere, 24 / 500.01, 1e-5);
}

}  // namespace
}  // namespace tiepoint
