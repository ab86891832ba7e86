// The circuit of a bench without places: what becomes a net, and what it is called.

#include "core/netlist/bench_netlist.h"

#include "core/netlist/equality.h"
#include "support/build_bench.h"

#include <gtest/gtest.h>

namespace tiepoint {
namespace {

using namespace test;

std::string netAt(const Netlist& netlist, std::string_view id, std::string_view lead) {
    const int part = netlist.partIndex(id);
    const int net = netlist.leads.at(part).at(netlist.parts[part].kind->leadIndex(lead));
    return net < 0 ? "" : netlist.nets[net];
}

BenchBuilder buttonBeacon() {
    return BenchBuilder()
        .board("A", "half")
        .part("R2", "resistor", {{"1", "A.a5"}, {"2", "A.a10"}})
        .part("R10", "resistor", {{"1", "A.b5"}, {"2", "A.b10"}})
        .part("PS1", "usb-supply", {})
        .part("S1", "push-button", {{"1a", "A.e10"}, {"1b", "A.f10"}, {"2a", "A.e12"}, {"2b", "A.f12"}})
        .part("D1", "led", {{"anode", "A.h12"}, {"cathode", "A.h13"}})
        .jumper("PS1.5V", "A.c5")
        .jumper("PS1.GND2", "A.j13");
}

TEST(BenchNetlist, JumpersAndStripsBecomeNets) {
    const Netlist netlist = netlistOf(*buildLayout(buttonBeacon().share()));
    ASSERT_TRUE(validate(netlist).ok()) << validate(netlist).error().oneLine();
    EXPECT_EQ(netlist.nets.size(), 4u);
    EXPECT_EQ(netAt(netlist, "R2", "1"), "PS1.5V");
    EXPECT_EQ(netAt(netlist, "R10", "1"), "PS1.5V");
    EXPECT_EQ(netAt(netlist, "R2", "2"), "R2.2") << "R2 comes before R10";
    EXPECT_EQ(netAt(netlist, "S1", "1a"), "R2.2");
    EXPECT_EQ(netAt(netlist, "S1", "1b"), "R2.2");
    EXPECT_EQ(netAt(netlist, "D1", "anode"), "D1.anode");
    EXPECT_EQ(netAt(netlist, "S1", "2b"), "D1.anode");
    EXPECT_EQ(netAt(netlist, "D1", "cathode"), "PS1.GND1") << "both black sockets are one";
    EXPECT_EQ(netAt(netlist, "PS1", "GND2"), "PS1.GND1");
}

TEST(BenchNetlist, WhatTouchesNothingHangs) {
    const Netlist netlist = netlistOf(*buildLayout(
        buttonBeacon()
            .part("R1", "resistor", {{"1", "A.a20"}})
            .part("S2", "push-button", {{"1a", "A.e22"}, {"1b", "A.f22"}, {"2a", "A.e24"}, {"2b", "A.f24"}})
            .jumper("A.c20", "A.c21")
            .jumper("A.c22", "A.i25")
            .share()));
    EXPECT_EQ(netAt(netlist, "R1", "1"), "") << "a jumper alone leads nowhere";
    EXPECT_EQ(netAt(netlist, "R1", "2"), "");
    EXPECT_EQ(netAt(netlist, "S2", "1a"), "") << "its own other leg is no company";
    EXPECT_TRUE(validate(netlist).ok());
}

TEST(BenchNetlist, NamesFollowNoPlaceAndNoOrder) {
    Bench moved = BenchBuilder()
                      .board("B", "full")
                      .part("D1", "led", {{"anode", "B.a30"}, {"cathode", "B.a31"}})
                      .part("S1", "push-button", {{"1a", "B.e28"}, {"1b", "B.f28"}, {"2a", "B.e30"}, {"2b", "B.f30"}})
                      .part("PS1", "usb-supply", {})
                      .part("R10", "resistor", {{"1", "B.h28"}, {"2", "B.h33"}})
                      .part("R2", "resistor", {{"1", "B.i33"}, {"2", "B.i28"}})
                      .jumper("PS1.GND1", "B.b31")
                      .jumper("PS1.5V", "B.top+3")
                      .jumper("B.top+9", "B.j33")
                      .build();
    const Netlist one = netlistOf(*buildLayout(buttonBeacon().share()));
    const Netlist other = netlistOf(*buildLayout(std::make_shared<const Bench>(moved)));
    EXPECT_EQ(compareCircuits(one, other).verdict, Verdict::Equal);
    EXPECT_EQ(canonicalHash(one), canonicalHash(other));
    for (const std::string& name : one.nets) {
        if (name == "R2.2") continue;  // R2 is turned round
        EXPECT_GE(other.netIndex(name), 0) << name;
    }
}

TEST(BenchNetlist, AGivenNameStays) {
    const auto layout = buildLayout(buttonBeacon().share());
    const int lit = layout->netOfHole(layout->holeIndex(holeAt("A.h12")));
    const int minus = layout->netOfHole(layout->holeIndex(holeAt("A.h13")));
    const int plus = layout->netOfHole(layout->holeIndex(holeAt("A.a5")));
    const Netlist netlist = netlistOf(*layout, {{lit, "PS1.5V"}, {minus, "bad\nname"}});
    EXPECT_TRUE(validate(netlist).ok());
    EXPECT_EQ(netAt(netlist, "D1", "anode"), "PS1.5V");
    EXPECT_EQ(netAt(netlist, "R2", "1"), "PS1.5V (2)") << "the name is taken";
    EXPECT_EQ(netAt(netlist, "D1", "cathode"), "PS1.GND1") << "no name for a net";
    const Netlist twice = netlistOf(*layout, {{lit, "quay"}, {plus, "quay"}});
    EXPECT_TRUE(validate(twice).ok());
    EXPECT_NE(netAt(twice, "D1", "anode"), netAt(twice, "R2", "1"));
}

TEST(BenchNetlist, PlacesAreLeftOut) {
    Bench bench = buttonBeacon().build();
    bench.parts[2].at = Point{40, 3};
    const Netlist netlist = netlistOf(*buildLayout(std::make_shared<const Bench>(bench)));
    EXPECT_TRUE(validate(netlist).ok());
    EXPECT_FALSE(netlist.parts[2].at);
}

TEST(Netlist, ValidationKnowsWhatIsWrong) {
    const Netlist good = netlistOf(*buildLayout(buttonBeacon().share()));
    const auto spoilt = [&](auto&& spoil) {
        Netlist netlist = good;
        spoil(netlist);
        return !validate(netlist).ok();
    };
    EXPECT_TRUE(spoilt([](Netlist& n) { n.leads.pop_back(); }));
    EXPECT_TRUE(spoilt([](Netlist& n) { n.leads[0].pop_back(); }));
    EXPECT_TRUE(spoilt([](Netlist& n) { n.leads[0][0] = 99; }));
    EXPECT_TRUE(spoilt([](Netlist& n) { n.leads[0][0] = -2; }));
    EXPECT_TRUE(spoilt([](Netlist& n) { std::swap(n.leads[0][0], n.leads[0][1]); }));
    EXPECT_TRUE(spoilt([](Netlist& n) { n.nets[1] = n.nets[0]; }));
    EXPECT_TRUE(spoilt([](Netlist& n) { n.nets[1] = ""; }));
    EXPECT_TRUE(spoilt([](Netlist& n) { n.nets.push_back("spare"); }));
    EXPECT_TRUE(spoilt([](Netlist& n) { n.parts[1].id = n.parts[0].id; }));
    EXPECT_TRUE(spoilt([](Netlist& n) { n.parts[0].leads[0] = holeAt("A.a1"); }));
    EXPECT_TRUE(spoilt([](Netlist& n) { n.parts[0].values[0] = -1; }));
    EXPECT_TRUE(spoilt([](Netlist& n) { n.title = std::string(1, '\0'); }));
}

}  // namespace
}  // namespace tiepoint
