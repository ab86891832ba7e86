// tiepoint spread: text, JSON and exit codes of the built program.

#include "app/run_program.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

namespace tiepoint::test {
namespace {

using nlohmann::json;

TEST(SpreadCommand, ReadsEachLightBetweenItsLimits) {
    const Ran ran = runProgram({"spread", harbourBench("beacon-lamp"), "--hold", "S1", "--json"});
    ASSERT_EQ(ran.code, 0) << ran.error;
    const json spread = json::parse(ran.output);
    const json& lamp = spread["readings"]["D1"];
    EXPECT_EQ(lamp["quantity"], "current");
    EXPECT_LT(lamp["least"], lamp["nominal"]);
    EXPECT_GT(lamp["greatest"], lamp["nominal"]);
    EXPECT_GT(lamp["deviation"], 0);
    EXPECT_EQ(lamp["most"], "D1");
    EXPECT_FALSE(spread.contains("battery"));  // a bench supply never runs out
}

TEST(SpreadCommand, ABatteryHasHours) {
    const Ran ran = runProgram(
        {"spread", harbourBench("beacon-lamp"), "--hold", "S1", "--battery", "cells", "--cells", "3", "--json"});
    ASSERT_EQ(ran.code, 0) << ran.error;
    const json battery = json::parse(ran.output)["battery"];
    EXPECT_EQ(battery["kind"], "3 cells in a holder");
    EXPECT_GT(battery["hours"], 100);
    const Ran wrong = runProgram({"spread", harbourBench("beacon-lamp"), "--battery", "led"});
    EXPECT_EQ(wrong.code, 2);
    EXPECT_NE(wrong.error.find("no battery of that name; say cells or block-9v"), std::string::npos) << wrong.error;
}

TEST(SpreadCommand, ProseSaysWhatMattersMost) {
    const Ran ran = runProgram({"spread", harbourBench("beacon-lamp"), "--hold", "S1"});
    EXPECT_EQ(ran.code, 0);
    EXPECT_NE(ran.output.find("D1 matters most"), std::string::npos) << ran.output;
    EXPECT_EQ(runProgram({"spread", clashingBench()}).code, 1);
}

}  // namespace
}  // namespace tiepoint::test
