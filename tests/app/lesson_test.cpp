// tiepoint lesson: claims checked, exit codes, and kits.

#include "app/run_program.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <string>

namespace tiepoint::test {
namespace {

using nlohmann::json;

const std::string kCourseFolder = std::string(TIEPOINT_SOURCE_DIR) + "/resources/lessons/";

TEST(LessonCommand, ChecksAShippedLesson) {
    const Ran ran = runProgram({"lesson", "check", kCourseFolder + "05-one-loop.lesson.json"});
    EXPECT_EQ(ran.code, 0) << ran.error;
    EXPECT_EQ(ran.output.substr(0, 20), "One loop: all holds\n");
    EXPECT_NE(ran.output.find("  1 Two lights share one loop: holds\n"), std::string::npos) << ran.output;
}

TEST(LessonCommand, NamesStepAndFigureOfWhatDoesNotHold) {
    std::string text = readFile(kCourseFolder + "05-one-loop.lesson.json");
    const std::string from = "{\"amperes\": \"R1\", \"from\": 0.008, \"to\": 0.01}";
    text.replace(text.find(from), from.size(), "{\"amperes\": \"R1\", \"from\": 0.02, \"to\": 0.03}");
    const std::string file = scratchFile("wrong.lesson.json", text);
    const Ran ran = runProgram({"lesson", "check", file});
    EXPECT_EQ(ran.code, 1);
    EXPECT_NE(ran.output.find("  1 Two lights share one loop: doesn't hold\n"), std::string::npos) << ran.output;
    EXPECT_NE(ran.output.find("doesn't hold: 9.79 mA"), std::string::npos) << ran.output;
    const json told = json::parse(runProgram({"lesson", "check", file, "--json"}).output);
    EXPECT_EQ(told["holds"], false);
    EXPECT_EQ(told["steps"][0]["step"], 1);
    EXPECT_EQ(told["steps"][0]["holds"], false);
    EXPECT_EQ(told["steps"][0]["claims"][0]["claim"], (json{{"amperes", "R1"}, {"from", 0.02}, {"to", 0.03}}));
    EXPECT_EQ(told["steps"][0]["claims"][0]["holds"], false);
    EXPECT_EQ(told["steps"][0]["claims"][1]["holds"], true);
}

TEST(LessonCommand, AnUnusableLessonIsOneLineWithItsPlace) {
    std::string text = readFile(kCourseFolder + "05-one-loop.lesson.json");
    text.replace(text.find("\"kind\": \"stop\""), 14, "\"kind\": \"rest\"");
    const std::string file = scratchFile("unknown.lesson.json", text);
    const Ran ran = runProgram({"lesson", "check", file});
    EXPECT_EQ(ran.code, 2);
    EXPECT_NE(ran.error.find("/steps/4/kind: there is no kind of step \"rest\""), std::string::npos) << ran.error;
    EXPECT_NE(ran.error.find(file + ":"), std::string::npos) << ran.error;
    EXPECT_TRUE(ran.output.empty());
}

TEST(LessonCommand, OpensWhereABenchOpens) {
    const Ran ran = runProgram({"solve", kCourseFolder + "02-hidden-metal.lesson.json", "--json"});
    EXPECT_EQ(ran.code, 0) << ran.error;
    EXPECT_EQ(json::parse(ran.output)["status"], "solved");
}

TEST(LessonCommand, FitsALessonToAKit) {
    const std::string kit =
        scratchFile("harbour.kit.json", R"({"format": "tiepoint-kit", "version": 1, "title": "Harbour school",
  "parts": [{"kind": "resistor", "values": {"resistance": 1000}, "count": 4}, {"kind": "led", "values": {"colour": "red"}, "count": 2}],
  "meters": 1})");
    const json told = json::parse(
        runProgram({"lesson", "fit", kCourseFolder + "05-one-loop.lesson.json", "--kit", kit, "--json"}).output);
    EXPECT_EQ(told["fits"], false) << "1 kilohm gives less than the lesson claims";
    ASSERT_EQ(told["gaps"].size(), 1u);
    EXPECT_EQ(told["gaps"][0]["needed"], 1);
    EXPECT_EQ(told["gaps"][0]["there"], 0);
    const Ran missing = runProgram({"lesson", "fit", kCourseFolder + "05-one-loop.lesson.json"});
    EXPECT_EQ(missing.code, 2);
}

TEST(LessonCommand, PrintsATeachersPage) {
    const std::string path = scratchFile("page.pdf", "");
    const Ran ran = runProgram({"lesson", "page", kCourseFolder + "05-one-loop.lesson.json", "-o", path});
    EXPECT_EQ(ran.code, 0) << ran.error;
    const std::string pdf = readFile(path);
    EXPECT_EQ(pdf.substr(0, 5), "%PDF-");
    EXPECT_GT(pdf.size(), 5000u);
    EXPECT_EQ(runProgram({"lesson", "page", kCourseFolder + "05-one-loop.lesson.json", "-o", "/nowhere/page.pdf"}).code,
              2);
}

}  // namespace
}  // namespace tiepoint::test
