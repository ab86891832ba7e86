// tiepoint diagram and tiepoint arrange: files, words and exit codes of the built program.

#include "app/run_program.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

namespace tiepoint::test {
namespace {

using nlohmann::json;

std::string beaconCircuit() {
    return scratchFile("beacon.circuit.json",
                       R"({"format": "tiepoint-circuit", "version": 1, "title": "Beacon", "parts": [
        {"id": "PS1", "kind": "bench-supply", "leads": {"+": "plus", "-": "minus"}},
        {"id": "R1", "kind": "resistor", "leads": {"1": "plus", "2": "lit"}},
        {"id": "D1", "kind": "led", "leads": {"anode": "lit", "cathode": "minus"}}]})");
}

std::string outputPath(const char* name) { return (scratchFolder() / name).string(); }

TEST(DiagramCommand, DrawsEachFormatTheSameEachTime) {
    for (const char* name : {"sheet.svg", "sheet.png", "sheet.pdf"}) {
        const std::string out = outputPath(name);
        const Ran ran = runProgram({"diagram", harbourBench("lock-gate"), "--hold", "S1,S2", "-o", out});
        ASSERT_EQ(ran.code, 0) << ran.error;
        const std::string first = readFile(out);
        EXPECT_GT(first.size(), 1000U) << name;
        if (std::string(name) == "sheet.pdf") continue;  // holds the time at which it was written
        ASSERT_EQ(runProgram({"diagram", harbourBench("lock-gate"), "--hold", "S1,S2", "-o", out}).code, 0);
        EXPECT_EQ(readFile(out), first) << name;
    }
}

TEST(DiagramCommand, TellsWhatIsSolved) {
    const std::string open = outputPath("open.svg"), held = outputPath("held.svg"), ieee = outputPath("ieee.svg");
    ASSERT_EQ(runProgram({"diagram", harbourBench("beacon-lamp"), "-o", open}).code, 0);
    ASSERT_EQ(runProgram({"diagram", harbourBench("beacon-lamp"), "--hold", "S1", "-o", held}).code, 0);
    ASSERT_EQ(runProgram({"diagram", harbourBench("beacon-lamp"), "--style", "ieee", "-o", ieee}).code, 0);
    const std::string openText = readFile(open), heldText = readFile(held);
    for (const char* words : {">R1<", ">330 Ω<", ">S1<", ">D1<", ">PS1<"})
        EXPECT_NE(openText.find(words), std::string::npos) << words;
    EXPECT_NE(openText.find(">open<"), std::string::npos);
    EXPECT_NE(heldText.find(">closed<"), std::string::npos);
    EXPECT_NE(heldText.find(">1.91 V<"), std::string::npos);
    EXPECT_NE(readFile(ieee), openText);
}

TEST(DiagramCommand, RefusesWhatItCannotDo) {
    EXPECT_EQ(runProgram({"diagram", harbourBench("beacon-lamp"), "-o", outputPath("sheet.txt")}).code, 2);
    EXPECT_EQ(runProgram({"diagram", harbourBench("beacon-lamp"), "--hold", "S9", "-o", outputPath("a.svg")}).code, 2);
    EXPECT_EQ(runProgram({"diagram", "nowhere.bench.json", "-o", outputPath("a.svg")}).code, 2);
    const Ran circuit = runProgram({"diagram", beaconCircuit(), "-o", outputPath("circuit.svg")});
    EXPECT_EQ(circuit.code, 0) << circuit.error;
    EXPECT_EQ(runProgram({"diagram", beaconCircuit(), "--hold", "R1", "-o", outputPath("a.svg")}).code, 2);
    EXPECT_EQ(runProgram({"diagram", clashingBench(), "-o", outputPath("none.svg")}).code, 1);
}

TEST(ArrangeCommand, BuildsABenchFromACircuitThatLights) {
    for (const char* board : {"half", "full", "mini"}) {
        const std::string out = outputPath("arranged.bench.json");
        const Ran ran = runProgram({"arrange", beaconCircuit(), "-o", out, "--board", board});
        ASSERT_EQ(ran.code, 0) << board << ran.output << ran.error;
        EXPECT_NE(ran.output.find("3 parts, "), std::string::npos) << ran.output;
        const Ran solved = runProgram({"solve", out, "--json"});
        ASSERT_EQ(solved.code, 0) << solved.error;
        EXPECT_GT(json::parse(solved.output)["parts"]["D1"]["brightness"].get<double>(), 0.5) << board;
        const Ran checked = runProgram({"check", out});
        EXPECT_EQ(checked.code, 0) << board << checked.output;
    }
}

TEST(ArrangeCommand, KeepsPartsAndSaysWhatFindsNoPlace) {
    const std::string out = outputPath("kept.bench.json");
    ASSERT_EQ(runProgram({"arrange", harbourBench("lock-gate"), "-o", out, "--keep", "S2"}).code, 0);
    const json before = json::parse(readFile(harbourBench("lock-gate"))), after = json::parse(readFile(out));
    const auto leadsOf = [](const json& bench, const char* id) {
        for (const json& part : bench["parts"]) {
            if (part["id"] == id) return part["leads"];
        }
        return json();
    };
    EXPECT_EQ(leadsOf(before, "S2"), leadsOf(after, "S2"));
    EXPECT_EQ(runProgram({"arrange", harbourBench("lock-gate"), "-o", out, "--keep", "S9"}).code, 2);
}

}  // namespace
}  // namespace tiepoint::test
