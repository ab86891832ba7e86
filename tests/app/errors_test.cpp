// Input that can't be used: exit code 2, nothing on standard output, one line on standard error with file, place and reason.

#include "app/run_program.h"

#include <gtest/gtest.h>
#include <sys/stat.h>

#include <filesystem>

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
/// A pipe that nobody writes to: who opened it would wait for ever.
std::string pipe(const char* name) {
    const auto path = scratchFolder() / name;
    std::filesystem::remove(path);
    EXPECT_EQ(mkfifo(path.c_str(), 0600), 0);
    return path.string();
}
std::string folder(const char* name) {
    const auto path = scratchFolder() / name;
    std::filesystem::create_directory(path);
    return path.string();
}
/// A link, so that nothing of the system's is at stake.
std::string linkToDevice(const char* name) {
    const auto path = scratchFolder() / name;
    std::filesystem::remove(path);
    std::filesystem::create_symlink("/dev/null", path);
    return path.string();
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
        Case{"anotherCommand", {"frobnicate"}, {"frobnicate", "command", "solve", "resistor"}},
        Case{"anotherCommandWithAFile", {"slove", harbourBench("beacon-lamp"), "--json"}, {"\"slove\"", "solve"}},
        Case{"noFileForTheWindow", {unreadable()}, {"nothing-here.bench.json", "there is no file"}},
        Case{"noFileForTheWindowHere", {"mole.bench.json"}, {"mole.bench.json", "there is no file"}},
        Case{"aFolderForTheWindow", {scratchFolder().string()}, {"a folder"}},
        Case{"aPipeForTheWindow", {pipe("window.pipe")}, {"window.pipe", "a pipe"}},
        Case{"aPipeSolved", {"solve", pipe("solve.pipe")}, {"solve.pipe", "a pipe"}},
        Case{"aPipeChecked", {"check", pipe("check.pipe")}, {"a pipe"}},
        Case{"aPipeRendered", {"render", pipe("render.pipe"), "-o", (scratchFolder() / "x.png").string()}, {"a pipe"}},
        Case{"aDevice", {"nets", "/dev/zero"}, {"/dev/zero", "a device"}},
        Case{"renderedIntoAFolder",
             {"render", harbourBench("beacon-lamp"), "-o", folder("folder.png")},
             {"folder.png", "a folder"}},
        Case{"renderedIntoAPipe",
             {"render", harbourBench("beacon-lamp"), "-o", pipe("pipe.svg")},
             {"pipe.svg", "a pipe"}},
        Case{"renderedIntoADevice",
             {"render", harbourBench("beacon-lamp"), "-o", linkToDevice("device.pdf")},
             {"device.pdf", "a device"}},
        Case{"mendedIntoAPipe",
             {"check", harbourBench("dark-beacon"), "--mend", "-o", pipe("mended.pipe")},
             {"mended.pipe", "a pipe"}},
        Case{"mendedIntoADevice",
             {"check", harbourBench("dark-beacon"), "--mend", "-o", linkToDevice("mended.device")},
             {"mended.device", "a device"}},
        Case{"twoFiles", {"solve", harbourBench("beacon-lamp"), harbourBench("lock-gate")}, {"lock-gate"}}),
    [](const testing::TestParamInfo<Case>& each) { return std::string(each.param.name); });

TEST(Errors, WhatIsNoFileStaysWhatItIs) {
    const std::string picture = pipe("kept.png"), bench = folder("kept.bench.json"), device = linkToDevice("kept.svg");
    runProgram({"render", harbourBench("beacon-lamp"), "-o", picture});
    runProgram({"check", harbourBench("dark-beacon"), "--mend", "-o", bench});
    runProgram({"render", harbourBench("beacon-lamp"), "-o", device});
    EXPECT_TRUE(std::filesystem::is_fifo(picture));
    EXPECT_TRUE(std::filesystem::is_directory(bench));
    EXPECT_TRUE(std::filesystem::is_symlink(device));
}

TEST(Errors, APictureGoesThroughALinkIntoItsFile) {
    const auto file = scratchFile("real.svg", "old"), link = (scratchFolder() / "link.svg").string();
    std::filesystem::create_symlink(file, link);
    EXPECT_EQ(runProgram({"render", harbourBench("beacon-lamp"), "-o", link}).code, 0);
    EXPECT_TRUE(std::filesystem::is_symlink(link));
    EXPECT_NE(readFile(file).find("<svg"), std::string::npos);
}

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
