// A bench's table over the positions of its controls: against the same bench solved from scratch in each, and meters by hand.

#include "core/behaviour/behaviour.h"

#include "core/base/stopping.h"
#include "core/behaviour/meter_probe.h"
#include "core/snapshot/lit.h"
#include "core/snapshot/readings.h"
#include "support/build_bench.h"
#include "support/compact_bench.h"
#include "support/switch_network.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>

namespace tiepoint::test {
namespace {

std::shared_ptr<const Bench> sharedBench(const Bench& bench) { return std::make_shared<const Bench>(bench); }

/// The bench with its controls so, solved from scratch.
std::shared_ptr<const Snapshot> fromScratch(const Bench& bench, const std::vector<Throw>& controls,
                                            const Digits& digits) {
    Bench thrown = bench;
    Inputs inputs;
    for (std::size_t c = 0; c < controls.size(); ++c) {
        Part& part = thrown.parts[controls[c].part];
        if (!controls[c].isCap())
            part.state[controls[c].state] = controls[c].stateAt(digits[c], part.stateValue(controls[c].state));
        else if (digits[c] != 0)
            inputs.held.insert(part.id);
    }
    return evaluate(sharedBench(thrown), inputs);
}

void expectAsFromScratch(const Behaviour& behaviour) {
    for (const BehaviourRow& row : behaviour.rows) {
        const auto alone = fromScratch(*behaviour.layout->bench, behaviour.controls, row.digits);
        ASSERT_EQ(row.status, alone->status());
        for (std::size_t light = 0; light < behaviour.lights.size(); ++light) {
            EXPECT_NEAR(row.lights[light].brightness, alone->brightness(behaviour.lights[light]), 1e-9);
            EXPECT_EQ(row.lights[light].lit, isLit(*alone, behaviour.lights[light]));
        }
        for (std::size_t e = 0; e < row.elementAmpere.size(); ++e)
            EXPECT_NEAR(row.elementAmpere[e], alone->solution.elementAmpere[e], 1e-10);
        for (int part = 0; part < static_cast<int>(row.partAmpere.size()); ++part)
            EXPECT_NEAR(row.partAmpere[part], currentThrough(*alone, part).inAmpere, 1e-10);
    }
}

/// A knob dims one light; a button lights another, apart from it.
BenchBuilder knobAndButton(double turn = 0.5) {
    return BenchBuilder()
        .board("A", "half")
        .part("PS1", "bench-supply", {{"+", "A.top+1"}, {"-", "A.bottom-1"}})
        .part("RV1", "potentiometer", {{"1", "A.b3"}, {"wiper", "A.b5"}, {"2", "A.b7"}}, {{"resistance", 1000}},
              {{"turn", turn}})
        .part("R1", "resistor", {{"1", "A.c5"}, {"2", "A.c10"}}, {{"resistance", 220}})
        .part("D1", "led", {{"anode", "A.d10"}, {"cathode", "A.d12"}})
        .jumper("A.top+3", "A.a3")
        .jumper("A.a12", "A.j28")
        .jumper("A.i28", "A.bottom-24")
        .part("S1", "push-button", {{"1a", "A.e16"}, {"1b", "A.f16"}, {"2a", "A.e18"}, {"2b", "A.f18"}})
        .part("R2", "resistor", {{"1", "A.h18"}, {"2", "A.h23"}}, {{"resistance", 220}})
        .part("D2", "led", {{"anode", "A.g23"}, {"cathode", "A.g25"}})
        .jumper("A.top+13", "A.a16")
        .jumper("A.j25", "A.bottom-22");
}

TEST(Behaviour, RandomNetworksAreAsFromScratch) {
    std::mt19937 random(21);
    for (int round = 0; round < 12; ++round) {
        const Bench bench = randomNetwork(random, 1 + round % 5, round % 2 == 0).bench();
        const auto around = behaviourAround(evaluate(sharedBench(bench)));
        const auto full = behaviourInFull(buildLayout(sharedBench(bench)));
        expectAsFromScratch(around);
        expectAsFromScratch(full);
        EXPECT_TRUE(around.complete());
        // Every combination is among the full ones, the first throw changing slowest.
        EXPECT_TRUE(std::ranges::is_sorted(full.rows, {}, &BehaviourRow::digits));
        for (const BehaviourRow& row : around.rows) {
            ASSERT_NE(full.row(row.digits), nullptr);
            ASSERT_NE(row.snapshot, nullptr);
        }
        EXPECT_EQ(around.rows.front().digits, Digits(around.controls.size(), 0)) << "as it stands";
    }
}

TEST(Behaviour, KnobsAreTurnedToBothEndsAndTheMiddle) {
    const auto now = evaluate(knobAndButton(0.25).share());
    EXPECT_EQ(behaviourAround(now).controls.size(), 1u) << "only where they are asked for";
    const auto behaviour = behaviourAround(now, Controls::SwitchesAndKnobs);
    ASSERT_EQ(behaviour.controls.size(), 2u);
    const Throw& knob = behaviour.controls[1];
    EXPECT_TRUE(knob.isKnob);
    EXPECT_EQ(behaviour.rows.front().digits, (Digits{0, knob.values})) << "as it stands, at none of the three";
    EXPECT_EQ(behaviour.rows.front().snapshot, now);
    // The knob's three places, the button alone, and everything changed: they don't influence each other.
    EXPECT_EQ(behaviour.rows.size(), 6u);
    expectAsFromScratch(behaviour);
    double last = 2;
    for (int place = 0; place < 3; ++place) {
        const BehaviourRow* row = behaviour.row({0, place});
        ASSERT_NE(row, nullptr);
        EXPECT_LT(row->lights[0].brightness, last) << "the further from plus the wiper, the darker";
        last = row->lights[0].brightness;
        EXPECT_FALSE(row->lights[1].lit);
    }
    EXPECT_TRUE(behaviour.row({1, knob.values})->lights[1].lit);
    EXPECT_EQ(behaviour.row({1, 1}), nullptr) << "thrown apart";
}

TEST(Behaviour, AKnobAtOneOfItsPlacesIsNotTriedTwice) {
    const auto behaviour = behaviourAround(evaluate(knobAndButton(0.5).share()), Controls::SwitchesAndKnobs);
    EXPECT_EQ(behaviour.rows.front().digits, (Digits{0, 1}));
    EXPECT_EQ(behaviour.rows.size(), 5u);
}

/// Buttons in a row from plus to minus, through a light.
Bench buttonsInARow(int buttons) {
    std::string text = "full; PS1 top+1 bottom-1 5; W1 top+2 a1 red; R1 b1 b4 330; D1 c4 c6 red; W2 d6 a8 yellow";
    for (int i = 0; i < buttons; ++i) {
        const int column = 8 + 4 * i;
        text += "; S" + std::to_string(i + 1) + " e" + std::to_string(column) + "; W" + std::to_string(3 + i) + " j" +
                std::to_string(column + 2) +
                (i + 1 < buttons ? " g" + std::to_string(column + 4) + " yellow" : " bottom-40 black");
    }
    return compactBench(text.c_str());
}

TEST(Behaviour, NamesWhatItDidNotTry) {
    const auto six = behaviourAround(evaluate(sharedBench(buttonsInARow(6))));
    EXPECT_TRUE(six.complete());
    EXPECT_EQ(six.rows.size(), kMostCombinations);
    EXPECT_TRUE(six.untriedParts().empty());
    EXPECT_TRUE(six.row(Digits(6, 1))->lights[0].lit);
    const auto seven = behaviourAround(evaluate(sharedBench(buttonsInARow(7))));
    EXPECT_FALSE(seven.complete());
    EXPECT_EQ(seven.rows.size(), 1u + 7 + 1) << "as it stands, each alone, and all";
    EXPECT_EQ(seven.untriedParts(), (std::vector<std::string>{"S1", "S2", "S3", "S4", "S5", "S6", "S7"}));
    EXPECT_TRUE(seven.row(Digits(7, 1))->lights[0].lit);
}

TEST(Behaviour, StopsWhenNobodyWantsIt) {
    std::stop_source stop;
    stop.request_stop();
    const auto now = evaluate(sharedBench(buttonsInARow(3)));
    const auto layout = now->layout;
    const StopScope scope(stop.get_token());
    EXPECT_THROW((void)behaviourAround(now), Stopped);
    EXPECT_THROW((void)behaviourInFull(layout), Stopped);
}

TEST(MeterProbe, LoadsWhatItMeasures) {
    // 5 V over 2 x 1 megohm (Ohm's law): 2.5 V without a meter, and across 1 megohm beside 10 megohm 5 V x 0.909 / 1.909.
    const auto layout = buildLayout(BenchBuilder()
                                        .board("A", "half")
                                        .part("PS1", "bench-supply", {{"+", "A.a1"}, {"-", "A.a10"}})
                                        .part("R1", "resistor", {{"1", "A.b1"}, {"2", "A.b5"}}, {{"resistance", 1e6}})
                                        .part("R2", "resistor", {{"1", "A.c5"}, {"2", "A.b10"}}, {{"resistance", 1e6}})
                                        .share());
    const auto net = [&](const char* hole) { return layout->netOfHole(layout->holeIndex(holeAt(hole))); };
    MeterProbe probe(layout, {});
    const auto reading = probe.volts({}, net("A.e5"), net("A.e10"));
    EXPECT_EQ(reading.text(), "2.38 V");
    EXPECT_NEAR(reading.value, 2.38, 0.005);
    EXPECT_EQ(probe.volts({}, net("A.e10"), net("A.e5")).digits, "−2.38") << "tips exchanged";
    EXPECT_EQ(probe.volts({}, net("A.e1"), net("A.e10")).text(), "5.00 V");
    EXPECT_EQ(probe.volts({}, net("A.e20"), net("A.e10")).value, 0) << "a strip with nothing in it";
    EXPECT_EQ(probe.volts({}, net("A.e5"), net("A.e5")).value, 0) << "both tips at the same metal";
}

TEST(MeterProbe, FollowsTheControls) {
    const auto now = evaluate(knobAndButton().share());
    const auto behaviour = behaviourAround(now, Controls::SwitchesAndKnobs);
    const Layout& layout = *behaviour.layout;
    const auto net = [&](const char* hole) { return layout.netOfHole(layout.holeIndex(holeAt(hole))); };
    MeterProbe probe(behaviour.layout, behaviour.controls);
    EXPECT_EQ(probe.volts({0, 1}, net("A.e17"), net("A.bottom-1")).value, 0);
    const double pressed = probe.volts({1, 1}, net("A.j18"), net("A.bottom-1")).value;
    EXPECT_NEAR(pressed, 5, 0.01);
    EXPECT_NEAR(probe.volts({0, 1}, net("A.j18"), net("A.bottom-1")).value, 0, 0.01) << "floating metal";
    for (const auto& [place, row] : {std::pair{0, behaviour.row({0, 0})}, {2, behaviour.row({0, 2})}}) {
        const double wiper = row->snapshot->solution.netVoltage[net("A.e5")];
        EXPECT_NEAR(probe.volts({0, place}, net("A.e5"), net("A.bottom-1")).value, wiper, 0.01) << place;
    }
}

}  // namespace
}  // namespace tiepoint::test
