// tiepoint hunt: a class set with its key, the secret kept by every command, and cards for real boards.

#include "app/run_program.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <filesystem>
#include <set>

namespace tiepoint::test {
namespace {

using nlohmann::json;

std::string huntFolder(const std::string& name) { return (scratchFolder() / name).string(); }

TEST(HuntCommand, WritesASetWithItsKey) {
    const std::string folder = huntFolder("class");
    const Ran ran = runProgram({"hunt", harbourBench("beacon-lamp"), "--count", "12", "--seed", "4", "-o", folder});
    ASSERT_EQ(ran.code, 0) << ran.error;
    const json key = json::parse(readFile(folder + "/key.json"));
    EXPECT_EQ(key["format"], "tiepoint-hunt-key");
    EXPECT_EQ(key["seed"], 4);
    ASSERT_EQ(key["hunts"].size(), 12u);
    for (const json& hunt : key["hunts"]) {
        EXPECT_EQ(hunt["readings"], key["readings"]);
        EXPECT_FALSE(hunt["seen"].get<std::string>().empty());
        const std::string text = readFile(folder + "/" + hunt["file"].get<std::string>());
        EXPECT_NE(text.find("\"hunt\""), std::string::npos);
        EXPECT_EQ(text.find("\"condition\""), std::string::npos);
        EXPECT_EQ(text.find(hunt["told"].get<std::string>()), std::string::npos);
    }
    EXPECT_EQ(key["hunts"][11]["file"], "hunt-12.bench.json");
}

TEST(HuntCommand, TheSameSeedWritesTheSameFiles) {
    const std::string one = huntFolder("one"), two = huntFolder("two"), three = huntFolder("three");
    for (const auto& [folder, seed] : {std::pair(one, "9"), std::pair(two, "9"), std::pair(three, "10")}) {
        ASSERT_EQ(runProgram({"hunt", harbourBench("lock-gate"), "--count", "6", "--seed", seed, "-o", folder}).code,
                  0);
    }
    EXPECT_EQ(readFile(one + "/key.json"), readFile(two + "/key.json"));
    EXPECT_EQ(readFile(one + "/hunt-03.bench.json"), readFile(two + "/hunt-03.bench.json"));
    EXPECT_NE(readFile(one + "/key.json"), readFile(three + "/key.json"));
}

TEST(HuntCommand, OtherCommandsKeepTheSecret) {
    const std::string folder = huntFolder("secret");
    ASSERT_EQ(runProgram({"hunt", harbourBench("beacon-lamp"), "--seed", "1", "-o", folder}).code, 0);
    const std::string file = folder + "/hunt-01.bench.json";
    const Ran check = runProgram({"check", file});
    EXPECT_NE(check.output.find("this bench keeps what is found to itself"), std::string::npos) << check.output;
    EXPECT_EQ(json::parse(runProgram({"check", file, "--json"}).output)["findings"].size(), 0u);
    EXPECT_EQ(runProgram({"check", file, "--reveal", "3"}).code, 2);
    EXPECT_EQ(runProgram({"why", file, "D1"}).code, 2);
    const std::vector<std::vector<std::string>> commands = {
        {"solve", file}, {"spread", file}, {"trace", file, "--until", "1", "--read", "D1"}, {"nets", file}};
    for (const auto& command : commands) {
        const Ran ran = runProgram(command);
        EXPECT_EQ(ran.code, 2) << command.front();
        EXPECT_TRUE(ran.output.empty()) << ran.output;
        EXPECT_NE(ran.error.find("hides a slip that is to be found"), std::string::npos) << ran.error;
    }
}

TEST(HuntCommand, PrintsCards) {
    const std::string file = huntFolder("cards.pdf");
    const Ran ran = runProgram({"hunt", harbourBench("beacon-lamp"), "--cards", "15", "-o", file});
    ASSERT_EQ(ran.code, 0) << ran.error;
    const std::string pdf = readFile(file);
    EXPECT_TRUE(pdf.starts_with("%PDF"));
    const Ran words = runTool("pdftotext", {file, "-"});
    if (words.code == 0) {
        EXPECT_NE(words.output.find("Card 15"), std::string::npos);
        EXPECT_NE(words.output.find("Supply off."), std::string::npos);
        EXPECT_NE(words.output.find("key to the cards"), std::string::npos);
    }
}

TEST(HuntCommand, SaysWhyThereIsNothingToHunt) {
    const std::string dark =
        scratchFile("lightless.bench.json", R"({"format": "tiepoint-bench", "version": 1, "title": "No light",
        "boards": [{"id": "A", "kind": "half", "at": [0, 0]}],
        "parts": [{"id": "PS1", "kind": "bench-supply", "leads": {"+": "A.top+3", "-": "A.bottom-3"}}], "jumpers": []})");
    const Ran ran = runProgram({"hunt", dark, "-o", huntFolder("none")});
    EXPECT_EQ(ran.code, 2);
    EXPECT_NE(ran.error.find("nothing can be hunted here"), std::string::npos);
    EXPECT_EQ(lineCount(ran.error), 1);
}

}  // namespace
}  // namespace tiepoint::test
