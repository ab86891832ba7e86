// tiepoint why: text, JSON and exit codes of the built program.

#include "app/run_program.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

namespace tiepoint::test {
namespace {

using nlohmann::json;

TEST(Why, DarkBeaconIsToldItsHoleAndItsButton) {
    const Ran ran = runProgram({"why", harbourBench("dark-beacon"), "D1", "--json"});
    EXPECT_EQ(ran.code, 0) << ran.error;
    const json answer = json::parse(ran.output);
    EXPECT_EQ(answer["question"], "Why is D1 dark?");
    ASSERT_EQ(answer["remedies"].size(), 1u);
    EXPECT_EQ(answer["remedies"][0]["text"], "Put the anode of D1 into h16, then press S1");
    EXPECT_EQ(answer["remedies"][0]["hold"], (json{"S1"}));
    EXPECT_EQ(answer["remedies"][0]["edits"][0]["part"]["leads"]["anode"], "A.h16");
    int missing = 0;
    for (const json& cause : answer["causes"]) missing += cause["missingLink"].get<bool>();
    EXPECT_EQ(missing, 1);
}

TEST(Why, TextSaysCausesAndWhatToTry) {
    EXPECT_EQ(
        runProgram({"why", harbourBench("beacon-lamp"), "D1"}).output,
        "Why is D1 dark?\n"
        "  No current flows through D1, and without current it stays dark.\n"
        "  The cathode of D1 leads to minus, but the anode of D1 has no way to plus (open circuit: no complete path).\n"
        "  Missing link: S1 is open: no complete path.\n"
        "  Try: Press S1. Then 9.37 mA flows through D1, lit at 74 %.\n");
    const Ran held = runProgram({"why", harbourBench("beacon-lamp"), "D1", "--hold", "S1"});
    EXPECT_EQ(held.code, 0);
    EXPECT_TRUE(held.output.starts_with("Why is D1 lit as it is?\n")) << held.output;
}

TEST(Why, UnknownPartsAndHoldsAreOneLine) {
    for (const std::vector<std::string>& arguments :
         {std::vector<std::string>{"why", harbourBench("beacon-lamp"), "D9"},
          {"why", harbourBench("beacon-lamp"), "W1"},
          {"why", harbourBench("beacon-lamp"), "D1", "--hold", "S9"},
          {"why", harbourBench("beacon-lamp")}}) {
        const Ran ran = runProgram(arguments);
        EXPECT_EQ(ran.code, 2);
        EXPECT_EQ(lineCount(ran.error), 1) << ran.error;
    }
}

TEST(Why, NoSolutionIsSaidWithItsCode) {
    const std::string file = clashingBench();
    EXPECT_EQ(runProgram({"why", file, "PS1"}).code, 1);
}

}  // namespace
}  // namespace tiepoint::test
