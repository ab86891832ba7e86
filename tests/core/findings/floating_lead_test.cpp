// A gate that nothing holds: told with the position in which it floats, and only then.

#include "support/inspect_bench.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace tiepoint::test {
namespace {

/// A MOSFET that switches an LED, its gate at a button towards plus.
BenchBuilder gated() {
    BenchBuilder builder;
    builder.board("A", "half")
        .part("PS1", "bench-supply", {{"+", "A.top+3"}, {"-", "A.bottom-3"}}, {{"voltage", 5}})
        .part("S1", "push-button", {{"1a", "A.e5"}, {"1b", "A.f5"}, {"2a", "A.e7"}, {"2b", "A.f7"}})
        .part("R1", "resistor", {{"1", "A.h7"}, {"2", "A.h18"}}, {{"resistance", 1000}})
        .part("Q1", "n-mosfet", {{"source", "A.g17"}, {"gate", "A.g18"}, {"drain", "A.g19"}})
        .part("R3", "resistor", {{"1", "A.c21"}, {"2", "A.f21"}}, {{"resistance", 220}})
        .part("D1", "led", {{"anode", "A.i21"}, {"cathode", "A.i19"}})
        .jumper("W1", "A.top+5", "A.a5", "red")
        .jumper("W2", "A.j17", "A.bottom-15", "black")
        .jumper("W3", "A.top+18", "A.a21", "red");
    return builder;
}

const Finding* floatingIn(const std::vector<Finding>& findings) {
    const auto found = std::ranges::find(findings, "floating-lead", &Finding::rule);
    return found == findings.end() ? nullptr : &*found;
}

TEST(FloatingLead, AGateBehindAnOpenButtonIsToldOf) {
    const auto findings = inspected(gated().share());
    const Finding* found = floatingIn(findings);
    ASSERT_NE(found, nullptr) << told(findings);
    EXPECT_EQ(found->severity, Severity::Risk);
    EXPECT_EQ(found->parts, (std::vector<std::string>{"Q1"}));
    EXPECT_EQ(
        found->text,
        "Nothing holds the gate of Q1: it keeps any charge and may switch by itself. Join it through a resistor to "
        "where it should rest.");
}

TEST(FloatingLead, AResistorToTheSourceHoldsIt) {
    auto builder = gated();
    builder.part("R2", "resistor", {{"1", "A.f18"}, {"2", "A.f14"}}, {{"resistance", 100e3}})
        .jumper("W4", "A.j14", "A.bottom-12", "black");
    const auto findings = inspected(builder.share());
    EXPECT_EQ(floatingIn(findings), nullptr) << told(findings);
}

TEST(FloatingLead, ACapacitorAloneDoesntHoldIt) {
    auto builder = gated();
    builder.part("C1", "ceramic-capacitor", {{"1", "A.f18"}, {"2", "A.f16"}})
        .jumper("W4", "A.j16", "A.bottom-14", "black");
    const auto findings = inspected(builder.share());
    EXPECT_NE(floatingIn(findings), nullptr) << told(findings);
}

/// A base without a resistor in front of it is a diode across the supply.
TEST(OverCurrent, ABaseWithoutAResistorIsToldOf) {
    BenchBuilder builder;
    builder.board("A", "half")
        .part("PS1", "bench-supply", {{"+", "A.top+3"}, {"-", "A.bottom-3"}}, {{"voltage", 5}})
        .part("Q1", "npn", {{"emitter", "A.g15"}, {"base", "A.g16"}, {"collector", "A.g17"}})
        .part("R2", "resistor", {{"1", "A.c19"}, {"2", "A.f19"}}, {{"resistance", 220}})
        .part("D1", "led", {{"anode", "A.i19"}, {"cathode", "A.i17"}})
        .jumper("W1", "A.top+14", "A.f16", "red")
        .jumper("W2", "A.j15", "A.bottom-13", "black")
        .jumper("W3", "A.top+16", "A.a19", "red");
    const auto findings = inspected(builder.share());
    const auto found = std::ranges::find_if(findings, [](const Finding& each) {
        return each.rule == "over-current" && each.text.find("The base of Q1 would carry") != std::string::npos;
    });
    EXPECT_NE(found, findings.end()) << told(findings);
}

/// Backwards a base bears 6 V (from memory): an NPN with its emitter at plus and its base at minus.
TEST(OverVoltage, ABaseFarBelowItsEmitterIsToldOf) {
    BenchBuilder builder;
    builder.board("A", "half")
        .part("PS1", "bench-supply", {{"+", "A.top+3"}, {"-", "A.bottom-3"}}, {{"voltage", 12}})
        .part("Q1", "npn", {{"emitter", "A.g15"}, {"base", "A.g16"}, {"collector", "A.g17"}})
        .part("R1", "resistor", {{"1", "A.i16"}, {"2", "A.i10"}}, {{"resistance", 10e3}})
        .part("R2", "resistor", {{"1", "A.j17"}, {"2", "A.j22"}}, {{"resistance", 1000}})
        .jumper("W1", "A.top+13", "A.f15", "red")
        .jumper("W2", "A.j10", "A.bottom-9", "black")
        .jumper("W3", "A.i22", "A.bottom-19", "black");
    const auto findings = inspected(builder.share());
    const auto found = std::ranges::find(findings, "over-voltage", &Finding::rule);
    ASSERT_NE(found, findings.end()) << told(findings);
    EXPECT_NE(found->text.find("between its base and its emitter the wrong way round; its maximum is 6 V"),
              std::string::npos)
        << found->text;
}

}  // namespace
}  // namespace tiepoint::test
