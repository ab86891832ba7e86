// tiepoint trace and solve --at: benches in time, against the closed form of a capacitor that charges through a resistor.

#include "app/run_program.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>
#include <sstream>

namespace tiepoint::test {
namespace {

/// 5 V (behind 0.01 ohm), S1, 10 kohm and 100 uF in a row.
std::string tideGauge() {
    return scratchFile(
        "tide-gauge.bench.json",
        R"({"format": "tiepoint-bench", "version": 1, "title": "Tide gauge", "boards": [{"id": "A", "kind": "half", "at": [0, 0]}],
  "parts": [{"id": "PS1", "kind": "bench-supply", "leads": {"+": "A.top+1", "-": "A.bottom-1"}},
    {"id": "S1", "kind": "push-button", "leads": {"1a": "A.e5", "1b": "A.f5", "2a": "A.e7", "2b": "A.f7"}},
    {"id": "R1", "kind": "resistor", "leads": {"1": "A.c7", "2": "A.c13"}, "values": {"resistance": 10000}},
    {"id": "C1", "kind": "electrolytic-capacitor", "leads": {"+": "A.a13", "-": "A.a15"}, "values": {"leakageResistance": 1e12}}],
  "jumpers": [{"id": "W1", "ends": ["A.top+3", "A.a5"], "colour": "red"}, {"id": "W2", "ends": ["A.bottom-13", "A.e15"], "colour": "black"}]})");
}

std::vector<std::vector<double>> csvRowsOf(const std::string& csv) {
    std::istringstream lines(csv);
    std::string line;
    std::getline(lines, line);
    std::vector<std::vector<double>> rows;
    while (std::getline(lines, line)) {
        std::istringstream cells(line);
        std::vector<double>& row = rows.emplace_back();
        for (std::string cell; std::getline(cells, cell, ',');) row.push_back(std::stod(cell));
    }
    return rows;
}

TEST(Trace, FollowsACapacitorThatCharges) {
    const Ran ran = runProgram(
        {"trace", tideGauge(), "--until", "3", "--every", "0.25", "--read", "A.b13,R1,W1", "--press", "S1@0.5-2.5"});
    ASSERT_EQ(ran.code, 0) << ran.error;
    EXPECT_TRUE(ran.output.starts_with("time,A.b13,R1,W1\n")) << ran.output.substr(0, 60);
    const auto rows = csvRowsOf(ran.output);
    ASSERT_EQ(rows.size(), 13u);
    for (const auto& row : rows) {
        ASSERT_EQ(row.size(), 4u);
        const double charged = std::clamp(row[0], 0.5, 2.5) - 0.5;
        EXPECT_NEAR(row[1], 5 * (1 - std::exp(-charged)), 3e-4) << row[0];
        const bool pressed = row[0] >= 0.5 && row[0] < 2.5;
        EXPECT_NEAR(row[2], pressed ? 5e-4 * std::exp(-charged) : 0, 1e-7) << row[0];
        EXPECT_NEAR(row[3], row[2], 1e-9);
    }
}

TEST(Trace, WritesAFile) {
    const std::string file = (scratchFolder() / "trace.csv").string();
    const Ran ran = runProgram({"trace", tideGauge(), "--until", "1", "--read", "A.b13", "--hold", "S1", "-o", file});
    ASSERT_EQ(ran.code, 0) << ran.error;
    EXPECT_TRUE(ran.output.empty());
    EXPECT_EQ(csvRowsOf(readFile(file)).size(), 201u);
}

TEST(Trace, DrawsVoltsAndAmperesWithTheirNames) {
    const std::string picture = (scratchFolder() / "trace.png").string(),
                      drawing = (scratchFolder() / "trace.svg").string();
    for (const std::string& file : {picture, drawing}) {
        const Ran ran = runProgram(
            {"trace", tideGauge(), "--until", "3", "--read", "A.b13,R1", "--press", "S1@0.5-2.5", "-o", file});
        ASSERT_EQ(ran.code, 0) << ran.error;
        EXPECT_TRUE(ran.output.empty());
    }
    EXPECT_TRUE(readFile(picture).starts_with("\x89PNG"));
    EXPECT_GT(readFile(drawing).size(), 10'000u);
}

TEST(Trace, WhatItCantReadIsToldInOneLine) {
    const std::string gauge = tideGauge();
    const std::vector<std::vector<std::string>> wrong = {
        {"--until", "1", "--read", "R7"},
        {"--until", "1", "--read", "A.b99"},
        {"--until", "-1", "--read", "R1"},
        {"--until", "1", "--read", "R1", "--press", "S1"},
        {"--until", "1", "--read", "R1", "--press", "R1@0-1"},
        {"--until", "1", "--read", "R1", "--press", "S1@2-1"},
        {"--until", "1", "--read", "R1", "--every", "1e-9"},
        {"--until", "1", "--read", "R1", "-o", "trace.txt"},
    };
    for (const auto& arguments : wrong) {
        std::vector<std::string> all{"trace", gauge};
        all.insert(all.end(), arguments.begin(), arguments.end());
        const Ran ran = runProgram(all);
        EXPECT_EQ(ran.code, 2) << arguments.back();
        EXPECT_EQ(lineCount(ran.error), 1) << ran.error;
    }
}

TEST(SolveAt, IsTheBenchAtThatTime) {
    const Ran ran = runProgram({"solve", tideGauge(), "--hold", "S1", "--at", "1", "--json"});
    ASSERT_EQ(ran.code, 0) << ran.error;
    const auto solved = nlohmann::json::parse(ran.output);
    EXPECT_EQ(solved["status"], "solved");
    EXPECT_NEAR(solved["parts"]["C1"]["leads"]["+"]["voltage"].get<double>(), 5 * (1 - std::exp(-1.0)), 3e-4);
    EXPECT_NEAR(solved["parts"]["R1"]["leads"]["1"]["current"].get<double>(), 5e-4 * std::exp(-1.0), 1e-7);
    EXPECT_LT(solved["check"]["kirchhoffWorst"].get<double>(), 1e-9);
}

}  // namespace
}  // namespace tiepoint::test
