// The operating point of benches: reference and floating nets, off and none, limits, joined leads, warm starts.

#include "core/solve/operating_point.h"

#include "support/build_bench.h"

#include <gtest/gtest.h>

#include <cmath>

namespace tiepoint {
namespace {

using test::BenchBuilder;

/// A bench with the point that solves it.
struct Solved {
    explicit Solved(const BenchBuilder& builder) : bench(builder.share()), layout(buildLayout(bench)) {
        point.setLayout(layout);
    }

    const Solution& solve(std::set<std::string, std::less<>> held = {}) {
        Inputs inputs;
        inputs.held = std::move(held);
        return point.solve(inputs);
    }
    int lead(std::string_view part, std::string_view name) const {
        const int index = bench->partIndex(part);
        return layout->leadIndex(index, bench->parts[index].kind->leadIndex(name));
    }
    double volt(const Solution& s, std::string_view part, std::string_view name) const {
        return s.netVoltage[layout->netOfLead[lead(part, name)]];
    }
    double ampere(const Solution& s, std::string_view part, std::string_view name) const {
        return s.leadInjection[lead(part, name)];
    }

    std::shared_ptr<const Bench> bench;
    std::shared_ptr<const Layout> layout;
    OperatingPoint point;
};

BenchBuilder fullBoard() { return BenchBuilder().board("A", "full"); }

/// Supply, button, resistor and LED in one loop.
BenchBuilder beaconWith(double ohm = 330) {
    return fullBoard()
        .part("PS1", "bench-supply", {{"+", "A.top+3"}, {"-", "A.bottom-3"}})
        .part("S1", "push-button", {{"1a", "A.e14"}, {"1b", "A.f14"}, {"2a", "A.e16"}, {"2b", "A.f16"}})
        .part("R1", "resistor", {{"1", "A.c10"}, {"2", "A.c14"}}, {{"resistance", ohm}})
        .part("D1", "led", {{"anode", "A.g16"}, {"cathode", "A.g17"}})
        .jumper("A.top+8", "A.a10")
        .jumper("A.j17", "A.bottom-14");
}

TEST(OperatingPoint, BeaconConductsWhilePressed) {
    Solved beaconLamp(beaconWith());
    const Solution released = beaconLamp.solve();
    ASSERT_EQ(released.status, Status::Solved);
    EXPECT_LT(std::abs(beaconLamp.ampere(released, "D1", "anode")), 1e-9);
    const Solution pressed = beaconLamp.solve({"S1"});
    const double ampere = beaconLamp.ampere(pressed, "D1", "anode");
    EXPECT_NEAR(ampere, 9.2e-3, 0.3e-3);
    EXPECT_NEAR(beaconLamp.ampere(pressed, "PS1", "+"), -ampere, 1e-14);
    EXPECT_NEAR(beaconLamp.ampere(pressed, "PS1", "-"), ampere, 1e-14);
    EXPECT_LE(pressed.kirchhoffWorst, 1e-13);
    EXPECT_LE(std::abs(pressed.powerBalance), 1e-13);
    // The whole current of joined legs stands at the first of the group.
    EXPECT_NEAR(beaconLamp.ampere(pressed, "S1", "1a"), ampere, 1e-14);
    EXPECT_EQ(beaconLamp.ampere(pressed, "S1", "1b"), 0);
    EXPECT_NEAR(beaconLamp.ampere(pressed, "S1", "2a"), -ampere, 1e-14);
}

TEST(OperatingPoint, CountsFewIterations) {
    Solved lamp(beaconWith());
    EXPECT_LE(lamp.solve({"S1"}).iterations, 7);
    EXPECT_EQ(lamp.solve({"S1"}).iterations, 1);
    // A small change of a value keeps the junctions' voltages by id.
    Solved changed(beaconWith(332));
    lamp.point.setLayout(changed.layout);
    EXPECT_LE(lamp.solve({"S1"}).iterations, 3);
}

TEST(OperatingPoint, AnswersDontDependOnWhatWasSolvedBefore) {
    Solved fresh(beaconWith()), worn(beaconWith());
    worn.solve();
    worn.solve({"S1"});
    worn.solve();
    const double expected = fresh.ampere(fresh.solve({"S1"}), "D1", "anode");
    EXPECT_NEAR(worn.ampere(worn.solve({"S1"}), "D1", "anode"), expected, 1e-11 * expected);
}

TEST(OperatingPoint, IsOffWithoutASupplyThatIsOn) {
    Solved off(fullBoard()
                   .part("PS1", "bench-supply", {{"+", "A.a1"}, {"-", "A.a5"}}, {}, {{"on", 0}})
                   .part("R1", "resistor", {{"1", "A.b1"}, {"2", "A.b5"}}));
    const Solution& s = off.solve();
    EXPECT_EQ(s.status, Status::Off);
    for (double current : s.leadInjection) EXPECT_EQ(current, 0);
    for (double volt : s.netVoltage) EXPECT_TRUE(std::isnan(volt));
    EXPECT_FALSE(s.elements()[0].closed);
}

TEST(OperatingPoint, WhatIsStoredDrivesACircuitThatNoSupplyDoes) {
    // No kind of the catalogue stores anything yet: the state says of a part of this bench what a charged capacitor would remember.
    Solved off(fullBoard()
                   .part("PS1", "bench-supply", {{"+", "A.a1"}, {"-", "A.a5"}}, {}, {{"on", 0}})
                   .part("R1", "resistor", {{"1", "A.b1"}, {"2", "A.b5"}}));
    const auto statusWith = [&](const State::Key& key, double value) {
        State state;
        state.values[key] = value;
        return off.point.solve({}, state).status;
    };
    EXPECT_EQ(statusWith({"R1", Memory::Voltage}, 3), Status::Solved);
    EXPECT_EQ(statusWith({"R1", Memory::Current}, -0.1), Status::Solved);
    EXPECT_EQ(statusWith({"R1", Memory::Speed, 1}, 20), Status::Solved);
    EXPECT_EQ(statusWith({"R1", Memory::Voltage}, 0), Status::Off) << "it has nothing left";
    EXPECT_EQ(statusWith({"R1", Memory::Bit}, 1), Status::Off);
    EXPECT_EQ(statusWith({"R1", Memory::Temperature}, 80), Status::Off);
    EXPECT_EQ(statusWith({"C9", Memory::Voltage}, 3), Status::Off) << "no part of this bench";
    EXPECT_EQ(off.solve().status, Status::Off);
}

TEST(OperatingPoint, TheReferenceFollowsTheContactsAtOnce) {
    // S1 puts PS1, the first supply, into a loop; until then the minus of PS2 is 0 V.
    Solved two(fullBoard()
                   .part("PS1", "bench-supply", {{"+", "A.a1"}, {"-", "A.a5"}})
                   .part("S1", "push-button", {{"1a", "A.e14"}, {"1b", "A.f14"}, {"2a", "A.e16"}, {"2b", "A.f16"}})
                   .jumper("A.b1", "A.a14")
                   .part("R1", "resistor", {{"1", "A.a16"}, {"2", "A.b5"}})
                   .part("PS2", "bench-supply", {{"+", "A.a30"}, {"-", "A.a35"}})
                   .part("R2", "resistor", {{"1", "A.b30"}, {"2", "A.b35"}}));
    for (int round = 0; round < 2; ++round) {
        const Solution open = two.solve();
        EXPECT_EQ(two.volt(open, "PS2", "-"), 0);
        EXPECT_TRUE(std::isnan(two.volt(open, "PS1", "-")));
        const Solution pressed = two.solve({"S1"});
        EXPECT_EQ(two.volt(pressed, "PS1", "-"), 0);
        EXPECT_TRUE(std::isnan(two.volt(pressed, "PS2", "-")));
    }
}

TEST(OperatingPoint, ReferenceIsTheMinusOfTheSmallestSupplyPluggedIn) {
    // PS10 is listed first and PS2 hangs; in natural order PS9 is the smallest whose minus is plugged in.
    Solved three(fullBoard()
                     .part("PS10", "bench-supply", {{"+", "A.a1"}, {"-", "A.a5"}})
                     .part("PS2", "bench-supply", {})
                     .part("PS9", "bench-supply", {{"+", "A.a20"}, {"-", "A.a25"}}, {{"voltage", 3}})
                     .part("R1", "resistor", {{"1", "A.b1"}, {"2", "A.b5"}})
                     .part("R2", "resistor", {{"1", "A.b20"}, {"2", "A.b25"}}));
    const Solution& s = three.solve();
    ASSERT_EQ(s.status, Status::Solved);
    EXPECT_EQ(three.volt(s, "PS9", "-"), 0);
    EXPECT_NEAR(three.volt(s, "PS9", "+"), 3, 1e-3);
    EXPECT_TRUE(std::isnan(three.volt(s, "PS10", "+")));
    EXPECT_NEAR(three.ampere(s, "R1", "1"), 5 / 330.01, 1e-12);  // floating, yet it carries current
    EXPECT_TRUE(std::isnan(three.volt(s, "PS2", "+")));
}

// The circuit's own supply gives the reference, not one that is off, hangs by one lead or whose contact is open.
TEST(OperatingPoint, ReferenceIsASupplyThatDrivesSomething) {
    const auto lamp = [](const char* freeEnd, double on) {
        return fullBoard()
            .part("PS1", "bench-supply", {{"+", "A.a1"}, {"-", "A.a5"}}, {{"voltage", 9}}, {{"on", on}})
            .part("R1", "resistor", {{"1", "A.b1"}, {"2", freeEnd}})
            .part("PS2", "bench-supply", {{"+", "A.a20"}, {"-", "A.a25"}}, {{"voltage", 3}})
            .part("R2", "resistor", {{"1", "A.b20"}, {"2", "A.b25"}});
    };
    Solved off(lamp("A.b5", 0)), hanging(lamp("A.b9", 1)), both(lamp("A.b5", 1));
    for (Solved* solved : {&off, &hanging}) {
        const Solution& s = solved->solve();
        ASSERT_EQ(s.status, Status::Solved);
        EXPECT_EQ(solved->volt(s, "PS2", "-"), 0);
        EXPECT_NEAR(solved->volt(s, "R2", "1"), 3, 1e-3);
        EXPECT_TRUE(std::isnan(solved->volt(s, "PS1", "-")));
    }
    const Solution& s = both.solve();
    EXPECT_EQ(both.volt(s, "PS1", "-"), 0) << "the first in natural order of those that drive something";
    EXPECT_TRUE(std::isnan(both.volt(s, "R2", "1")));
}

TEST(OperatingPoint, ReferenceFollowsTheContacts) {
    Solved lamp(fullBoard()
                    .part("PS1", "bench-supply", {{"+", "A.a14"}, {"-", "A.b20"}})
                    .part("S1", "push-button", {{"1a", "A.e14"}, {"1b", "A.f14"}, {"2a", "A.e16"}, {"2b", "A.f16"}})
                    .part("R1", "resistor", {{"1", "A.b16"}, {"2", "A.a20"}})
                    .part("PS2", "bench-supply", {{"+", "A.a40"}, {"-", "A.a45"}}, {{"voltage", 3}})
                    .part("R2", "resistor", {{"1", "A.b40"}, {"2", "A.b45"}}));
    EXPECT_NEAR(lamp.volt(lamp.solve(), "R2", "1"), 3, 1e-3);
    EXPECT_NEAR(lamp.volt(lamp.solve({"S1"}), "R1", "1"), 5, 1e-2);
    EXPECT_TRUE(std::isnan(lamp.volt(lamp.solve({"S1"}), "R2", "1")));
    EXPECT_NEAR(lamp.volt(lamp.solve(), "R2", "1"), 3, 1e-3);
}

TEST(OperatingPoint, SocketsCountAsPluggedInOnceAJumperIsInOne) {
    Solved usb(fullBoard()
                   .part("PS1", "usb-supply", {})
                   .part("R1", "resistor", {{"1", "A.b1"}, {"2", "A.b5"}})
                   .jumper("PS1.5V", "A.a1")
                   .jumper("PS1.GND2", "A.a5"));
    const Solution& s = usb.solve();
    ASSERT_EQ(s.status, Status::Solved);
    EXPECT_EQ(usb.volt(s, "R1", "2"), 0);
    EXPECT_NEAR(usb.volt(s, "R1", "1"), 5 * 330 / 330.1, 1e-12);
    EXPECT_NEAR(usb.ampere(s, "PS1", "GND1"), 5 / 330.1, 1e-15);
}

TEST(OperatingPoint, OpenContactsFloatWhatTheyPart) {
    Solved lamp(fullBoard()
                    .part("PS1", "bench-supply", {{"+", "A.top+3"}, {"-", "A.bottom-3"}})
                    .part("S1", "push-button", {{"1a", "A.e14"}, {"1b", "A.f14"}, {"2a", "A.e16"}, {"2b", "A.f16"}})
                    .part("R1", "resistor", {{"1", "A.b16"}, {"2", "A.b20"}})
                    .jumper("A.top+8", "A.a14"));
    EXPECT_TRUE(std::isnan(lamp.volt(lamp.solve(), "R1", "2")));
    EXPECT_NEAR(lamp.volt(lamp.solve({"S1"}), "R1", "2"), 5, 1e-12);
}

TEST(OperatingPoint, SaysWhereThereIsNoSolution) {
    Solved loop(
        fullBoard()
            .part("PS1", "bench-supply", {{"+", "A.a1"}, {"-", "A.a5"}}, {{"voltage", 5}, {"seriesResistance", 0}})
            .part("R1", "resistor", {{"1", "A.c1"}, {"2", "A.c5"}})
            .part("PS2", "bench-supply", {{"+", "A.b1"}, {"-", "A.b5"}}, {{"voltage", 3}, {"seriesResistance", 0}}));
    const Solution& s = loop.solve();
    EXPECT_EQ(s.status, Status::None);
    EXPECT_EQ(s.troubleParts, (std::vector<int>{0, 2}));
    EXPECT_NE(s.reason.find("PS1, PS2"), std::string::npos) << s.reason;
    for (double volt : s.netVoltage) EXPECT_TRUE(std::isnan(volt));
    for (const ElementState e : s.elements()) EXPECT_TRUE(std::isnan(e.currentAmpere));
}

TEST(OperatingPoint, ShortedSupplyGivesItsLimit) {
    Solved shorted(fullBoard().part("PS1", "bench-supply", {{"+", "A.a1"}, {"-", "A.a5"}}).jumper("A.b1", "A.b5"));
    const Solution& s = shorted.solve();
    ASSERT_EQ(s.status, Status::Solved);
    EXPECT_TRUE(s.elements()[0].limiting);
    EXPECT_DOUBLE_EQ(shorted.ampere(s, "PS1", "+"), -0.5);
    EXPECT_DOUBLE_EQ(shorted.ampere(s, "PS1", "-"), 0.5);
    EXPECT_DOUBLE_EQ(s.elements()[0].currentAmpere, -0.5);
}

TEST(OperatingPoint, ConstantsAreThoseOfThePart) {
    Solved lamp(beaconWith());
    const Solution& s = lamp.solve();
    ASSERT_EQ(s.elementCount(), 4);
    EXPECT_EQ(s.elements()[3].part, 3);
    std::vector<std::string> names;
    for (const auto& [name, value] : s.elements()[3].constants) names.push_back(name);
    EXPECT_EQ(names, (std::vector<std::string>{"saturationCurrent", "ideality", "seriesResistance"}));
    EXPECT_EQ(s.elements()[2].constants[0].second, 330);
}

}  // namespace
}  // namespace tiepoint
