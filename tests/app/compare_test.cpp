// tiepoint compare: text, JSON, folders and exit codes of the built program.

#include "app/run_program.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <chrono>
#include <filesystem>
#include <random>

namespace tiepoint::test {
namespace {

using nlohmann::json;
namespace fs = std::filesystem;

std::string changedBeacon(const std::string& from, const std::string& to) {
    std::string text = readFile(harbourBench("beacon-lamp"));
    const auto at = text.find(from);
    EXPECT_NE(at, std::string::npos) << from;
    return text.replace(at, from.size(), to);
}

TEST(Compare, SameBenchesAreTheSame) {
    const Ran ran = runProgram({"compare", harbourBench("beacon-lamp"), harbourBench("beacon-lamp")});
    EXPECT_EQ(ran.code, 0) << ran.error;
    EXPECT_EQ(ran.output, "Beacon lamp: the same circuit, and it does the same\n");
}

TEST(Compare, OneValueIsSaidWithItsPlaces) {
    const std::string mine =
        scratchFile("mine.bench.json", changedBeacon("\"resistance\": 330", "\"resistance\": 4700"));
    const Ran ran = runProgram({"compare", mine, harbourBench("beacon-lamp"), "--json"});
    EXPECT_EQ(ran.code, 1) << ran.error;
    const json told = json::parse(ran.output);
    EXPECT_EQ(told["sameCircuit"], false);
    EXPECT_EQ(told["sameBehaviour"], false);
    ASSERT_EQ(told["differences"].size(), 1u);
    EXPECT_EQ(told["differences"][0]["parts"], json{"R1"});
    EXPECT_EQ(told["differences"][0]["holes"].size(), 2u);
    EXPECT_NE(told["differences"][0]["text"].get<std::string>().find("330"), std::string::npos);
}

std::string shippedExercise(const std::string& name) {
    return std::string(TIEPOINT_SOURCE_DIR) + "/resources/exercises/" + name + ".lesson.json";
}

TEST(Compare, AnExerciseIsJudgedByGoalAndLimits) {
    const std::string exercise = shippedExercise("01-either-keeper");
    const json lesson = json::parse(readFile(exercise));
    const std::string goal = scratchFile("goal.bench.json", lesson["goal"].dump());
    const std::string start = scratchFile("start.bench.json", lesson["start"].dump());
    json wordy = lesson["goal"];
    wordy["jumpers"].push_back({{"id", "W8"}, {"ends", {"A.b4", "A.d4"}}, {"colour", "red"}});
    wordy["jumpers"].push_back({{"id", "W9"}, {"ends", {"A.b9", "A.d9"}}, {"colour", "red"}});
    const std::string wordyFile = scratchFile("long.bench.json", wordy.dump());
    EXPECT_EQ(runProgram({"compare", goal, exercise}).code, 0);
    EXPECT_EQ(runProgram({"compare", start, exercise}).code, 1);
    const Ran ran = runProgram({"compare", wordyFile, exercise});
    EXPECT_EQ(ran.code, 1);
    EXPECT_NE(ran.output.find("the same circuit, and it does the same"), std::string::npos);
    EXPECT_NE(ran.output.find("Two jumpers more than the four allowed."), std::string::npos) << ran.output;
    const json told = json::parse(runProgram({"compare", wordyFile, exercise, "--json"}).output);
    EXPECT_EQ(told["sameBehaviour"], true);
    EXPECT_EQ(told["reached"], false);
    EXPECT_EQ(told["limits"].size(), 1u);
    EXPECT_EQ(runProgram({"lesson", "check", exercise}).code, 0);
    EXPECT_EQ(runProgram({"lesson", "check", shippedExercise("02-two-doors")}).code, 0);
    const fs::path folder = scratchFolder() / "exercise class";
    fs::remove_all(folder);
    fs::create_directories(folder);
    fs::copy_file(goal, folder / "ann.bench.json");
    fs::copy_file(wordyFile, folder / "bea.bench.json");
    const std::string csv = folder / "rows.csv";
    EXPECT_EQ(runProgram({"compare", "--target", exercise, folder, "--csv", csv}).code, 1);
    const std::string rows = readFile(csv);
    EXPECT_NE(rows.find("ann.bench.json,true,true,,\r\n"), std::string::npos) << rows;
    EXPECT_NE(rows.find("bea.bench.json,true,true,Two jumpers more than the four allowed.,"), std::string::npos)
        << rows;
}

TEST(Compare, WhatCantBeUsedIsOneLine) {
    for (const std::vector<std::string>& arguments :
         {std::vector<std::string>{"compare", harbourBench("beacon-lamp")},
          {"compare", harbourBench("beacon-lamp"), scratchFile("bad.bench.json", "{")},
          {"compare", scratchFile("bad2.bench.json", "{"), harbourBench("beacon-lamp")},
          {"compare", harbourBench("beacon-lamp"), harbourBench("lock-gate"), "--csv", "x.csv"},
          {"compare", "--target", harbourBench("beacon-lamp"), "/nowhere"},
          {"compare", harbourBench("beacon-lamp"),
           std::string(TIEPOINT_SOURCE_DIR) + "/resources/lessons/05-one-loop.lesson.json"}}) {
        const Ran ran = runProgram(arguments);
        EXPECT_EQ(ran.code, 2) << ran.output;
        EXPECT_TRUE(ran.output.empty());
        EXPECT_EQ(lineCount(ran.error), 1) << ran.error;
    }
}

TEST(Compare, AFolderIsARowALearner) {
    const fs::path folder = scratchFolder() / "class";
    fs::remove_all(folder);
    fs::create_directories(folder);
    fs::copy_file(harbourBench("beacon-lamp"), folder / "ann.bench.json");
    fs::copy_file(harbourBench("lock-gate"), folder / "bea.bench.json");
    fs::copy_file(harbourBench("beacon-lamp"), folder / "target.bench.json");
    fs::copy(scratchFile("cem.bench.json", "{\"format\": \"<b>\"}"), folder / "cem.bench.json");
    const std::string csv = folder / "rows.csv", html = folder / "page.html", feedback = folder / "back.pdf";
    const Ran ran = runProgram({"compare", "--target", folder / "target.bench.json", folder, "--csv", csv, "--html",
                                html, "--feedback", feedback});
    EXPECT_EQ(ran.code, 1) << ran.error;
    EXPECT_TRUE(ran.error.empty()) << ran.error;
    const std::string rows = readFile(csv);
    EXPECT_EQ(rows.substr(0, rows.find('\r')), "file,sameCircuit,sameBehaviour,differences,error");
    EXPECT_NE(rows.find("ann.bench.json,true,true,,\r\n"), std::string::npos) << rows;
    EXPECT_NE(rows.find("bea.bench.json,false,false,"), std::string::npos) << rows;
    EXPECT_NE(rows.find("cem.bench.json,,,,"), std::string::npos) << rows;
    EXPECT_EQ(rows.find("target.bench"), std::string::npos) << rows;
    const std::string page = readFile(html);
    EXPECT_NE(page.find("3 files: 1 do the same, 1 are the same circuit, 1 can't be compared."), std::string::npos);
    EXPECT_NE(page.find("data:image/png;base64,iVBOR"), std::string::npos);
    EXPECT_EQ(page.find("<b>"), std::string::npos) << "nothing of a learner's text is markup";
    EXPECT_EQ(runTool("pdfinfo", {feedback}).output.find("Pages:           3") == std::string::npos, false);
    // Again: what was written is no learner's.
    const Ran again = runProgram({"compare", "--target", folder / "target.bench.json", folder, "--csv", csv, "--html",
                                  html, "--feedback", feedback, "--json"});
    EXPECT_EQ(json::parse(again.output)["rows"].size(), 3u);
}

TEST(Compare, ThreeHundredFilesInSeconds) {
    const fs::path folder = scratchFolder() / "three hundred";
    fs::remove_all(folder);
    fs::create_directories(folder);
    const std::string whole = readFile(harbourBench("two-way-stair-lamp"));
    std::mt19937 random(7);
    for (int i = 0; i < 300; ++i) {
        std::string text = whole;
        if (i % 3 == 1) {  // a column elsewhere
            const auto at = text.find("\"A.", 300 + random() % (text.size() - 600));
            if (at != std::string::npos) text[at + 4] = static_cast<char>('1' + random() % 9);
        }
        if (i % 10 == 9) text.resize(random() % text.size());
        scratchFile("one.json", text);
        fs::copy_file(scratchFolder() / "one.json", folder / (std::to_string(i) + ".bench.json"));
    }
    const auto begin = std::chrono::steady_clock::now();
    const Ran ran = runProgram({"compare", "--target", harbourBench("two-way-stair-lamp"), folder, "--csv",
                                scratchFolder() / "300.csv", "--html", scratchFolder() / "300.html"});
    const double seconds = std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count();
    EXPECT_EQ(ran.code, 1) << ran.error;
    std::printf("300 files with pictures in %.2f s\n", seconds);
    EXPECT_EQ(lineCount(readFile(scratchFolder() / "300.csv")), 301);
    EXPECT_LT(seconds, 60) << "the bar is 5 s on two idle cores; the machine of the tests may be busy";
}

}  // namespace
}  // namespace tiepoint::test
