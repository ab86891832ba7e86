// Benches compared as a teacher would: what counts and what doesn't, and what is said of the rest.

#include "core/compare/comparison.h"

#include "core/bench/bench_file.h"
#include "core/edit/placement.h"
#include "core/netlist/bench_netlist.h"
#include "core/netlist/circuit_file.h"
#include "support/compact_bench.h"

#include <gtest/gtest.h>

namespace tiepoint {
namespace {

using namespace test;

constexpr const char* kGate =
    "half; PS1 top+3 bottom-3 5; R1 c4 c9 330; S1 e9; S2 e15; D1 h17 h20 green; W1 top+4 a4 red; W2 c11 c15 yellow; "
    "W3 j20 bottom-18 black";

std::shared_ptr<const Bench> sharedCompact(std::string_view text) {
    return std::make_shared<const Bench>(CompactBench(text).take());
}

Comparison compared(std::string_view mine, std::string_view target = kGate) {
    const auto result = compareBenches(sharedCompact(mine), ComparisonTarget(sharedCompact(target)));
    EXPECT_TRUE(result.ok());
    return result.ok() ? *result : Comparison{};
}

void expectSame(const Comparison& comparison) {
    EXPECT_TRUE(comparison.sameCircuit);
    EXPECT_TRUE(comparison.sameBehaviour);
    for (const auto& each : comparison.differences) ADD_FAILURE() << each.text;
    for (const auto& each : comparison.behaviour) ADD_FAILURE() << each.text;
}

/// Exactly one difference, with these words.
void expectOnly(const Comparison& comparison, std::string_view text, const std::vector<std::string>& parts) {
    EXPECT_FALSE(comparison.sameCircuit);
    ASSERT_EQ(comparison.differences.size(), 1u) << comparison.differences.back().text;
    EXPECT_EQ(comparison.differences[0].text, text);
    EXPECT_EQ(comparison.differences[0].parts, parts);
    EXPECT_FALSE(comparison.differences[0].look.empty());
    EXPECT_NE(comparison.differences[0].look, comparison.differences[0].text);
}

TEST(Comparison, PlacesColoursIdsAndOrderDontCount) {
    expectSame(compared(kGate));
    // Everything elsewhere, other ids, other colours, the resistor turned round, the buttons exchanged.
    expectSame(
        compared("half; PS7 top+9 bottom-9 5; S4 e3; R9 c10 c5 330; S3 e20; D5 h22 h25 green; W8 top+8 a10 blue; "
                 "W2 j3 j20 white; W5 j25 bottom-20 white"));
    // The resistor behind the light: another order in the same chain.
    expectSame(
        compared("half; PS1 top+3 bottom-3 5; S1 e9; S2 e15; D1 h17 h20 green; W1 top+4 a9 red; W2 c11 c15 yellow; "
                 "R1 i20 i25 330; W3 j25 bottom-21 black"));
    // A meter that was left on the table, and a loose resistor.
    expectSame(compared(std::string(kGate) + "; M1 a9 a20; R7 b25 b29 100"));
}

TEST(Comparison, ValuesCountWithinTheirTolerance) {
    expectSame(
        compared("half; PS1 top+3 bottom-3 5; R1 c4 c9 340; S1 e9; S2 e15; D1 h17 h20 green; W1 top+4 a4 red; "
                 "W2 c11 c15 yellow; W3 j20 bottom-18 black"));
    const Comparison other = compared(
        "half; PS1 top+3 bottom-3 5; R1 c4 c9 1000; S1 e9; S2 e15; D1 h17 h20 green; W1 top+4 a4 red; W2 c11 c15 "
        "yellow; W3 j20 bottom-18 black");
    expectOnly(other, "R1 is 1 kΩ and should be 330 Ω.", {"R1"});
    EXPECT_FALSE(other.sameBehaviour);
    ASSERT_FALSE(other.behaviour.empty());
    EXPECT_NE(other.behaviour[0].text.find("D1 is lit, "), std::string::npos) << other.behaviour[0].text;
    EXPECT_EQ(other.differences[0].targetParts, std::vector<std::string>{"R1"});
}

TEST(Comparison, ANeighbourOfTheValueLooksTheSame) {
    const Comparison near = compared(
        "half; PS1 top+3 bottom-3 5; R1 c4 c9 390; S1 e9; S2 e15; D1 h17 h20 green; W1 top+4 a4 red; W2 c11 c15 "
        "yellow; W3 j20 bottom-18 black");
    EXPECT_FALSE(near.sameCircuit);
    EXPECT_TRUE(near.sameBehaviour);
}

TEST(Comparison, OneSlipIsToldAsOne) {
    expectOnly(
        compared("half; PS1 top+3 bottom-3 5; R1 c4 c9 330; S1 e9; S2 e15; D1 h20 h17 green; W1 top+4 a4 red; W2 c11 "
                 "c15 yellow; W3 j20 bottom-18 black"),
        "D1 is the wrong way round: its anode is in h20.", {"D1"});
    expectOnly(
        compared("half; PS1 top+3 bottom-3 5; R1 c4 c9 330; S1 e9; S2 e15; D1 h18 h20 green; W1 top+4 a4 red; W2 c11 "
                 "c15 yellow; W3 j20 bottom-18 black"),
        "D1's anode is in h18, one hole to the right of h17.", {"D1"});
    const Comparison gone = compared(
        "half; PS1 top+3 bottom-3 5; R1 c4 c9 330; S1 e9; S2 e15; D1 h17 h20 green; W1 top+4 a4 "
        "red; W3 j20 bottom-18 black");
    ASSERT_EQ(gone.differences.size(), 1u);
    EXPECT_FALSE(gone.sameBehaviour);
    EXPECT_FALSE(gone.differences[0].holes.empty());
}

TEST(Comparison, ASupplyThatIsOffIsSaid) {
    const Comparison off = compared(
        "half; PS1 top+3 bottom-3 5 off; R1 c4 c9 330; S1 e9; S2 e15; D1 h17 h20 green; W1 top+4 "
        "a4 red; W2 c11 c15 yellow; W3 j20 bottom-18 black");
    EXPECT_TRUE(off.sameCircuit);
    EXPECT_FALSE(off.sameBehaviour);
    ASSERT_EQ(off.differences.size(), 1u);
    EXPECT_EQ(off.differences[0].text, "PS1 is switched off and should be on.");
}

TEST(Comparison, AnotherCircuitMayDoTheSame) {
    // Two resistors of half the value in place of one.
    const Comparison halves = compared(
        "half; PS1 top+3 bottom-3 5; R1 c4 c9 330; S1 e9; S2 e15; D1 h17 h20 green; W1 top+4 a4 red; W2 c11 c15 "
        "yellow; W3 "
        "j20 bottom-18 black",
        "half; PS1 top+3 bottom-3 5; R1 c4 c7 165; R2 d7 d9 165; S1 e9; S2 e15; D1 h17 h20 green; W1 top+4 a4 red; W2 "
        "c11 "
        "c15 yellow; W3 j20 bottom-18 black");
    EXPECT_FALSE(halves.sameCircuit);
    EXPECT_TRUE(halves.sameBehaviour);
    EXPECT_FALSE(halves.differences.empty());
}

TEST(Comparison, MissingAndExtraPartsAreCounted) {
    const char* const withTwo =
        "half; PS1 top+3 bottom-3 5; R1 c4 c9 330; R2 b4 b9 330; S1 e9; S2 e15; D1 h17 h20 green; W1 top+4 a4 red; W2 "
        "c11 c15 yellow; W3 j20 bottom-18 black";
    const Comparison missing = compared(kGate, withTwo), extra = compared(withTwo, kGate);
    ASSERT_EQ(missing.differences.size(), 1u);
    EXPECT_NE(missing.differences[0].text.find("A part is missing: 330 Ω resistor"), std::string::npos)
        << missing.differences[0].text;
    EXPECT_TRUE(missing.differences[0].parts.empty());
    ASSERT_EQ(extra.differences.size(), 1u);
    EXPECT_NE(extra.differences[0].text.find("330 Ω resistor is too many"), std::string::npos)
        << extra.differences[0].text;
}

TEST(Comparison, PinnedReadingsOfTheTargetCount) {
    const auto pinnedTarget = [](std::string_view text, std::string_view hole) {
        auto bench = std::make_shared<Bench>(CompactBench(text).take());
        bench->pinned.push_back({"M1", VoltsAt{holeAt(hole)}, {}});
        return std::shared_ptr<const Bench>(bench);
    };
    const char* const kDivider =
        "half; PS1 top+3 bottom-3 9; R1 c6 c12 1000; R2 d12 d18 2200; W1 top+6 a6 red; W2 a18 bottom-16 black";
    const char* const kOther =
        "half; PS1 top+3 bottom-3 9; R1 c6 c12 2200; R2 d12 d18 1000; W1 top+6 a6 red; W2 a18 bottom-16 black";
    const ComparisonTarget target(pinnedTarget(kDivider, "A.e12"));
    EXPECT_TRUE(compareBenches(sharedCompact(kDivider), target)->sameBehaviour);
    const auto other = compareBenches(sharedCompact(kOther), target);
    EXPECT_TRUE(other->sameCircuit) << "the order of a chain doesn't count";
    const auto apart = compareBenches(
        sharedCompact(
            "half; PS1 top+3 bottom-3 9; R1 c6 c12 1000; R2 d12 d18 4700; W1 top+6 a6 red; W2 a18 bottom-16 black"),
        target);
    EXPECT_FALSE(apart->sameBehaviour);
    ASSERT_FALSE(apart->behaviour.empty());
    EXPECT_EQ(apart->behaviour[0].text, "volts at e12 of the target: 6.19 V there, 7.42 V here.");
}

TEST(Comparison, ACircuitWithoutPlacesIsATargetToo) {
    const auto bench = sharedCompact(kGate);
    const ComparisonTarget circuit(netlistOf(*buildLayout(bench)));
    const auto same = compareBenches(bench, circuit);
    ASSERT_TRUE(same.ok());
    expectSame(*same);
    const auto turned = compareBenches(
        sharedCompact(
            "half; PS1 top+3 bottom-3 5; R1 c4 c9 330; S1 e9; S2 e15; D1 h20 h17 green; W1 top+4 a4 red; W2 c11 "
            "c15 yellow; W3 j20 bottom-18 black"),
        circuit);
    ASSERT_EQ(turned->differences.size(), 1u);
    EXPECT_TRUE(turned->differences[0].targetHoles.empty());
    EXPECT_FALSE(turned->sameBehaviour);
}

TEST(Comparison, SwitchesOfOtherCircuitsArePairedByWhatTheyDo) {
    // AND and OR of two buttons differ in two positions; the same wish met with the buttons' ids exchanged doesn't.
    const char* const kOr =
        "half; PS1 top+3 bottom-3 5; R1 c3 c8 330; S1 e8; S2 e14; D1 g16 g20 green; W1 top+4 a3 red; W2 a8 a14 yellow; "
        "W3 h10 h16 blue; W4 j20 bottom-17 black";
    const Comparison gates = compared(kOr, kGate);
    EXPECT_FALSE(gates.sameBehaviour);
    ASSERT_FALSE(gates.behaviour.empty());
    EXPECT_NE(gates.behaviour[0].text.find(" pressed, D1 is lit"), std::string::npos) << gates.behaviour[0].text;
}

}  // namespace
}  // namespace tiepoint
