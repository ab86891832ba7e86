// What anybody who has used a breadboard knows. Common practice, unless a source is named.

#include "core/snapshot/snapshot.h"
#include "support/build_bench.h"

#include <gtest/gtest.h>

#include <cmath>
#include <string>

namespace tiepoint {
namespace {

using test::BenchBuilder;

/// A supply in both rails of a full board.
BenchBuilder suppliedBench(double volt = 5) {
    BenchBuilder builder;
    builder.board("A", "full")
        .part("PS1", "bench-supply", {{"+", "A.top+3"}, {"-", "A.bottom-3"}}, {{"voltage", volt}});
    return builder;
}

/// A resistor and an LED from column 20 to the minus rail.
void addLamp(BenchBuilder& builder, double ohm = 330) {
    builder.part("R1", "resistor", {{"1", "A.c20"}, {"2", "A.c24"}}, {{"resistance", ohm}})
        .part("D1", "led", {{"anode", "A.d24"}, {"cathode", "A.d25"}}, {{"colour", "red"}})
        .jumper("A.a25", "A.bottom-20");
}

void addButton(BenchBuilder& builder, const std::string& id, int column) {
    const auto leg = [&](const char* row, int c) { return "A." + std::string(row) + std::to_string(c); };
    const std::string legs[] = {leg("e", column), leg("f", column), leg("e", column + 2), leg("f", column + 2)};
    builder.part(id, "push-button", {{"1a", legs[0]}, {"1b", legs[1]}, {"2a", legs[2]}, {"2b", legs[3]}});
}

double lampAmpere(const std::shared_ptr<const Bench>& bench, std::set<std::string, std::less<>> held) {
    Inputs inputs;
    inputs.held = std::move(held);
    const auto snapshot = evaluate(bench, inputs);
    EXPECT_EQ(snapshot->status(), Status::Solved);
    return snapshot->leadCurrent[snapshot->layout->leadIndex(bench->partIndex("D1"), 0)];
}

bool lit(const std::shared_ptr<const Bench>& bench, std::set<std::string, std::less<>> held) {
    const double ampere = lampAmpere(bench, std::move(held));
    EXPECT_TRUE(ampere > 5e-3 || std::abs(ampere) < 1e-9) << ampere;  // nothing in between
    return ampere > 5e-3;
}

TEST(CommonPractice, RedLedOnFiveVoltsDropsAboutTwo) {
    for (double ohm : {220.0, 330.0, 470.0, 1000.0}) {
        BenchBuilder builder = suppliedBench();
        addLamp(builder, ohm);
        builder.jumper("A.top+16", "A.a20");
        const auto snapshot = evaluate(builder.share());
        const int anode = snapshot->layout->leadIndex(snapshot->layout->bench->partIndex("D1"), 0);
        const double drop = snapshot->leadVoltage(anode) - snapshot->leadVoltage(anode + 1);
        EXPECT_GE(drop, 1.6) << ohm;
        EXPECT_LE(drop, 2.1) << ohm;
        EXPECT_NEAR(snapshot->leadCurrent[anode], (5 - drop) / ohm, 1e-5) << ohm;
    }
}

TEST(CommonPractice, ButtonsInSeriesGiveAnd) {
    BenchBuilder builder = suppliedBench();
    builder.jumper("A.top+8", "A.a10").jumper("A.a12", "A.a14").jumper("A.a16", "A.a20");
    addButton(builder, "S1", 10);
    addButton(builder, "S2", 14);
    addLamp(builder);
    const auto bench = builder.share();
    EXPECT_FALSE(lit(bench, {}));
    EXPECT_FALSE(lit(bench, {"S1"}));
    EXPECT_FALSE(lit(bench, {"S2"}));
    EXPECT_TRUE(lit(bench, {"S1", "S2"}));
}

TEST(CommonPractice, ButtonsInParallelGiveOr) {
    BenchBuilder builder = suppliedBench();
    builder.jumper("A.top+8", "A.a10").jumper("A.b10", "A.a14").jumper("A.a12", "A.a16").jumper("A.b16", "A.a20");
    addButton(builder, "S1", 10);
    addButton(builder, "S2", 14);
    addLamp(builder);
    const auto bench = builder.share();
    EXPECT_FALSE(lit(bench, {}));
    EXPECT_TRUE(lit(bench, {"S1"}));
    EXPECT_TRUE(lit(bench, {"S2"}));
    EXPECT_TRUE(lit(bench, {"S1", "S2"}));
}

TEST(CommonPractice, LegsThatFaceEachOtherAreOneNet) {
    BenchBuilder builder = suppliedBench();
    addButton(builder, "S1", 10);
    const auto layout = buildLayout(builder.share());
    const auto net = [&](int leg) { return layout->netOfLead[layout->leadIndex(1, leg)]; };
    EXPECT_EQ(net(0), net(1));
    EXPECT_EQ(net(2), net(3));
    EXPECT_NE(net(0), net(2));
}

TEST(CommonPractice, RailsJoinEndToEndAndColumnsDont) {
    BenchBuilder builder = suppliedBench();
    const auto layout = buildLayout(builder.share());
    const auto net = [&](const char* address) { return layout->netOfHole(layout->holeIndex(test::holeAt(address))); };
    EXPECT_EQ(net("A.top+1"), net("A.top+50"));
    EXPECT_EQ(net("A.a10"), net("A.e10"));
    EXPECT_NE(net("A.e10"), net("A.f10"));
    EXPECT_NE(net("A.e10"), net("A.e11"));
    EXPECT_NE(net("A.top+1"), net("A.top-1"));
}

TEST(CommonPractice, LedWithoutAResistorIsAtTheMercyOfTheSupply) {
    BenchBuilder builder = suppliedBench();
    builder.part("D1", "led", {{"anode", "A.a20"}, {"cathode", "A.a21"}})
        .jumper("A.top+16", "A.b20")
        .jumper("A.b21", "A.bottom-16");
    const auto snapshot = evaluate(builder.share());
    const int anode = snapshot->layout->leadIndex(1, 0);
    EXPECT_NEAR(snapshot->leadCurrent[anode], 0.5, 1e-9);  // the bench supply's limit
    EXPECT_TRUE(snapshot->solution.elements()[0].limiting);
}

TEST(CommonPractice, LedTurnedRoundStaysDark) {
    BenchBuilder builder = suppliedBench();
    builder.part("R1", "resistor", {{"1", "A.c20"}, {"2", "A.c24"}})
        .part("D1", "led", {{"anode", "A.d25"}, {"cathode", "A.d24"}})
        .jumper("A.a25", "A.bottom-20")
        .jumper("A.top+16", "A.a20");
    const auto snapshot = evaluate(builder.share());
    EXPECT_LT(std::abs(snapshot->leadCurrent[snapshot->layout->leadIndex(2, 0)]), 1e-9);
    EXPECT_EQ(snapshot->brightness(2), 0);
}

}  // namespace
}  // namespace tiepoint
