// tiepoint resistor and --drawer: text, JSON and exit codes of the built program.

#include "app/run_program.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

namespace tiepoint::test {
namespace {

using nlohmann::json;

TEST(ResistorCommand, SaysWhatToTakeAndWhy) {
    const Ran ran = runProgram({"resistor", "--supply", "5", "--led", "red", "--current", "20mA"});
    EXPECT_EQ(ran.code, 0) << ran.error;
    EXPECT_EQ(ran.output,
              "2.00 V over the LED at 20.0 mA\n"
              "Exactly        150 Ω\n"
              "Take           150 Ω: brown green brown gold\n"
              "Then           20.0 mA runs\n"
              "It gets        60.0 mW; a resistor of 0.125 W stays cool enough to touch\n");
}

TEST(ResistorCommand, JsonHoldsEveryFigure) {
    const Ran ran = runProgram(
        {"resistor", "--supply", "9V", "--in-series", "2", "--current", "10mA", "--drawer", "220 680 1k", "--json"});
    ASSERT_EQ(ran.code, 0) << ran.error;
    const json said = json::parse(ran.output);
    EXPECT_EQ(said["resistance"], 680);
    EXPECT_EQ(said["lights"], 2);
    EXPECT_GT(said["exactResistance"], 500);
    EXPECT_LT(said["current"], 0.010);
    EXPECT_EQ(said["bands"], (json{"blue", "grey", "brown", "gold"}));
}

TEST(ResistorCommand, WhatCantBeIsSaidInOneLine) {
    for (const auto& arguments : std::vector<std::vector<std::string>>{{"--supply", "1.5"},
                                                                       {"--led", "purple"},
                                                                       {"--current", "much"},
                                                                       {"--drawer", "1k what"},
                                                                       {"--supply", "230"},
                                                                       {"--current", "1A"}}) {
        std::vector<std::string> all{"resistor"};
        all.insert(all.end(), arguments.begin(), arguments.end());
        const Ran ran = runProgram(all);
        EXPECT_EQ(ran.code, 2) << arguments.back();
        EXPECT_EQ(std::count(ran.error.begin(), ran.error.end(), '\n'), 1) << ran.error;
        EXPECT_TRUE(ran.output.empty());
    }
}

TEST(ResistorCommand, ADrawerThatIsNoneIsRefusedByCheckAndWhy) {
    EXPECT_EQ(runProgram({"check", harbourBench("dark-beacon"), "--drawer", "x"}).code, 2);
    EXPECT_EQ(runProgram({"why", harbourBench("dark-beacon"), "D1", "--drawer", "x"}).code, 2);
    EXPECT_EQ(runProgram({"check", harbourBench("dark-beacon"), "--drawer", "330 1k"}).code, 1);
}

}  // namespace
}  // namespace tiepoint::test
