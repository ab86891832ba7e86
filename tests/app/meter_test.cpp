// The multimeter on the command line: its reading in text and JSON, what check says of it, and its page in the catalogue.

#include "app/run_program.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

namespace tiepoint::test {
namespace {

using nlohmann::json;

/// 9 V over two resistors of 1 Mohm, and a meter at the lower one (or wherever its red lead is put).
std::string dividerBench(const std::string& dial, const std::string& red = "A.e10") {
    return scratchFile("tide-gauge-" + dial + ".bench.json",
                       R"({"format": "tiepoint-bench", "version": 1, "title": "Tide gauge",
"boards": [{"id": "A", "kind": "half", "at": [0, 0]}],
"parts": [
  {"id": "PS1", "kind": "bench-supply", "leads": {"+": "A.top+3", "-": "A.bottom-3"}, "values": {"voltage": 9}},
  {"id": "R1", "kind": "resistor", "leads": {"1": "A.c5", "2": "A.c10"}, "values": {"resistance": 1000000}},
  {"id": "R2", "kind": "resistor", "leads": {"1": "A.d10", "2": "A.d15"}, "values": {"resistance": 1000000}},
  {"id": "M1", "kind": "multimeter", "leads": {"+": ")" +
                           red + R"(", "com": "A.e15"}, "state": {"dial": ")" + dial + R"("}}],
"jumpers": [{"id": "W1", "ends": ["A.top+7", "A.a5"], "colour": "red"}, {"id": "W2", "ends": ["A.bottom-14", "A.a15"], "colour": "black"}]})");
}

json solvedFile(const std::string& file) { return json::parse(runProgram({"solve", file, "--json"}).output); }

TEST(Multimeter, ItsReadingStandsInTheJson) {
    const json answer = solvedFile(dividerBench("volts"));
    const json& reading = answer["parts"]["M1"]["reading"];
    EXPECT_EQ(reading["text"], "4.29 V");
    EXPECT_EQ(reading["quantity"], "voltage");
    EXPECT_NEAR(reading["value"], 9.0 * 10 / 21, 1e-6);
    EXPECT_EQ(reading["beeps"], false);
    EXPECT_FALSE(reading.contains("why"));
    EXPECT_EQ(answer["parts"]["M1"]["model"], (json{{"+-com.resistance", 1e7}}));
    EXPECT_FALSE(answer["parts"]["R1"].contains("reading"));
    EXPECT_TRUE(answer["findings"].empty());
}

TEST(Multimeter, WithoutANumberItSaysWhy) {
    const json answer = solvedFile(dividerBench("ohms"));
    const json& reading = answer["parts"]["M1"]["reading"];
    EXPECT_EQ(reading["text"], "---");
    EXPECT_TRUE(reading["value"].is_null());
    EXPECT_EQ(reading["why"], "PS1 is on: switch it off to measure ohms.");
    EXPECT_EQ(solvedFile(dividerBench("off"))["parts"]["M1"]["reading"]["text"], "off");
}

TEST(Multimeter, TextAndWhyTellIt) {
    const std::string file = dividerBench("volts");
    EXPECT_NE(runProgram({"solve", file}).output.find("M1, multimeter: takes 1.84 \u00b5W, reads 4.29 V\n"),
              std::string::npos)
        << runProgram({"solve", file}).output;
    EXPECT_EQ(runProgram({"why", file, "M1"}).output.find("Why does M1 show 4.29 V?"), 0u);
}

TEST(Multimeter, AcrossTheSupplyCheckCallsItAShort) {
    const Ran ran = runProgram({"check", dividerBench("amperes", "A.b5"), "--json"});
    EXPECT_EQ(ran.code, 1);
    EXPECT_EQ(json::parse(ran.output)["findings"][0]["rule"], "short-circuit") << ran.output;
}

TEST(Multimeter, TheCatalogueTellsWhatItReads) {
    const json model = json::parse(runProgram({"parts", "multimeter", "--json"}).output)["parts"][0]["model"];
    ASSERT_EQ(model.size(), 4u);
    EXPECT_EQ(model[0]["reads"], "voltage");
    EXPECT_EQ(model[0]["closedWhen"]["is"], "volts");
}

}  // namespace
}  // namespace tiepoint::test
