// tiepoint truth: text, JSON and exit codes of the built program.

#include "app/run_program.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

namespace tiepoint::test {
namespace {

using nlohmann::json;

json tableOf(const std::string& file, int code = 0) {
    const Ran ran = runProgram({"truth", file, "--json"});
    EXPECT_EQ(ran.code, code) << ran.error;
    return json::parse(ran.output);
}

std::string withButtons(int count) {
    std::string parts;
    for (int i = 0; i < count; ++i) {
        const std::string one = std::to_string(1 + 3 * i), other = std::to_string(3 + 3 * i);
        parts += std::string(i == 0 ? "" : ",\n") + R"({"id": "S)" + std::to_string(i + 1) +
                 R"(", "kind": "push-button", "leads": {"1a": "A.e)" + one + R"(", "1b": "A.f)" + one +
                 R"(", "2a": "A.e)" + other + R"(", "2b": "A.f)" + other + R"("}})";
    }
    return scratchFile("buttons.bench.json", R"({"format": "tiepoint-bench", "version": 1, "title": "Buttons",
        "boards": [{"id": "A", "kind": "full", "at": [0, 0]}], "parts": [)" +
                                                 parts + R"(], "jumpers": []})");
}

TEST(Truth, HarbourBenchesSayWhatTheyAre) {
    struct Case {
        const char* bench;
        const char* words;
    };
    for (const Case& each :
         {Case{"beacon-lamp", "S1"}, Case{"lock-gate", "S1 AND S2"}, Case{"quay-bell-lamp", "S1 OR S2"},
          Case{"two-way-stair-lamp", "S1 XOR S2"}, Case{"dark-beacon", "never"}, Case{"fairway-dimmer", "always"}}) {
        const json table = tableOf(harbourBench(each.bench));
        EXPECT_EQ(table["expressions"]["D1"]["text"], each.words) << each.bench;
        EXPECT_EQ(table["expressions"]["D1"]["exact"], true);
        EXPECT_EQ(table["rows"].size(), std::size_t{1} << table["switches"].size());
    }
    EXPECT_EQ(tableOf(harbourBench("dark-beacon"))["idle"], (json{"S1"}));
}

TEST(Truth, RowsHoldPositionsLightAndCurrent) {
    const json table = tableOf(harbourBench("lock-gate"));
    EXPECT_EQ(table["switches"][1]["positions"], (json{"released", "pressed"}));
    const json& last = table["rows"][3];
    EXPECT_EQ(last["switches"], (json{{"S1", 1}, {"S2", 1}}));
    EXPECT_EQ(last["status"], "solved");
    EXPECT_EQ(last["lamps"]["D1"]["lit"], true);
    EXPECT_GT(last["lamps"]["D1"]["brightness"], 0.5);
    EXPECT_GT(last["lamps"]["D1"]["current"], 5e-3);
    EXPECT_EQ(table["rows"][1]["lamps"]["D1"]["lit"], false);
    EXPECT_EQ(table["litFromBrightness"], 0.045);
}

TEST(Truth, TextReadsAsATable) {
    EXPECT_EQ(runProgram({"truth", harbourBench("quay-bell-lamp")}).output,
              "Quay bell lamp: 2 switches, 1 lamp\n"
              "  S1: 0 released, 1 pressed\n"
              "  S2: 0 released, 1 pressed\n"
              "\n"
              "  S1 S2 | D1\n"
              "   0  0 | dark\n"
              "   0  1 | lit 73 %\n"
              "   1  0 | lit 73 %\n"
              "   1  1 | lit 73 %\n"
              "\n"
              "D1 is lit when S1 OR S2\n");
    const std::string dark = runProgram({"truth", harbourBench("dark-beacon")}).output;
    EXPECT_NE(dark.find("D1 is never lit\n"), std::string::npos) << dark;
    EXPECT_NE(dark.find("S1 changes nothing: every current stays the same.\n"), std::string::npos) << dark;
}

TEST(Truth, MoreThanTenSwitchesAreOneClearLine) {
    EXPECT_EQ(runProgram({"truth", withButtons(10)}).code, 0);
    const Ran ran = runProgram({"truth", withButtons(11)});
    EXPECT_EQ(ran.code, 2);
    EXPECT_TRUE(ran.output.empty());
    EXPECT_EQ(lineCount(ran.error), 1);
    EXPECT_NE(ran.error.find("the bench has 11 switches; a truth table has at most 10"), std::string::npos)
        << ran.error;
}

TEST(Truth, RowsWithoutASolutionAreNullAndTold) {
    const std::string file = clashingBench();
    const json table = tableOf(file, 1);
    EXPECT_EQ(table["rows"][0]["status"], "none");
}

}  // namespace
}  // namespace tiepoint::test
