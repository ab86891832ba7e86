// Input that can't be used: exit code 2, nothing on standard output, one line on standard error with file, place and reason.

#include "app/run_program.h"

#include <gtest/gtest.h>

namespace tiepoint::test {
namespace {

struct Case {
    const char* name;
    std::vector<std::string> arguments;
    std::vector<std::string> says;  ///< what the line holds
};

void PrintTo(const Case& fault, std::ostream* out) { *out << fault.name; }

class Unusable : public testing::TestWithParam<Case> {};

TEST_P(Unusable, SaysWhyInOneLine) {
    const Ran ran = runProgram(GetParam().arguments);
    EXPECT_EQ(ran.code, 2);
    EXPECT_EQ(ran.output, "");
    EXPECT_EQ(lineCount(ran.error), 1) << ran.error;
    for (const std::string& words : GetParam().says) EXPECT_NE(ran.error.find(words), std::string::npos) << ran.error;
}

std::string brokenFile() {
    return scratchFile("broken.bench.json", "{\n  \"format\": \"tiepoint-bench\",\n  \"version\": 1, }\n");
}
std::string badHole() {
    return scratchFile("bad-hole.bench.json", R"({"format": "tiepoint-bench", "version": 1, "title": "Bad hole",
  "boards": [{"id": "A", "kind": "half", "at": [0, 0]}],
  "parts": [{"id": "R1", "kind": "resistor", "leads": {"1": "A.c4", "2": "A.c31"}}], "jumpers": []})");
}
std::string unreadable() { return (scratchFolder() / "nothing-here.bench.json").string(); }

INSTANTIATE_TEST_SUITE_P(
    Errors, Unusable,
    testing::Values(
        Case{"noSuchFile", {"solve", unreadable()}, {"nothing-here.bench.json"}},
        Case{"aFolder", {"solve", scratchFolder().string()}, {scratchFolder().string()}},
        Case{"brokenSyntax", {"nets", brokenFile()}, {"broken.bench.json:3:"}},
        Case{"badHole", {"solve", badHole()}, {"bad-hole.bench.json:3:", "/parts/0/leads/2", "c31"}},
        Case{"badHoleChecked", {"check", badHole()}, {"/parts/0/leads/2"}},
        Case{
            "badHoleRendered", {"render", badHole(), "-o", (scratchFolder() / "x.png").string()}, {"/parts/0/leads/2"}},
        Case{"unknownHeld",
             {"solve", harbourBench("beacon-lamp"), "--hold", "S9"},
             {"beacon-lamp.bench.json", "--hold S9"}},
        Case{"heldResistor", {"solve", harbourBench("beacon-lamp"), "--hold", "R1"}, {"--hold R1", "resistor"}},
        Case{"heldJumper", {"solve", harbourBench("beacon-lamp"), "--hold", "W1"}, {"--hold W1"}},
        Case{"unknownOption", {"solve", harbourBench("beacon-lamp"), "--loud"}, {"--loud"}},
        Case{"noFile", {"solve"}, {"FILE"}}, Case{"unknownKind", {"parts", "flux-capacitor"}, {"flux-capacitor"}},
        Case{"mendWithoutOutput", {"check", harbourBench("beacon-lamp"), "--mend"}, {"--output"}},
        Case{"unknownEnding", {"render", harbourBench("beacon-lamp"), "-o", "lamp.bmp"}, {"lamp.bmp"}},
        Case{"unknownTheme", {"render", harbourBench("beacon-lamp"), "-o", "lamp.png", "--theme", "sepia"}, {"sepia"}},
        Case{"unknownView", {"render", harbourBench("beacon-lamp"), "-o", "lamp.png", "--show", "smells"}, {"smells"}},
        Case{"noWidth", {"render", harbourBench("beacon-lamp"), "-o", "lamp.png", "--width", "0"}, {"--width"}},
        Case{"unwritable",
             {"render", harbourBench("beacon-lamp"), "-o", "/proc/nowhere/lamp.png"},
             {"/proc/nowhere/lamp.png"}},
        Case{"twoFiles", {"solve", harbourBench("beacon-lamp"), harbourBench("lock-gate")}, {"lock-gate"}}),
    [](const testing::TestParamInfo<Case>& each) { return std::string(each.param.name); });

TEST(Errors, HelpIsNoError) {
    for (const char* command : {"solve", "nets", "render", "parts", "check"}) {
        const Ran ran = runProgram({command, "--help"});
        EXPECT_EQ(ran.code, 0) << command;
        EXPECT_NE(ran.output.find(command), std::string::npos);
        EXPECT_EQ(ran.error, "");
    }
    EXPECT_EQ(runProgram({"--help"}).code, 0);
    EXPECT_EQ(runProgram({"--version"}).code, 0);
}

TEST(Errors, UnknownMembersAreWarnedAbout) {
    const std::string file =
        scratchFile("extra.bench.json", R"({"format": "tiepoint-bench", "version": 1, "title": "Extra",
  "boards": [{"id": "A", "kind": "half", "at": [0, 0]}], "parts": [], "jumpers": [], "tide": "low"})");
    const Ran ran = runProgram({"nets", file});
    EXPECT_EQ(ran.code, 0);
    EXPECT_NE(ran.error.find("warning"), std::string::npos) << ran.error;
    EXPECT_NE(ran.error.find("tide"), std::string::npos) << ran.error;
}

}  // namespace
}  // namespace tiepoint::test
