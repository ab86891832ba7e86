// tiepoint diagnose: text, JSON, the chart and exit codes of the built program.

#include "app/run_program.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <algorithm>

namespace tiepoint::test {
namespace {

using nlohmann::json;

json diagnosed(std::vector<std::string> saw) {
    std::vector<std::string> arguments{"diagnose", harbourBench("beacon-lamp"), "--json"};
    arguments.insert(arguments.end(), saw.begin(), saw.end());
    const Ran ran = runProgram(arguments);
    EXPECT_EQ(ran.code, 0) << ran.error;
    return json::parse(ran.output);
}

std::vector<std::string> kindsOf(const json& diagnosis) {
    std::vector<std::string> kinds;
    for (const json& fit : diagnosis["fits"]) {
        for (const json& slip : fit["slips"])
            kinds.push_back(slip["kind"].get<std::string>() + " " + slip["parts"].dump());
    }
    return kinds;
}

bool holds(const std::vector<std::string>& kinds, const std::string& kind) {
    return std::ranges::find(kinds, kind) != kinds.end();
}

TEST(Diagnose, ADarkLampWithPlusAtTheButtonLeavesWhatComesAfter) {
    const json answer = diagnosed({"--hold", "S1", "--saw", "D1=dark", "--saw", "A.c14=5.0"});
    const auto kinds = kindsOf(answer);
    EXPECT_TRUE(holds(kinds, R"(reversed ["D1"])"));
    EXPECT_TRUE(holds(kinds, R"(jumper-missing ["W2"])"));
    EXPECT_FALSE(holds(kinds, R"(jumper-missing ["W1"])"));
    EXPECT_FALSE(answer["contradiction"].get<bool>());
    const json& next = answer["next"];
    EXPECT_TRUE(next.contains("measure") != next.contains("look")) << next.dump();
    EXPECT_FALSE(next["text"].get<std::string>().empty());
    EXPECT_TRUE(next["hold"].is_array());
    ASSERT_GT(next["answers"].size(), 1u);
    // What an answer says can be handed back, and leaves as many as it said.
    const json& likeliest = next["answers"][0];
    std::vector<std::string> saw{
        "--hold", "S1",        "--saw",  "D1=dark",
        "--saw",  "A.c14=5.0", "--hold", next["hold"].empty() ? "none" : next["hold"][0].get<std::string>()};
    for (const json& each : likeliest["saw"]) {
        saw.push_back("--saw");
        saw.push_back(each);
    }
    const std::size_t left = diagnosed(saw)["fits"].size();
    EXPECT_GT(left, 0u);
    EXPECT_LT(left, answer["fits"].size());
}

TEST(Diagnose, AMendIsTheEditOfTheBoardAsItWasBuilt) {
    const json answer =
        diagnosed({"--hold", "S1", "--saw", "D1=dark", "--saw", "D1.anode=A.h17", "--saw", "D1.cathode=A.h19"});
    ASSERT_EQ(answer["fits"].size(), 1u);
    const json& mend = answer["fits"][0]["mend"];
    EXPECT_EQ(mend["text"], "Put D1's anode into h16.");
    EXPECT_EQ(mend["edits"][0]["part"]["leads"]["anode"], "A.h16");
    EXPECT_TRUE(answer["next"].is_null());
}

TEST(Diagnose, HeatAndContradictionsAreSaid) {
    const json hot = diagnosed({"--hold", "S1", "--saw", "D1=hot"});
    EXPECT_TRUE(holds(kindsOf(hot), R"(value-tenfold ["R1"])"));
    EXPECT_TRUE(hot["next"]["text"].get<std::string>().starts_with("Switch the supply off now"));
    const Ran never = runProgram({"diagnose", harbourBench("beacon-lamp"), "--json", "--saw", "D1=lit", "--saw",
                                  "A.c14=29", "--saw", "A.a8=-20"});
    EXPECT_EQ(never.code, 1) << never.output;
    EXPECT_TRUE(json::parse(never.output)["contradiction"].get<bool>());
}

TEST(Diagnose, WhatCantBeSeenIsOneLine) {
    for (const char* saw : {"D9=dark", "D1=bright", "A.z9=5", "A.c14"}) {
        const Ran ran = runProgram({"diagnose", harbourBench("beacon-lamp"), "--saw", saw});
        EXPECT_EQ(ran.code, 2) << saw;
        EXPECT_EQ(lineCount(ran.error), 1) << ran.error;
    }
    EXPECT_EQ(runProgram({"diagnose", harbourBench("beacon-lamp"), "--hold", "D1", "--saw", "D1=lit"}).code, 2);
    EXPECT_EQ(runProgram({"diagnose", harbourBench("beacon-lamp"), "--black", "B.a1"}).code, 2);
}

TEST(Diagnose, TheChartIsOnePageOfRealLetters) {
    const std::string chart = (scratchFolder() / "chart.pdf").string();
    const Ran ran = runProgram({"diagnose", harbourBench("beacon-lamp"), "--chart", chart});
    ASSERT_EQ(ran.code, 0) << ran.error;
    const Ran words = runTool("pdftotext", {"-layout", chart, "-"});
    ASSERT_EQ(words.code, 0) << words.error;
    EXPECT_NE(words.output.find("Find the slip"), std::string::npos);
    EXPECT_NE(words.output.find("Look at"), std::string::npos) << words.output;
    EXPECT_EQ(std::ranges::count(words.output, '\f'), 1);
}

}  // namespace
}  // namespace tiepoint::test
