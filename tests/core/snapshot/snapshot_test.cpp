// Snapshots and the resting runner: what they add to a solution, and which instant they belong to.

#include "core/snapshot/snapshot.h"

#include "core/snapshot/runner.h"
#include "support/build_bench.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace tiepoint {
namespace {

using test::BenchBuilder;

/// Supply, button, resistor and light in a row, by leads at both sides of the button.
BenchBuilder beacon(const char* colour = "red") {
    return BenchBuilder()
        .board("A", "half")
        .part("PS1", "bench-supply", {{"+", "A.top+3"}, {"-", "A.bottom-3"}})
        .part("R1", "resistor", {{"1", "A.c10"}, {"2", "A.c14"}}, {{"resistance", 220}})
        .part("S1", "push-button", {{"1a", "A.e14"}, {"1b", "A.f14"}, {"2a", "A.e16"}, {"2b", "A.f16"}})
        .part("D1", "led", {{"anode", "A.g16"}, {"cathode", "A.g17"}}, {{"colour", colour}})
        .jumper("W1", "A.top+8", "A.a10")
        .jumper("W2", "A.j17", "A.bottom-14");
}

Inputs pressed(std::uint64_t sequence = 0) {
    Inputs inputs;
    inputs.sequence = sequence;
    inputs.held.insert("S1");
    return inputs;
}

int lead(const Snapshot& s, std::string_view part, std::string_view name) {
    const int index = s.layout->bench->partIndex(part);
    return s.layout->leadIndex(index, s.layout->bench->parts[index].kind->leadIndex(name));
}
double currentInto(const Snapshot& s, std::string_view part, std::string_view name) {
    return s.leadCurrent[lead(s, part, name)];
}
double brightnessOf(const Snapshot& s, std::string_view part) { return s.brightness(s.layout->bench->partIndex(part)); }

TEST(Snapshot, FollowsOneCurrentAllTheWay) {
    const auto s = evaluate(beacon().share(), pressed());
    ASSERT_EQ(s->status(), Status::Solved);
    const double ampere = currentInto(*s, "D1", "anode");
    EXPECT_GT(ampere, 0.010);
    constexpr double kApart = 1e-12;  // leakage of junctions
    EXPECT_NEAR(s->jumperCurrent(0), ampere, kApart) << "from the rail to the resistor";
    EXPECT_NEAR(s->jumperCurrent(1), ampere, kApart);
    EXPECT_NEAR(currentInto(*s, "PS1", "+"), -ampere, kApart);
    EXPECT_NEAR(s->largestCurrentAmpere, ampere, kApart);
    // Through the button: in at the leg on R1's side, across, out at the leg on D1's side; the other legs carry nothing.
    EXPECT_NEAR(currentInto(*s, "S1", "1a"), ampere, kApart);
    EXPECT_NEAR(currentInto(*s, "S1", "1b"), 0, kApart);
    EXPECT_NEAR(currentInto(*s, "S1", "2a"), 0, kApart);
    EXPECT_NEAR(currentInto(*s, "S1", "2b"), -ampere, kApart);
}

TEST(Snapshot, CurrentPassesAlongJoinedLegs) {
    // The joined pair 1a-1b serves as a bridge over the gap, without a press.
    const auto s =
        evaluate(BenchBuilder()
                     .board("A", "half")
                     .part("PS1", "bench-supply", {{"+", "A.a4"}, {"-", "A.j10"}})
                     .part("S1", "push-button", {{"1a", "A.e4"}, {"1b", "A.f4"}, {"2a", "A.e6"}, {"2b", "A.f6"}})
                     .part("R1", "resistor", {{"1", "A.g4"}, {"2", "A.g10"}}, {{"resistance", 500}})
                     .share());
    ASSERT_EQ(s->status(), Status::Solved);
    const double ampere = 5 / 500.01;  // Ohm's law, with the supply's 0.01 ohm
    EXPECT_NEAR(currentInto(*s, "R1", "1"), ampere, 1e-9);
    EXPECT_NEAR(currentInto(*s, "S1", "1a"), ampere, 1e-9);
    EXPECT_NEAR(currentInto(*s, "S1", "1b"), -ampere, 1e-9);
    EXPECT_NEAR(currentInto(*s, "S1", "2a"), 0, 1e-12);
}

TEST(Snapshot, PowerIsTakenAndGiven) {
    const auto s = evaluate(beacon().share(), pressed());
    double sum = 0;
    for (double watt : s->partPower) sum += watt;
    EXPECT_NEAR(sum, 0, 1e-12);
    EXPECT_LT(s->partPower[0], 0) << "the supply gives";
    const double ampere = currentInto(*s, "R1", "1");
    EXPECT_NEAR(s->partPower[1], ampere * ampere * 220, 1e-9) << "Joule's law";
}

TEST(Snapshot, ShowsTheLightThatEyesSee) {
    const auto red = evaluate(beacon("red").share(), pressed());
    const auto infrared = evaluate(beacon("infrared").share(), pressed());
    // CIE 1976 lightness of the share of 20 mA.
    const double share = currentInto(*red, "D1", "anode") / 0.020;
    EXPECT_NEAR(brightnessOf(*red, "D1"), 1.16 * std::cbrt(share) - 0.16, 1e-9);
    EXPECT_GT(currentInto(*infrared, "D1", "anode"), 0.010);
    EXPECT_EQ(brightnessOf(*infrared, "D1"), 0);
    EXPECT_EQ(brightnessOf(*red, "R1"), 0);
    EXPECT_LT(brightnessOf(*evaluate(beacon().share()), "D1"), 1e-6) << "open: dark";
}

TEST(Snapshot, FloatingIsNoNumber) {
    const auto s = evaluate(beacon().part("R2", "resistor", {{"1", "A.b25"}}).share(), pressed());
    EXPECT_TRUE(std::isnan(s->leadVoltage(lead(*s, "R2", "1"))));
    EXPECT_TRUE(std::isnan(s->leadVoltage(lead(*s, "R2", "2"))));
    EXPECT_EQ(currentInto(*s, "R2", "1"), 0);
    EXPECT_EQ(s->leadVoltage(lead(*s, "PS1", "-")), 0);
}

TEST(Snapshot, OffShowsNoVoltageAndNoCurrent) {
    Bench bench = beacon().build();
    bench.parts[0].state[bench.parts[0].kind->stateIndex("on")] = 0;
    const auto s = evaluate(std::make_shared<const Bench>(bench), pressed());
    EXPECT_EQ(s->status(), Status::Off);
    EXPECT_TRUE(std::isnan(s->leadVoltage(0)));
    EXPECT_EQ(s->largestCurrentAmpere, 0);
    EXPECT_EQ(brightnessOf(*s, "D1"), 0);
    for (double ampere : s->pieceCurrent) EXPECT_EQ(ampere, 0);
}

TEST(Snapshot, WithoutASolutionNoNumberIsShown) {
    // Two ideal supplies of different voltage, plus to plus and minus to minus.
    const auto s = evaluate(BenchBuilder()
                                .board("A", "half")
                                .part("PS1", "bench-supply", {{"+", "A.top+1"}, {"-", "A.top-1"}},
                                      {{"voltage", 5}, {"seriesResistance", 0}})
                                .part("PS2", "bench-supply", {{"+", "A.top+3"}, {"-", "A.top-3"}},
                                      {{"voltage", 9}, {"seriesResistance", 0}})
                                .jumper("A.top+5", "A.a5")
                                .share());
    ASSERT_EQ(s->status(), Status::None);
    for (double ampere : s->leadCurrent) EXPECT_TRUE(std::isnan(ampere));
    for (double ampere : s->pieceCurrent) EXPECT_TRUE(std::isnan(ampere));
    for (double watt : s->partPower) EXPECT_TRUE(std::isnan(watt));
    EXPECT_EQ(s->largestCurrentAmpere, 0);
}

TEST(RestingRunner, AnswersForItsRevisionAndInputs) {
    const auto runner = makeRestingRunner();
    EXPECT_EQ(runner->snapshot(), nullptr);
    runner->setBench(7, beacon().share());
    const auto open = runner->snapshot();
    ASSERT_NE(open, nullptr);
    EXPECT_EQ(open->revision, 7u);
    EXPECT_EQ(open->inputSequence, 0u);
    EXPECT_LT(open->brightness(3), 1e-6);
    EXPECT_EQ(runner->snapshot(), open) << "nothing changed";

    runner->setInputs(pressed(3));
    const auto closed = runner->snapshot();
    EXPECT_EQ(closed->revision, 7u);
    EXPECT_EQ(closed->inputSequence, 3u);
    EXPECT_TRUE(closed->inputs->held.contains("S1"));
    EXPECT_GT(closed->brightness(3), 0.5);
    EXPECT_EQ(closed->layout, open->layout) << "pressing changes no layout";
    EXPECT_LT(open->brightness(3), 1e-6) << "an old snapshot stays as it was";
}

TEST(RestingRunner, RestsUntilAPressThatWasPlanned) {
    const auto runner = makeRestingRunner();
    runner->setBench(1, beacon().share());
    EXPECT_EQ(runner->nextChangeSecond(), std::numeric_limits<double>::infinity());
    Inputs inputs;
    inputs.presses = {{"S1", 0.5, 0.8}};
    runner->setInputs(inputs);
    EXPECT_EQ(runner->nextChangeSecond(), 0.5);
    const auto before = runner->snapshot();
    EXPECT_LT(before->brightness(3), 1e-6);
    runner->advanceTo(0.4);
    EXPECT_EQ(runner->snapshot(), before) << "time alone changes nothing";
    runner->advanceTo(0.6);
    EXPECT_EQ(runner->snapshot()->timeSecond, 0.6);
    EXPECT_GT(runner->snapshot()->brightness(3), 0.5);
    EXPECT_TRUE(runner->snapshot()->inputs->held.contains("S1"));
    EXPECT_EQ(runner->nextChangeSecond(), 0.8);
    runner->advanceTo(1);
    EXPECT_LT(runner->snapshot()->brightness(3), 1e-6);
    EXPECT_EQ(runner->nextChangeSecond(), std::numeric_limits<double>::infinity());
}

TEST(RestingRunner, PartsRememberAcrossEditsOfOthers) {
    const auto runner = makeRestingRunner();
    const auto off = [](BenchBuilder builder) {
        Bench bench = builder.build();
        bench.parts[0].state[bench.parts[0].kind->stateIndex("on")] = 0;
        return std::make_shared<const Bench>(bench);
    };
    runner->setBench(1, off(beacon()));
    State state;
    state.values[{"R1", Memory::Voltage}] = 3;
    runner->setState(state);
    EXPECT_EQ(runner->snapshot()->status(), Status::Solved);
    runner->setBench(2, off(beacon("blue")));
    EXPECT_EQ(runner->state(), state);
    EXPECT_EQ(runner->snapshot()->status(), Status::Solved);
    runner->setBench(3, off(BenchBuilder().board("A", "half").part("PS1", "bench-supply", {})));
    EXPECT_TRUE(runner->state().values.empty()) << "what is gone has forgotten";
    EXPECT_EQ(runner->snapshot()->status(), Status::Off);
}

TEST(Snapshot, WhatOnlyEditsChangeIsShared) {
    const auto runner = makeRestingRunner();
    runner->setBench(1, beacon().share());
    const auto open = runner->snapshot();
    runner->setInputs(pressed(1));
    const auto closed = runner->snapshot();
    EXPECT_EQ(open->layout, closed->layout);
    EXPECT_EQ(open->emitters, closed->emitters);
    EXPECT_EQ(open->solution.places, closed->solution.places);
}

TEST(RestingRunner, AgreesWithEvaluate) {
    const auto runner = makeRestingRunner();
    for (const char* colour : {"red", "blue", "infrared", "red"}) {
        const auto bench = beacon(colour).share();
        runner->setBench(1, bench);
        for (const Inputs& inputs : {Inputs{}, pressed(), Inputs{}}) {
            runner->setInputs(inputs);
            const auto warm = runner->snapshot(), cold = evaluate(bench, inputs);
            for (std::size_t i = 0; i < warm->leadCurrent.size(); ++i) {
                EXPECT_NEAR(warm->leadCurrent[i], cold->leadCurrent[i], 1e-11) << colour;
            }
        }
    }
}

}  // namespace
}  // namespace tiepoint
