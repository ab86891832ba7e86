// tiepoint check: findings, exit codes, and mends that are written.

#include "app/run_program.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <filesystem>

namespace tiepoint::test {
namespace {

using nlohmann::json;

std::string withSupplyOff() {
    std::string text = readFile(harbourBench("beacon-lamp"));
    text.replace(text.find("\"on\": true"), 10, "\"on\": false");
    return scratchFile("resting.bench.json", text);
}

std::string withShort() {
    std::string text = readFile(harbourBench("beacon-lamp"));
    const std::string before = "\"jumpers\": [\n";
    const auto at = text.find(before);
    text.insert(at + before.size(),
                "    {\"id\": \"W9\", \"ends\": [\"A.top+20\", \"A.bottom-20\"], \"colour\": \"red\"},\n");
    return scratchFile("short.bench.json", text);
}

json findingsOf(const std::string& file, int code) {
    const Ran ran = runProgram({"check", file, "--json"});
    EXPECT_EQ(ran.code, code) << ran.error;
    return json::parse(ran.output)["findings"];
}

TEST(Check, NothingFoundOnTheBeacon) {
    EXPECT_TRUE(findingsOf(harbourBench("beacon-lamp"), 0).empty());
    EXPECT_EQ(runProgram({"check", harbourBench("beacon-lamp")}).output, "Beacon lamp: nothing found\n");
}

TEST(Check, RemarkIsNoFault) {
    const json findings = findingsOf(withSupplyOff(), 0);
    ASSERT_EQ(findings.size(), 1u);
    EXPECT_EQ(findings[0]["rule"], "supply-off");
    EXPECT_EQ(findings[0]["parts"], (json{"PS1"}));
    EXPECT_EQ(findings[0]["mend"]["edits"][0]["operation"], "replace");
    EXPECT_EQ(findings[0]["mend"]["edits"][0]["part"]["state"]["on"], true);
}

TEST(Check, ShortCircuitIsAFaultWithItsPath) {
    const json findings = findingsOf(withShort(), 1);
    ASSERT_EQ(findings.size(), 1u) << findings;
    const json& fault = findings[0];
    EXPECT_EQ(fault["rule"], "short-circuit");
    EXPECT_EQ(fault["severity"], "fault");
    EXPECT_EQ(fault["parts"], (json{"PS1", "W9"}));
    // From the plus lead along the rail, over the jumper and back along the other rail; every plugged hole on the way.
    EXPECT_EQ(fault["holes"], (json{"A.top+3", "A.top+7", "A.top+20", "A.bottom-20", "A.bottom-18", "A.bottom-3"}));
    EXPECT_EQ(fault["figures"]["resistance"], 0);
    EXPECT_EQ(fault["mend"]["edits"], (json::parse(R"([{"operation": "remove", "id": "W9"}])")));
}

TEST(Check, MendIsWrittenAndMends) {
    struct Case {
        std::string file;
        int code;
    };
    for (const Case& broken : {Case{withSupplyOff(), 0}, Case{withShort(), 1}}) {
        SCOPED_TRACE(broken.file);
        const std::string before = readFile(broken.file);
        const std::string mended = (scratchFolder() / "mended.bench.json").string();
        const Ran ran = runProgram({"check", broken.file, "--mend", "-o", mended});
        EXPECT_EQ(ran.code, broken.code) << ran.error;
        EXPECT_TRUE(findingsOf(mended, 0).empty());
        EXPECT_EQ(json::parse(readFile(mended)), json::parse(readFile(harbourBench("beacon-lamp"))));
        EXPECT_EQ(readFile(broken.file), before);
    }
}

TEST(Check, NothingToMendCopiesTheBench) {
    const std::string copy = (scratchFolder() / "copy.bench.json").string();
    EXPECT_EQ(runProgram({"check", harbourBench("beacon-lamp"), "--mend", "-o", copy}).code, 0);
    EXPECT_EQ(json::parse(readFile(copy)), json::parse(readFile(harbourBench("beacon-lamp"))));
}

TEST(Check, MendedFileThatCantBeWrittenIsAnError) {
    const Ran ran = runProgram({"check", withSupplyOff(), "--mend", "-o", "/proc/nowhere/mended.bench.json"});
    EXPECT_EQ(ran.code, 2);
    EXPECT_EQ(lineCount(ran.error), 1) << ran.error;
    EXPECT_NE(ran.error.find("/proc/nowhere/mended.bench.json"), std::string::npos);
}

// --- how much is told ---

/// The shorted bench, saying how much it reveals.
std::string shortThatReveals(const char* reveal) {
    std::string text = readFile(withShort());
    text.insert(text.find("\"boards\""), std::string("\"reveal\": ") + reveal + ",\n  ");
    return scratchFile("revealing.bench.json", text);
}

TEST(Check, TellsAsMuchAsTheFileSays) {
    const std::string none = shortThatReveals(R"({"level": 0})");
    EXPECT_TRUE(findingsOf(none, 1).empty());
    EXPECT_EQ(runProgram({"check", none}).output, "Beacon lamp: this bench keeps what is found to itself\n");

    const json place = findingsOf(shortThatReveals(R"({"level": 1})"), 1);
    ASSERT_EQ(place.size(), 1u);
    EXPECT_TRUE(place[0]["rule"].is_null());
    EXPECT_TRUE(place[0]["severity"].is_null());
    EXPECT_TRUE(place[0]["mend"].is_null());
    EXPECT_EQ(place[0]["text"], "Look along the top plus rail.");
    EXPECT_EQ(runProgram({"check", shortThatReveals(R"({"level": 1})")}).output,
              "Beacon lamp\n  Look along the top plus rail.\n  --reveal 3 tells how to mend it.\n");

    const json proof = findingsOf(shortThatReveals(R"({"level": 2})"), 1);
    EXPECT_EQ(proof[0]["rule"], "short-circuit");
    EXPECT_TRUE(proof[0]["mend"].is_null());
    EXPECT_FALSE(findingsOf(shortThatReveals(R"({"level": 3})"), 1)[0]["mend"].is_null());
}

TEST(Check, WordsTellTheMendWhenAskedFor) {
    const std::string file = withShort();
    const std::string usual = runProgram({"check", file}).output;
    EXPECT_NE(usual.find("fault: Short circuit"), std::string::npos) << usual;
    EXPECT_EQ(usual.find("mend:"), std::string::npos) << usual;
    EXPECT_NE(runProgram({"check", file, "--reveal", "3"}).output.find("mend: Take W9 away"), std::string::npos);
    EXPECT_EQ(runProgram({"check", file, "--reveal", "4"}).code, 2);
}

TEST(Check, ALockedBenchTellsNoMore) {
    const std::string file = shortThatReveals(R"({"level": 1, "lock": "sha256:aa:bb"})");
    const std::string mended = (scratchFolder() / "peeked.bench.json").string();
    for (const auto& arguments : {std::vector<std::string>{"check", file, "--reveal", "2"},
                                  std::vector<std::string>{"check", file, "--mend", "-o", mended},
                                  std::vector<std::string>{"why", file, "D1"}}) {
        const Ran ran = runProgram(arguments);
        EXPECT_EQ(ran.code, 2) << arguments[2];
        EXPECT_TRUE(ran.output.empty()) << ran.output;
        EXPECT_EQ(lineCount(ran.error), 1) << ran.error;
        EXPECT_NE(ran.error.find("locked"), std::string::npos) << ran.error;
    }
    EXPECT_FALSE(std::filesystem::exists(mended));
    EXPECT_EQ(runProgram({"check", file}).code, 1);
    EXPECT_EQ(runProgram({"check", file, "--reveal", "0"}).code, 1);
    EXPECT_TRUE(json::parse(runProgram({"solve", file, "--json"}).output)["findings"][0]["rule"].is_null());
}

TEST(Check, AskingForAMendIsAskingForEverything) {
    const std::string file = shortThatReveals(R"({"level": 1})");
    const std::string mended = (scratchFolder() / "asked.bench.json").string();
    EXPECT_EQ(runProgram({"check", file, "--mend", "-o", mended}).code, 1);
    EXPECT_EQ(json::parse(readFile(mended))["reveal"], (json{{"level", 1}}));
}

}  // namespace
}  // namespace tiepoint::test
