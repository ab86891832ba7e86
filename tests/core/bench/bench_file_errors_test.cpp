// Every error of a bench file: its kind, the place in the text, and words that help.

#include "core/bench/bench_file.h"
#include "support/beacon_text.h"

#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <string>
#include <vector>

namespace tiepoint {
namespace {

namespace fs = std::filesystem;
using namespace test;

constexpr std::string_view kNul("\0", 1);

struct BrokenText {
    const char* name;
    std::string text;
    ErrorKind kind;
    const char* pointer;
    std::string_view at;  ///< what stands at the error's line and column; nothing: the end
    const char* words;    ///< that the message must hold
};

/// The rest of the text from a line and column on (columns count characters), up to a few bytes.
std::string_view textAt(std::string_view text, const Place& place) {
    for (int line = 1; line < place.line; ++line) text.remove_prefix(text.find('\n') + 1);
    for (int column = 1; column < place.column && !text.empty(); ++column) {
        do text.remove_prefix(1);
        while (!text.empty() && (static_cast<unsigned char>(text[0]) & 0xC0) == 0x80);
    }
    return text;
}

void expectErrors(const std::vector<BrokenText>& table) {
    for (const BrokenText& row : table) {
        SCOPED_TRACE(row.name);
        const auto read = readBench(row.text);
        ASSERT_FALSE(read.ok());
        const Error& error = read.error();
        EXPECT_EQ(error.kind, row.kind) << error.oneLine();
        EXPECT_EQ(error.place.pointer, row.pointer) << error.oneLine();
        ASSERT_GE(error.place.line, 1);
        ASSERT_GE(error.place.column, 1);
        const std::string_view there = textAt(row.text, error.place);
        EXPECT_TRUE(!row.at.empty() ? there.starts_with(row.at) : there.empty())
            << error.oneLine() << "\nThere is: " << there.substr(0, 20);
        EXPECT_NE(error.message.find(row.words), std::string::npos) << error.oneLine();
        EXPECT_EQ(error.oneLine().find('\n'), std::string::npos);
    }
}

TEST(BenchFile, PlacesErrorsOfTheText) {
    using enum ErrorKind;
    expectErrors({
        {"empty", "", Syntax, "", "", "end of input"},
        {"blank", " \n ", Syntax, "", "", "end of input"},
        {"no JSON", "hello", Syntax, "", R"(hello)", "invalid literal"},
        {"no object", "[1]", Format, "", R"([1])", "a list, not an object"},
        {"a number", " 12 ", Format, "", R"(12)", "a number, not an object"},
        {"after the root", minimal("\"title\": \"\"") + "\n x", Syntax, "", R"(x)", ""},
        {"a second root", minimal("\"title\": \"\"") + "{}", Syntax, "", R"({})", "end of input"},
        {"NUL", std::string("{\"format\":\n \0}", 14), Syntax, "", kNul, "NUL"},
        {"NUL after the root", minimal("\"title\": \"\"") + std::string(1, '\0'), Syntax, "", kNul, "NUL"},
        {"invalid UTF-8", minimal("\"title\": \"\xFF\""), Syntax, "/title", "\xFF", "UTF-8"},
        {"overlong UTF-8", minimal("\"title\": \"\xC0\xAF\""), Syntax, "/title", "\xC0", "UTF-8"},
        {"lone surrogate", minimal(R"("title": "\ud800")"), Syntax, "/title", R"(")", "surrogate"},
        {"line break in text", minimal("\"title\": \"a\nb\""), Syntax, "/title", "\n", "control character"},
        {"NaN", minimal("\"x\": NaN"), Syntax, "/x", R"(NaN)", "invalid literal"},
        {"Infinity", minimal("\"x\": -Infinity"), Syntax, "/x", R"(Infinity)", "invalid number"},
        {"too large", minimal("\"x\": [0, 1e999]"), Range, "/x/1", R"(1e999)", "too large"},
        {"trailing comma", minimal("\"x\": [1, ]"), Syntax, "/x", R"(])", "unexpected"},
        {"two commas", minimal("\"x\": [1,, 2]"), Syntax, "/x", R"(, 2)", "unexpected"},
        {"comment", minimal("/* no */ \"x\": 1"), Syntax, "", R"(/* no)", "invalid literal"},
        {"name twice", minimal("\"title\": \"\",\n \"title\": 1"), Format, "/title", R"("title": 1)", "stands twice"},
        {"name twice, escaped", minimal("\"x\": {\"\\u0061\": 1, \"a\": 1}"), Format, "/x/a", R"("a": 1)",
         "stands twice"},
        {"slash in a name", minimal("\"a/b~\": {\"c\": 1, \"c\": 1}"), Format, "/a~1b~0/c", R"("c": 1})",
         "stands twice"},
        {"not closed", "{\"format\": [", Syntax, "/format", "", "end of input"},
        {"text not closed", "{\"format\": \"x", Syntax, "/format", "", ""},
        {"wide characters count once", minimal("\"é漢😀\": @"), Syntax, "/é漢😀", R"(@)", "invalid literal"},
    });
}

TEST(BenchFile, PlacesErrorsOfTheFormat) {
    using enum ErrorKind;
    expectErrors({
        {"no format", "{\"version\": 1}", Format, "", R"({)", "\"format\" is missing"},
        {"other format", "{\"format\": \"chart\", \"version\": 1}", Format, "/format", R"("chart")", "\"chart\""},
        {"format of a wrong type", "{\"format\": 1, \"version\": 1}", Format, "/format", R"(1, "version")",
         "a number stands where text belongs"},
        {"no version", "{\"format\": \"tiepoint-bench\"}", Format, "", R"({"format")", "\"version\" is missing"},
        {"newer version", beaconWith("\"version\": 1", "\"version\": 2"), Format, "/version", R"(2,)",
         "version 2 is newer"},
        {"half a version", beaconWith("\"version\": 1", "\"version\": 0.5"), Format, "/version", R"(0.5)",
         "no version 0.5"},
        {"version as text", beaconWith("\"version\": 1", "\"version\": \"1\""), Format, "/version", R"("1")",
         "text stands where a number"},
        {"newer version last",
         "{\"format\": \"tiepoint-bench\", \"parts\": [{\"id\": \"M1\", \"kind\": \"crane\"}],\n\"version\": "
         "2}",
         Format, "/version", R"(2})", "newer"},
        {"title of a wrong type", beaconWith("\"Beacon lamp\"", "7"), Format, "/title", R"(7)",
         "a number stands where text"},
        {"NUL in the title", beaconWith("Beacon lamp", "a\\u0000b"), Format, "/title", R"("a)", "NUL"},
        {"boards are no list", minimal("\"boards\": {}"), Format, "/boards", R"({})", "an object stands where a list"},
        {"a board is a number", minimal("\"boards\": [7]"), Format, "/boards/0", R"(7)",
         "a number stands where an object"},
        {"no id", beaconWith("\"id\": \"R1\", ", ""), Format, "/parts/1", R"({"kind": "resistor")",
         "\"id\" is missing"},
        {"no kind", beaconWith("\"kind\": \"full\", ", ""), Format, "/boards/0", R"({"id": "A")",
         "\"kind\" is missing"},
        {"no ends", beaconWith("\"ends\": [\"A.j17\", \"A.bottom-14\"], ", ""), Format, "/jumpers/1", R"({"id": "W2")",
         "\"ends\" is missing"},
        {"id of a wrong type", beaconWith("\"R1\"", "1"), Format, "/parts/1/id", R"(1, )", "text"},
        {"bad id", beaconWith("\"R1\"", "\"1R\""), Format, "/parts/1/id", R"("1R")", "1R"},
        {"id twice", beaconWith("\"R1\"", "\"PS1\""), Reference, "/parts/1/id", R"("PS1", "kind": "resistor")",
         "PS1 is used twice"},
        {"unknown board kind", beaconWith("\"full\"", "\"giant\""), Reference, "/boards/0/kind", R"("giant")",
         "full, half, mini"},
        {"unknown part kind", beaconWith("\"resistor\"", "\"crane\""), Reference, "/parts/1/kind", R"("crane")",
         "\"crane\""},
        {"at with three numbers", beaconWith("[0, 0]", "[0, 0, 0]"), Format, "/boards/0/at", R"([0, 0, 0])",
         "3 numbers"},
        {"at with text", beaconWith("[0, 0]", "[0, \"0\"]"), Format, "/boards/0/at/1", R"("0"])",
         "text stands where a number"},
        {"unknown rails", beaconWith("\"at\": [0, 0]", "\"rails\": \"bent\""), Reference, "/boards/0/rails",
         R"("bent")", "through, split"},
        {"unknown lead", beaconWith("\"2\": \"A.c14\"", "\"3\": \"A.c14\""), Reference, "/parts/1/leads/3", R"("3": )",
         "it has: 1, 2"},
        {"unknown value", beaconWith("\"resistance\"", "\"resistence\""), Reference, "/parts/1/values/resistence",
         R"("resistence")", "it has: resistance"},
        {"unknown state", beaconWith("\"values\": {\"resistance\": 220}", "\"state\": {\"on\": true}"), Reference,
         "/parts/1/state/on", R"("on")", "no state \"on\""},
        {"unknown choice", beaconWith("{\"colour\": \"red\"}", "{\"colour\": \"pink\"}"), Reference,
         "/parts/3/values/colour", R"("pink")", "no colour \"pink\""},
        {"value of a wrong type", beaconWith("220", "\"220\""), Format, "/parts/1/values/resistance", R"("220")",
         "text stands where a number"},
        {"value null", beaconWith("220", "null"), Format, "/parts/1/values/resistance", R"(null)",
         "null stands where a number"},
        {"values no object", beaconWith("{\"resistance\": 220}", "[]"), Format, "/parts/1/values", R"([])",
         "a list stands where an object"},
        {"leads no object", beaconWith("{\"1\": \"A.c10\", \"2\": \"A.c14\"}", "true"), Format, "/parts/1/leads",
         R"(true)", "true or false stands"},
        {"lead a number", beaconWith("\"A.c10\", \"2\"", "10, \"2\""), Format, "/parts/1/leads/1", R"(10, "2")",
         "a number stands where text or null"},
        {"bad hole", beaconWith("\"A.c10\"", "\"A.q10\""), Placement, "/parts/1/leads/1", R"("A.q10")",
         "\"A.q10\" is no hole"},
        {"no such hole", beaconWith("\"A.c10\"", "\"A.c99\""), Placement, "/parts/1/leads/1", R"("A.c99")",
         "no hole A.c99"},
        {"no such board", beaconWith("\"A.c10\"", "\"B.c10\""), Reference, "/parts/1/leads/1", R"("B.c10")",
         "no board has the id B"},
        {"two leads in a hole", beaconWith("\"A.c14\"", "\"A.e14\""), Placement, "/parts/2/leads/1a",
         R"("A.e14", "1b")", "A.e14 is taken by R1"},
        {"out of range", beaconWith("220", "1e10"), Range, "/parts/1/values/resistance", R"(1e10)", "10000000000"},
        {"doesn't fit", beaconWith("\"A.f16\"", "\"A.f17\""), Placement, "/parts/2/leads", R"({"1a")",
         "S1 doesn't fit"},
        {"empty cap", beaconWith("\"cap\": \"A\"", "\"cap\": \"\""), Format, "/parts/2/cap", R"("")", "empty"},
        {"long cap", beaconWith("\"cap\": \"A\"", "\"cap\": \"AB\""), Format, "/parts/2/cap", R"("AB")", "one letter"},
        {"one end", beaconWith("[\"A.top+8\", \"A.a10\"]", "[\"A.a10\"]"), Format, "/jumpers/0/ends", R"(["A.a10"])",
         "two ends, not 1"},
        {"end null", beaconWith("\"A.a10\"", "null"), Format, "/jumpers/0/ends/1", R"(null)", "null stands where text"},
        {"bad end", beaconWith("\"A.a10\"", "\"nowhere\""), Reference, "/jumpers/0/ends/1", R"("nowhere")",
         "\"nowhere\" is no hole and no socket"},
        {"end in a lead", beaconWith("\"A.a10\"", "\"R1.1\""), Reference, "/jumpers/0/ends/1", R"("R1.1")",
         "is a lead, no socket"},
        {"end in no socket", beaconWith("\"A.a10\"", "\"R1.x\""), Reference, "/jumpers/0/ends/1", R"("R1.x")",
         "no socket \"R1.x\""},
        {"end in a taken hole", beaconWith("\"A.a10\"", "\"A.c10\""), Placement, "/jumpers/0/ends/1", R"("A.c10"])",
         "taken by R1"},
        {"unknown colour", beaconWith("\"colour\": \"black\"", "\"colour\": \"pink\""), Reference, "/jumpers/1/colour",
         R"("pink")", "no colour \"pink\""},
    });
}

TEST(BenchFile, SaysFileAndPlaceInOneLine) {
    const fs::path folder = fs::temp_directory_path() / "tiepoint-bench-file-test";
    fs::create_directories(folder);
    const fs::path path = folder / "bell.bench.json";
    std::ofstream(path) << beaconWith("\"A.c10\"", "\"A.\\n\"");
    const auto read = readBenchFile(path);
    ASSERT_FALSE(read.ok());
    EXPECT_EQ(
        read.error().oneLine(),
        path.string() + ":10:53: /parts/1/leads/1: \"A.\\u000a\" is no hole; holes are written like A.e12 or A.top+7");
    fs::remove_all(folder);
}

TEST(BenchFile, KeepsLongNamesOutOfMessages) {
    const auto read = readBench(minimal("\"" + std::string(1'000'000, 'x') + "\": {\"a\": 1, \"a\": 2}"));
    ASSERT_FALSE(read.ok());
    EXPECT_LT(read.error().oneLine().size(), 400u);
}

}  // namespace
}  // namespace tiepoint
