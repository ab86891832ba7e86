// tiepoint check: findings, exit codes, and mends that are written.

#include "app/run_program.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

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
    text.insert(at + before.size(), "    {\"id\": \"W9\", \"ends\": [\"A.top+20\", \"A.bottom-20\"], \"colour\": \"red\"},\n");
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

}  // namespace
}  // namespace tiepoint::test
