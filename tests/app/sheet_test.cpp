// tiepoint sheet and tiepoint slips: files and exit codes of the built program.

#include "app/run_program.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <filesystem>

namespace tiepoint::test {
namespace {

using nlohmann::json;

std::string textOfPdf(const std::string& pdf) { return runTool("pdftotext", {"-layout", pdf, "-"}).output; }

TEST(SheetCommand, WritesPlansForLearnersAndTeachers) {
    const std::string plan = scratchFolder() / "plan.pdf", key = scratchFolder() / "key.pdf",
                      blank = scratchFolder() / "blank.pdf";
    EXPECT_EQ(runProgram({"sheet", harbourBench("lock-gate"), "-o", plan}).code, 0);
    EXPECT_EQ(runProgram({"sheet", harbourBench("lock-gate"), "-o", key, "--key", "--support", "holes"}).code, 0);
    EXPECT_EQ(runProgram({"sheet", harbourBench("lock-gate"), "-o", blank, "--blank", "--paper", "letter"}).code, 0);
    EXPECT_NE(textOfPdf(plan).find("I predict"), std::string::npos);
    EXPECT_NE(textOfPdf(key).find("Expected"), std::string::npos);
    EXPECT_NE(textOfPdf(key).find("R1: c4 and c9, either way round"), std::string::npos) << textOfPdf(key);
    EXPECT_NE(textOfPdf(blank).find("My plan"), std::string::npos);
    const std::string diagram = scratchFolder() / "diagram.pdf";
    EXPECT_EQ(runProgram({"sheet", harbourBench("lock-gate"), "-o", diagram, "--support", "diagram"}).code, 0);
    EXPECT_NE(textOfPdf(diagram).find("from the diagram"), std::string::npos);
    EXPECT_EQ(textOfPdf(diagram).find("c4 and c9"), std::string::npos);
    EXPECT_EQ(textOfPdf(blank).find("c4 and c9"), std::string::npos);
}

TEST(SheetCommand, PartsOfAClassAsCsv) {
    const std::string csv = scratchFolder() / "parts.csv";
    ASSERT_EQ(runProgram({"sheet", harbourBench("lock-gate"), "-o", csv, "--copies", "30", "--spare", "10"}).code, 0);
    const std::string rows = readFile(csv);
    EXPECT_EQ(rows.substr(0, rows.find('\r')), "part,ids,each,total,wireMm");
    EXPECT_NE(rows.find("push button,\"S1, S2\",2,66,\r\n"), std::string::npos) << rows;
    EXPECT_NE(rows.find("330 Ω resistor,R1,1,33,\r\n"), std::string::npos) << rows;
    EXPECT_NE(rows.find("\"jumper, red\",W1,1,33,"), std::string::npos) << rows;
}

TEST(SheetCommand, KeepsToWhatAClassHas) {
    const std::string kit =
        scratchFile("ours.kit.json", R"({"format": "tiepoint-kit", "version": 1, "title": "Quay school",
        "parts": [{"kind": "resistor", "values": {"resistance": 390}, "count": 2},
                  {"kind": "led", "values": {"colour": "green"}, "count": 2},
                  {"kind": "push-button", "count": 2}], "meters": 1})");
    const std::string plan = scratchFolder() / "kit.pdf";
    const Ran ran = runProgram({"sheet", harbourBench("lock-gate"), "-o", plan, "--kit", kit});
    EXPECT_EQ(ran.code, 0) << ran.error;
    EXPECT_EQ(ran.output, "Quay school: 390 Ω resistor for 330 Ω resistor\n");
    const std::string text = textOfPdf(plan);
    EXPECT_NE(text.find("Quay school: 390 Ω resistor for 330 Ω resistor."), std::string::npos) << text;
    EXPECT_NE(text.find("orange, white, brown"), std::string::npos) << "the bands are those of what is taken";
    const std::string slips = scratchFolder() / "kit-slips.json";
    ASSERT_EQ(runProgram({"slips", harbourBench("lock-gate"), "-o", slips, "--kit", kit}).code, 0);
    for (const json& each : json::parse(readFile(slips))["slips"])
        EXPECT_EQ(each["text"].get<std::string>().find("3.9 kΩ"), std::string::npos) << each;
    EXPECT_EQ(runProgram({"diagnose", harbourBench("lock-gate"), "--kit", kit}).code, 0);
    EXPECT_EQ(
        runProgram({"sheet", harbourBench("lock-gate"), "-o", plan, "--kit", scratchFile("no.kit.json", "{")}).code, 2);
}

TEST(SheetCommand, WhatCantBeDoneIsSaidAndLeavesNothing) {
    const std::string plan = scratchFolder() / "none.pdf";
    for (const std::vector<std::string>& arguments :
         {std::vector<std::string>{"sheet", harbourBench("lock-gate"), "-o", plan, "--support", "songs"},
          {"sheet", harbourBench("lock-gate"), "-o", "/nowhere/plan.pdf"},
          {"sheet", harbourBench("lock-gate"), "-o", scratchFolder() / "plan.png"},
          {"sheet", harbourBench("lock-gate"), "-o", plan, "--key", "--blank"},
          {"sheet", scratchFile("bad.bench.json", "{"), "-o", plan}}) {
        const Ran ran = runProgram(arguments);
        EXPECT_EQ(ran.code, 2);
        EXPECT_EQ(lineCount(ran.error), 1) << ran.error;
        EXPECT_FALSE(std::filesystem::exists(plan));
    }
}

TEST(SlipsCommand, ListsEverySlipWithWhatIsSeen) {
    const std::string file = scratchFolder() / "slips.json";
    ASSERT_EQ(runProgram({"slips", harbourBench("beacon-lamp"), "-o", file}).code, 0);
    const json slips = json::parse(readFile(file))["slips"];
    ASSERT_GT(slips.size(), 20u);
    int reversed = 0;
    for (const json& each : slips) {
        EXPECT_FALSE(each["seen"].get<std::string>().empty());
        EXPECT_TRUE(each["look"].get<std::string>().starts_with("Look whether"));
        if (each["kind"] != "reversed" || each["parts"] != json{"D1"}) continue;
        ++reversed;
        EXPECT_EQ(each["seen"], "D1 never lights.");
        EXPECT_NE(each["proof"].get<std::string>().find("S1 pressed, volts at"), std::string::npos) << each["proof"];
    }
    EXPECT_EQ(reversed, 1);
    const std::string csv = scratchFolder() / "slips.csv", pdf = scratchFolder() / "slips.pdf";
    EXPECT_EQ(runProgram({"slips", harbourBench("beacon-lamp"), "-o", csv}).code, 0);
    EXPECT_EQ(lineCount(readFile(csv)), static_cast<int>(slips.size()) + 1);
    EXPECT_EQ(runProgram({"slips", harbourBench("beacon-lamp"), "-o", pdf}).code, 0);
    EXPECT_NE(textOfPdf(pdf).find("First look"), std::string::npos);
    EXPECT_EQ(runProgram({"slips", harbourBench("beacon-lamp"), "-o", "slips.txt"}).code, 2);
}

TEST(SharedPicture, IsReadByEveryCommand) {
    const std::string picture = scratchFolder() / "shared.png";
    ASSERT_EQ(runProgram({"render", harbourBench("lock-gate"), "-o", picture}).code, 0);
    EXPECT_EQ(runProgram({"solve", picture}).output, runProgram({"solve", harbourBench("lock-gate")}).output);
    EXPECT_EQ(runProgram({"compare", picture, harbourBench("lock-gate")}).code, 0);
}

}  // namespace
}  // namespace tiepoint::test
