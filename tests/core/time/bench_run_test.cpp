// Benches through time: kinds of parts, hands, edits, and what parts remember.

#include "core/bench/bench_file.h"
#include "core/snapshot/pinned_value.h"
#include "core/snapshot/runner.h"

#include <gtest/gtest.h>

#include <cmath>

namespace tiepoint {
namespace {

/// 5 V behind 0.01 ohm, S1 and S2 with 10 kohm each: S1 charges C1 (100 uF, without leakage worth the name), S2 discharges it.
std::string chargingText(const std::string& extra = "") {
    return R"({"format": "tiepoint-bench", "version": 1, "title": "Tide gauge", "boards": [{"id": "A", "kind": "half", "at": [0, 0]}],
      "parts": [
        {"id": "PS1", "kind": "bench-supply", "leads": {"+": "A.top+1", "-": "A.bottom-1"}},
        {"id": "S1", "kind": "push-button", "leads": {"1a": "A.e5", "1b": "A.f5", "2a": "A.e7", "2b": "A.f7"}},
        {"id": "R1", "kind": "resistor", "leads": {"1": "A.c7", "2": "A.c13"}, "values": {"resistance": 10000}},
        {"id": "C1", "kind": "electrolytic-capacitor", "leads": {"+": "A.a13", "-": "A.a15"},
         "values": {"capacitance": 1e-4, "seriesResistance": 0.001, "leakageResistance": 1e12})" +
           extra + R"(}],
      "jumpers": [{"id": "W1", "ends": ["A.top+3", "A.a5"], "colour": "red"},
                  {"id": "W2", "ends": ["A.bottom-13", "A.e15"], "colour": "black"}]})";
}

std::shared_ptr<const Bench> timedBench(const std::string& text) {
    auto read = readBench(text);
    EXPECT_TRUE(read.ok()) << read.error().oneLine();
    return std::make_shared<const Bench>(std::move(read).value().bench);
}

double voltAt(Runner& runner, const char* hole) {
    return pinnedValue(*runner.snapshot(), {"M1", VoltsAt{*parseHole(hole)}, {}}).value;
}

TEST(BenchRun, ACapacitorChargesWhileAButtonIsPressed) {
    const auto runner = makeRunner();
    Inputs inputs;
    inputs.presses = {{"S1", 0.5, 2.5}};
    runner->setInputs(inputs);
    runner->setBench(1, timedBench(chargingText()));
    runner->advanceTo(0.4);
    EXPECT_NEAR(voltAt(*runner, "A.b13"), 0, 1e-4);
    for (double second = 0.6; second < 2.5; second += 0.1) {
        runner->advanceTo(second);
        ASSERT_EQ(runner->snapshot()->status(), Status::Solved) << runner->snapshot()->solution.reason;
        EXPECT_NEAR(voltAt(*runner, "A.b13"), 5 * (1 - std::exp(-(second - 0.5))), 2e-4) << second;
        EXPECT_LT(runner->snapshot()->solution.kirchhoffWorst, 1e-9);
    }
    runner->advanceTo(10);  // let go: it keeps its charge
    EXPECT_NEAR(voltAt(*runner, "A.b13"), 5 * (1 - std::exp(-2.0)), 2e-4);
}

TEST(BenchRun, ChargeStaysThroughEditsOfOtherParts) {
    const auto runner = makeRunner();
    Inputs inputs;
    inputs.held = {"S1"};
    runner->setInputs(inputs);
    runner->setBench(1, timedBench(chargingText()));
    runner->advanceTo(1);
    auto other = *timedBench(chargingText());
    other.parts[2].values[0] = 20e3;  // R1
    runner->setBench(2, std::make_shared<const Bench>(other));
    const double begun = 5 * (1 - std::exp(-1.0));
    EXPECT_NEAR(voltAt(*runner, "A.b13"), begun, 2e-4);
    runner->advanceTo(3);
    EXPECT_NEAR(voltAt(*runner, "A.b13"), 5 - (5 - begun) * std::exp(-1.0), 3e-4);
}

TEST(BenchRun, BeginsWithWhatTheFileOrTheStateSays) {
    const auto runner = makeRunner();
    runner->setBench(1, timedBench(chargingText(R"(, "state": {"voltage": 3})")));
    runner->advanceTo(0.1);
    EXPECT_NEAR(voltAt(*runner, "A.b13"), 3, 1e-4);
    State state;
    state.values[{"C1", Memory::Voltage, 0}] = 2;
    runner->setState(state);
    runner->advanceTo(0.2);
    EXPECT_NEAR(voltAt(*runner, "A.b13"), 2, 1e-4);
    EXPECT_NEAR(runner->state().of("C1", Memory::Voltage), 2, 1e-4);
}

TEST(BenchRun, ABenchThatStoresNothingRests) {
    const std::string text =
        R"({"format": "tiepoint-bench", "version": 1, "title": "Lamp", "boards": [{"id": "A", "kind": "half", "at": [0, 0]}],
      "parts": [{"id": "PS1", "kind": "bench-supply", "leads": {"+": "A.a1", "-": "A.a9"}},
                {"id": "R1", "kind": "resistor", "leads": {"1": "A.b1", "2": "A.b9"}}], "jumpers": []})";
    const auto runner = makeRunner();
    runner->setBench(1, timedBench(text));
    const auto before = runner->snapshot();
    EXPECT_EQ(before->status(), Status::Solved);
    EXPECT_EQ(runner->nextChangeSecond(), std::numeric_limits<double>::infinity());
    runner->advanceTo(5);
    EXPECT_EQ(runner->snapshot(), before);
}

TEST(BenchRun, OnceChargedNothingMoves) {
    const auto runner = makeRunner();
    Inputs inputs;
    inputs.held = {"S1"};
    runner->setInputs(inputs);
    runner->setBench(1, timedBench(chargingText()));
    runner->advanceTo(0.5);
    EXPECT_EQ(runner->nextChangeSecond(), 0.5);
    runner->advanceTo(100);
    EXPECT_EQ(runner->nextChangeSecond(), std::numeric_limits<double>::infinity());
    EXPECT_NEAR(voltAt(*runner, "A.b13"), 5, 1e-4);
}

}  // namespace
}  // namespace tiepoint
