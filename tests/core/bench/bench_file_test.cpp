#include "core/bench/bench_file.h"

#include "core/base/embedded.h"
#include "core/bench/validate.h"
#include "support/build_bench.h"

#include <gtest/gtest.h>

#include <chrono>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>

namespace tiepoint {
namespace {

namespace fs = std::filesystem;

constexpr std::string_view kBeacon = R"({
  "format": "tiepoint-bench",
  "version": 1,
  "title": "Beacon lamp",
  "boards": [
    {"id": "A", "kind": "full", "at": [0, 0]}
  ],
  "parts": [
    {"id": "PS1", "kind": "bench-supply", "leads": {"+": "A.top+3", "-": "A.bottom-3"}, "values": {"voltage": 5, "currentLimit": 0.5}},
    {"id": "R1", "kind": "resistor", "leads": {"1": "A.c10", "2": "A.c14"}, "values": {"resistance": 220}},
    {"id": "S1", "kind": "push-button", "leads": {"1a": "A.e14", "1b": "A.f14", "2a": "A.e16", "2b": "A.f16"}, "cap": "A"},
    {"id": "D1", "kind": "led", "leads": {"anode": "A.g16", "cathode": "A.g17"}, "values": {"colour": "red"}}
  ],
  "jumpers": [
    {"id": "W1", "ends": ["A.top+8", "A.a10"], "colour": "red"},
    {"id": "W2", "ends": ["A.j17", "A.bottom-14"], "colour": "black"}
  ]
}
)";

/// The beacon with one piece of text in place of another, which must be there once.
std::string beaconWith(std::string_view from, std::string_view to) {
    std::string text(kBeacon);
    const auto at = text.find(from);
    EXPECT_NE(at, std::string::npos) << from;
    return text.replace(at, from.size(), to);
}

std::string minimal(std::string_view members) {
    return R"({"format": "tiepoint-bench", "version": 1, )" + std::string(members) + "}";
}

TEST(BenchFile, ReadsABenchAndWritesTheSameText) {
    const auto read = readBench(kBeacon);
    ASSERT_TRUE(read.ok()) << read.error().oneLine();
    EXPECT_TRUE(read->warnings.empty());
    const Bench& bench = read->bench;
    EXPECT_EQ(bench.title, "Beacon lamp");
    ASSERT_EQ(bench.boards.size(), 1u);
    EXPECT_EQ(bench.boards[0].kind, findBoardKind("full"));
    ASSERT_EQ(bench.parts.size(), 4u);
    EXPECT_EQ(bench.findPart("R1")->value(0), 220);
    EXPECT_EQ(bench.findPart("D1")->leads[0], test::holeAt("A.g16"));
    EXPECT_EQ(bench.findPart("S1")->cap, "A");
    ASSERT_EQ(bench.jumpers.size(), 2u);
    EXPECT_EQ(std::get<Hole>(bench.jumpers[1].ends[1]), test::holeAt("A.bottom-14"));
    EXPECT_EQ(writeBench(bench), kBeacon);
}

TEST(BenchFile, TakesMembersInAnyOrder) {
    const auto read = readBench(R"({"jumpers": [{"colour": "blue", "ends": ["PS1.GND2", "A.a1"], "id": "W1"}],
        "parts": [{"leads": {}, "kind": "usb-supply", "id": "PS1"}, {"leads": {"2": null, "1": "A.b1"}, "id": "R1", "kind": "resistor"}],
        "boards": [{"labels": "a-bottom", "rails": "split", "kind": "half", "id": "A"}], "version": 1, "format": "tiepoint-bench"})");
    ASSERT_TRUE(read.ok()) << read.error().oneLine();
    EXPECT_EQ(writeBench(read->bench), R"({
  "format": "tiepoint-bench",
  "version": 1,
  "title": "",
  "boards": [
    {"id": "A", "kind": "half", "at": [0, 0], "rails": "split", "labels": "a-bottom"}
  ],
  "parts": [
    {"id": "PS1", "kind": "usb-supply"},
    {"id": "R1", "kind": "resistor", "leads": {"1": "A.b1"}}
  ],
  "jumpers": [
    {"id": "W1", "ends": ["PS1.GND2", "A.a1"], "colour": "blue"}
  ]
}
)");
}

TEST(BenchFile, KeepsUnknownMembersAsTheyAreAndWarns) {
    const std::string text = R"({
  "format": "tiepoint-bench",
  "version": 1,
  "title": "Tide gauge",
  "boards": [
    {"id": "A", "kind": "half", "at": [0.5, -2.25], "shade": "ivory"}
  ],
  "parts": [
    {"id": "R1", "kind": "resistor", "values": {"resistance": 4700, "tolerance": 0.05}, "cap": "x", "note": {"a": [1, -0, 1.50, 1E+2, "\u00e9 \"q\" , :"], "b": {}}}
  ],
  "jumpers": [
    {"id": "W1", "ends": ["A.a1", "A.a5"], "colour": "white", "laid": null}
  ],
  "wharf": [],
  "big": 123456789012345678901234567890
}
)";
    const auto read = readBench(text);
    ASSERT_TRUE(read.ok()) << read.error().oneLine();
    EXPECT_EQ(writeBench(read->bench), text);
    struct Row {
        const char* pointer;
        int line, column;
    };
    const Row table[] = {{"/boards/0/shade", 6, 53},  {"/parts/0/cap", 9, 89}, {"/parts/0/note", 9, 101},
                         {"/jumpers/0/laid", 12, 63}, {"/wharf", 14, 3},       {"/big", 15, 3}};
    ASSERT_EQ(read->warnings.size(), std::size(table));
    for (std::size_t i = 0; i < std::size(table); ++i) {
        const Place& place = read->warnings[i].place;
        EXPECT_EQ(place.pointer, table[i].pointer);
        EXPECT_EQ(place.line, table[i].line) << place.pointer;
        EXPECT_EQ(place.column, table[i].column) << place.pointer;
    }
}

TEST(BenchFile, KeepsNotesAndFlatJumpers) {
    const std::string text = R"({
  "format": "tiepoint-bench",
  "version": 1,
  "title": "Tide gauge",
  "boards": [
    {"id": "A", "kind": "half", "at": [0, 0]}
  ],
  "parts": [],
  "jumpers": [
    {"id": "W1", "ends": ["A.a1", "A.a5"], "colour": "white", "flat": true}
  ],
  "notes": [
    {"id": "N1", "at": "A.top+3", "text": "High water at ten"},
    {"id": "N2", "at": "A.a1", "text": "ébb", "ink": 3}
  ]
}
)";
    const auto read = readBench(text);
    ASSERT_TRUE(read.ok()) << read.error().oneLine();
    EXPECT_TRUE(read->bench.jumpers[0].flat);
    ASSERT_EQ(read->bench.notes.size(), 2u);
    EXPECT_EQ(read->bench.notes[0].text, "High water at ten");
    EXPECT_EQ(toString(read->bench.notes[1].at), "A.a1");
    EXPECT_EQ(writeBench(read->bench), text);
    EXPECT_EQ(read->warnings.size(), 1u);
}

TEST(BenchFile, RefusesNotesThatHangNowhere) {
    const struct {
        const char *note, *pointer;
    } cases[] = {
        {R"({"id": "N1", "at": "A.a99", "text": "x"})", "/notes/0/at"},
        {R"({"id": "N1", "at": "B.a1", "text": "x"})", "/notes/0/at"},
        {R"({"id": "N1", "at": "buoy", "text": "x"})", "/notes/0/at"},
        {R"({"id": "A", "at": "A.a1", "text": "x"})", "/notes/0/id"},
        {R"({"id": "N1", "at": "A.a1", "text": ""})", "/notes/0/text"},
        {R"({"id": "N1", "at": "A.a1", "text": 7})", "/notes/0/text"},
        {R"({"id": "N1", "text": "x"})", "/notes/0"},
    };
    for (const auto& c : cases) {
        const auto read = readBench(std::string(R"({"format": "tiepoint-bench", "version": 1, "boards": [{"id": "A", "kind": "half"}], "notes": [)") +
                                    c.note + "]}");
        ASSERT_FALSE(read.ok()) << c.note;
        EXPECT_EQ(read.error().place.pointer, c.pointer) << c.note << read.error().oneLine();
    }
}

TEST(BenchFile, KeepsViewsAndPinnedReadings) {
    const std::string text = R"({
  "format": "tiepoint-bench",
  "version": 1,
  "title": "Lock gate",
  "boards": [
    {"id": "A", "kind": "half", "at": [0, 0]}
  ],
  "parts": [
    {"id": "R1", "kind": "resistor", "leads": {"1": "A.c10", "2": "A.c14"}}
  ],
  "jumpers": [
    {"id": "W1", "ends": ["A.a1", "A.a5"], "colour": "white"}
  ],
  "pinned": [
    {"id": "M1", "volts": "A.e12"},
    {"id": "M2", "volts": ["A.a1", "A.top+7"]},
    {"id": "M3", "amperes": "W1"},
    {"id": "M4", "amperes": "R1.2"},
    {"id": "M5", "watts": "R1", "ink": 3}
  ],
  "views": {"arrows": "electrons", "voltage": true, "strips": false, "readings": false, "turned": true, "fullScale": 0.02, "fog": null}
}
)";
    const auto read = readBench(text);
    ASSERT_TRUE(read.ok()) << read.error().oneLine();
    ASSERT_TRUE(read->bench.views);
    const Views& shown = read->bench.views->shown;
    EXPECT_EQ(shown.arrows, Arrows::Electrons);
    EXPECT_TRUE(shown.voltage && !shown.strips && !shown.readings && shown.turned);
    EXPECT_EQ(shown.lockedFullScaleAmpere, 0.02);
    ASSERT_EQ(read->bench.pinned.size(), 5u);
    EXPECT_EQ(read->bench.pinned[1].of, Measurand(VoltsBetween{test::holeAt("A.a1"), test::holeAt("A.top+7")}));
    EXPECT_EQ(read->bench.pinned[2].of, Measurand(AmperesIn{"W1", {}}));
    EXPECT_EQ(read->bench.pinned[3].of, Measurand(AmperesIn{"R1", "2"}));
    EXPECT_EQ(writeBench(read->bench), text);
    ASSERT_EQ(read->warnings.size(), 2u);
    EXPECT_EQ(read->warnings[0].place.pointer, "/pinned/4/ink");
    EXPECT_EQ(read->warnings[1].place.pointer, "/views/fog");
    EXPECT_EQ(read->warnings[1].place.line, 21);
}

TEST(BenchFile, RefusesViewsAndPinnedReadingsThatCannotBe) {
    const struct {
        const char *member, *pointer;
    } cases[] = {
        {R"("pinned": [{"id": "M1", "volts": "A.a99"}])", "/pinned/0/volts"},
        {R"("pinned": [{"id": "M1", "volts": "buoy"}])", "/pinned/0/volts"},
        {R"("pinned": [{"id": "M1", "volts": ["A.a1", "B.a1"]}])", "/pinned/0/volts"},
        {R"("pinned": [{"id": "M1", "volts": ["A.a1", 7]}])", "/pinned/0/volts/1"},
        {R"("pinned": [{"id": "M1", "volts": ["A.a1", "A.a1"]}])", "/pinned/0/volts"},
        {R"("pinned": [{"id": "M1", "volts": ["A.a1"]}])", "/pinned/0/volts"},
        {R"("pinned": [{"id": "M1", "amperes": "W9"}])", "/pinned/0/amperes"},
        {R"("pinned": [{"id": "M1", "amperes": "R1.3"}])", "/pinned/0/amperes"},
        {R"("pinned": [{"id": "M1", "amperes": "R1"}])", "/pinned/0/amperes"},
        {R"("pinned": [{"id": "M1", "watts": "W1"}])", "/pinned/0/watts"},
        {R"("pinned": [{"id": "M1", "watts": true}])", "/pinned/0/watts"},
        {R"("pinned": [{"id": "M1"}])", "/pinned/0"},
        {R"("pinned": [{"id": "M1", "watts": "R1", "volts": "A.a1"}])", "/pinned/0/volts"},
        {R"("pinned": [{"volts": "A.a1"}])", "/pinned/0"},
        {R"("pinned": [{"id": "R1", "volts": "A.a1"}])", "/pinned/0/id"},
        {R"("pinned": {"id": "M1"})", "/pinned"},
        {R"("views": [])", "/views"},
        {R"("views": {"arrows": "both"})", "/views/arrows"},
        {R"("views": {"arrows": true})", "/views/arrows"},
        {R"("views": {"voltage": 1})", "/views/voltage"},
        {R"("views": {"turned": "yes"})", "/views/turned"},
        {R"("views": {"fullScale": 0})", "/views/fullScale"},
        {R"("views": {"fullScale": "20 mA"})", "/views/fullScale"},
    };
    for (const auto& c : cases) {
        const auto read = readBench(std::string(R"({"format": "tiepoint-bench", "version": 1, "boards": [{"id": "A", "kind": "half"}], )") +
                                    R"("parts": [{"id": "R1", "kind": "resistor"}], "jumpers": [{"id": "W1", "ends": ["A.a1", "A.a5"]}], )" + c.member + "}");
        ASSERT_FALSE(read.ok()) << c.member;
        EXPECT_EQ(read.error().place.pointer, c.pointer) << c.member << read.error().oneLine();
        EXPECT_GT(read.error().place.column, 1) << c.member;
    }
}

TEST(BenchFile, WritesNumbersShortAndExact) {
    for (const double ohm : {0.01, 0.1, 1.0 / 3, 4.7, 47.0, 4700.0, 1e5, 1e6, 123456.789, 1e9}) {
        const Bench bench = test::BenchBuilder().part("R1", "resistor", {}, {{"resistance", ohm}}).build();
        const auto read = readBench(writeBench(bench));
        ASSERT_TRUE(read.ok()) << read.error().oneLine();
        EXPECT_EQ(read->bench, bench) << ohm;
    }
    const Bench bench = test::BenchBuilder()
                            .part("D1", "diode", {}, {{"saturationCurrent", 2.5e-9}})
                            .part("R1", "resistor", {}, {{"resistance", 100000}})
                            .build();
    const std::string text = writeBench(bench);
    EXPECT_NE(text.find("\"saturationCurrent\": 2.5e-09"), std::string::npos) << text;
    EXPECT_NE(text.find("\"resistance\": 100000}"), std::string::npos) << text;
}

TEST(BenchFile, RoundTripsEveryKindWithEveryValue) {
    Bench bench;
    for (const PartKind& kind : catalogue()) {
        Part plain = makePart(kind, freeId(bench, kind.prefix));
        bench.parts.push_back(plain);
        Part full = makePart(kind, freeId(bench, kind.prefix));
        for (std::size_t i = 0; i < kind.values.size(); ++i) {
            const bool named = kind.values[i].type == ValueType::Choice;
            full.values[i] =
                named ? static_cast<double>(kind.values[i].choices.size() - 1) : kind.values[i].maximum;
            if (kind.values[i].type == ValueType::Switch) full.values[i] = 1;
        }
        for (std::size_t i = 0; i < kind.state.size(); ++i) full.state[i] = kind.state[i].fallback;
        if (kind.hasCap) full.cap = "Å";
        bench.parts.push_back(full);
    }
    bench.title = "Quote \" backslash \\ line\n tab\t bell\x07 é 漢 😀";
    ASSERT_TRUE(validate(bench).ok()) << validate(bench).error().oneLine();
    const auto read = readBench(writeBench(bench));
    ASSERT_TRUE(read.ok()) << read.error().oneLine();
    EXPECT_EQ(read->bench, bench);
}

TEST(BenchFile, ReadsTheHarbourBenchesAsTheyAreWritten) {
    int benches = 0;
    for (const EmbeddedFile& file : embeddedFiles()) {
        if (!file.name.ends_with(".bench.json")) continue;
        ++benches;
        const auto read = readBench(file.text);
        ASSERT_TRUE(read.ok()) << file.name << ": " << read.error().oneLine();
        EXPECT_TRUE(read->warnings.empty()) << file.name;
        EXPECT_EQ(writeBench(read->bench), file.text) << file.name;
    }
    EXPECT_GE(benches, 8);
}

constexpr std::string_view kNul("\0", 1);

struct Broken {
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

void expectErrors(const std::vector<Broken>& table) {
    for (const Broken& row : table) {
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
        {"name twice", minimal("\"title\": \"\",\n \"title\": 1"), Format, "/title", R"("title": 1)",
         "stands twice"},
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
        {"other format", "{\"format\": \"chart\", \"version\": 1}", Format, "/format", R"("chart")",
         "\"chart\""},
        {"format of a wrong type", "{\"format\": 1, \"version\": 1}", Format, "/format", R"(1, "version")",
         "a number stands where text belongs"},
        {"no version", "{\"format\": \"tiepoint-bench\"}", Format, "", R"({"format")",
         "\"version\" is missing"},
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
        {"boards are no list", minimal("\"boards\": {}"), Format, "/boards", R"({})",
         "an object stands where a list"},
        {"a board is a number", minimal("\"boards\": [7]"), Format, "/boards/0", R"(7)",
         "a number stands where an object"},
        {"no id", beaconWith("\"id\": \"R1\", ", ""), Format, "/parts/1", R"({"kind": "resistor")",
         "\"id\" is missing"},
        {"no kind", beaconWith("\"kind\": \"full\", ", ""), Format, "/boards/0", R"({"id": "A")",
         "\"kind\" is missing"},
        {"no ends", beaconWith("\"ends\": [\"A.j17\", \"A.bottom-14\"], ", ""), Format, "/jumpers/1",
         R"({"id": "W2")", "\"ends\" is missing"},
        {"id of a wrong type", beaconWith("\"R1\"", "1"), Format, "/parts/1/id", R"(1, )", "text"},
        {"bad id", beaconWith("\"R1\"", "\"1R\""), Format, "/parts/1/id", R"("1R")", "1R"},
        {"id twice", beaconWith("\"R1\"", "\"PS1\""), Reference, "/parts/1/id",
         R"("PS1", "kind": "resistor")", "PS1 is used twice"},
        {"unknown board kind", beaconWith("\"full\"", "\"giant\""), Reference, "/boards/0/kind", R"("giant")",
         "full, half, mini"},
        {"unknown part kind", beaconWith("\"resistor\"", "\"crane\""), Reference, "/parts/1/kind",
         R"("crane")", "\"crane\""},
        {"at with three numbers", beaconWith("[0, 0]", "[0, 0, 0]"), Format, "/boards/0/at", R"([0, 0, 0])",
         "3 numbers"},
        {"at with text", beaconWith("[0, 0]", "[0, \"0\"]"), Format, "/boards/0/at/1", R"("0"])",
         "text stands where a number"},
        {"unknown rails", beaconWith("\"at\": [0, 0]", "\"rails\": \"bent\""), Reference, "/boards/0/rails",
         R"("bent")", "through, split"},
        {"unknown lead", beaconWith("\"2\": \"A.c14\"", "\"3\": \"A.c14\""), Reference, "/parts/1/leads/3",
         R"("3": )", "it has: 1, 2"},
        {"unknown value", beaconWith("\"resistance\"", "\"resistence\""), Reference,
         "/parts/1/values/resistence", R"("resistence")", "it has: resistance"},
        {"unknown state", beaconWith("\"values\": {\"resistance\": 220}", "\"state\": {\"on\": true}"),
         Reference, "/parts/1/state/on", R"("on")", "no state \"on\""},
        {"unknown choice", beaconWith("{\"colour\": \"red\"}", "{\"colour\": \"pink\"}"), Reference,
         "/parts/3/values/colour", R"("pink")", "no colour \"pink\""},
        {"value of a wrong type", beaconWith("220", "\"220\""), Format, "/parts/1/values/resistance",
         R"("220")", "text stands where a number"},
        {"value null", beaconWith("220", "null"), Format, "/parts/1/values/resistance", R"(null)",
         "null stands where a number"},
        {"values no object", beaconWith("{\"resistance\": 220}", "[]"), Format, "/parts/1/values", R"([])",
         "a list stands where an object"},
        {"leads no object", beaconWith("{\"1\": \"A.c10\", \"2\": \"A.c14\"}", "true"), Format,
         "/parts/1/leads", R"(true)", "true or false stands"},
        {"lead a number", beaconWith("\"A.c10\", \"2\"", "10, \"2\""), Format, "/parts/1/leads/1",
         R"(10, "2")", "a number stands where text or null"},
        {"bad hole", beaconWith("\"A.c10\"", "\"A.q10\""), Placement, "/parts/1/leads/1", R"("A.q10")",
         "\"A.q10\" is no hole"},
        {"no such hole", beaconWith("\"A.c10\"", "\"A.c99\""), Placement, "/parts/1/leads/1", R"("A.c99")",
         "no hole A.c99"},
        {"no such board", beaconWith("\"A.c10\"", "\"B.c10\""), Reference, "/parts/1/leads/1", R"("B.c10")",
         "no board has the id B"},
        {"two leads in a hole", beaconWith("\"A.c14\"", "\"A.e14\""), Placement, "/parts/2/leads/1a",
         R"("A.e14", "1b")", "A.e14 is taken by R1"},
        {"out of range", beaconWith("220", "1e10"), Range, "/parts/1/values/resistance", R"(1e10)",
         "10000000000"},
        {"doesn't fit", beaconWith("\"A.f16\"", "\"A.f17\""), Placement, "/parts/2/leads", R"({"1a")",
         "S1 doesn't fit"},
        {"empty cap", beaconWith("\"cap\": \"A\"", "\"cap\": \"\""), Format, "/parts/2/cap", R"("")",
         "empty"},
        {"long cap", beaconWith("\"cap\": \"A\"", "\"cap\": \"AB\""), Format, "/parts/2/cap", R"("AB")",
         "one letter"},
        {"one end", beaconWith("[\"A.top+8\", \"A.a10\"]", "[\"A.a10\"]"), Format, "/jumpers/0/ends",
         R"(["A.a10"])", "two ends, not 1"},
        {"end null", beaconWith("\"A.a10\"", "null"), Format, "/jumpers/0/ends/1", R"(null)",
         "null stands where text"},
        {"bad end", beaconWith("\"A.a10\"", "\"nowhere\""), Reference, "/jumpers/0/ends/1", R"("nowhere")",
         "\"nowhere\" is no hole and no socket"},
        {"end in a lead", beaconWith("\"A.a10\"", "\"R1.1\""), Reference, "/jumpers/0/ends/1", R"("R1.1")",
         "is a lead, no socket"},
        {"end in no socket", beaconWith("\"A.a10\"", "\"R1.x\""), Reference, "/jumpers/0/ends/1", R"("R1.x")",
         "no socket \"R1.x\""},
        {"end in a taken hole", beaconWith("\"A.a10\"", "\"A.c10\""), Placement, "/jumpers/0/ends/1",
         R"("A.c10"])", "taken by R1"},
        {"unknown colour", beaconWith("\"colour\": \"black\"", "\"colour\": \"pink\""), Reference,
         "/jumpers/1/colour", R"("pink")", "no colour \"pink\""},
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
        path.string() +
            ":10:53: /parts/1/leads/1: \"A.\\u000a\" is no hole; holes are written like A.e12 or A.top+7");
    fs::remove_all(folder);
}

TEST(BenchFile, KeepsLongNamesOutOfMessages) {
    const auto read = readBench(minimal("\"" + std::string(1'000'000, 'x') + "\": {\"a\": 1, \"a\": 2}"));
    ASSERT_FALSE(read.ok());
    EXPECT_LT(read.error().oneLine().size(), 400u);
}

class BenchFolder : public ::testing::Test {
protected:
    void SetUp() override {
        folder_ =
            fs::temp_directory_path() /
            ("tiepoint-" + std::string(::testing::UnitTest::GetInstance()->current_test_info()->name()));
        fs::remove_all(folder_);
        fs::create_directories(folder_);
    }
    void TearDown() override { fs::remove_all(folder_); }

    static std::string contentOf(const fs::path& path) {
        std::ostringstream content;
        content << std::ifstream(path).rdbuf();
        return content.str();
    }

    fs::path folder_;
};

TEST_F(BenchFolder, WritesAndReadsBack) {
    const fs::path path = folder_ / "ferry.bench.json";
    const Bench bench = readBench(kBeacon).value().bench;
    ASSERT_TRUE(writeBenchFile(bench, path).ok());
    EXPECT_EQ(contentOf(path), kBeacon);
    const auto read = readBenchFile(path);
    ASSERT_TRUE(read.ok());
    EXPECT_EQ(read->bench, bench);
    EXPECT_EQ(std::distance(fs::directory_iterator(folder_), fs::directory_iterator()), 1)
        << "no temporary file stays";
}

TEST_F(BenchFolder, ReplacesAFileButKeepsItsPermissionsAndLinks) {
    const fs::path path = folder_ / "real.bench.json", link = folder_ / "link.bench.json";
    std::ofstream(path) << "old";
    fs::permissions(path, fs::perms::owner_read | fs::perms::owner_write);
    fs::create_symlink(path, link);
    ASSERT_TRUE(writeBenchFile(readBench(kBeacon).value().bench, link).ok());
    EXPECT_TRUE(fs::is_symlink(link));
    EXPECT_EQ(contentOf(path), kBeacon);
    EXPECT_EQ(fs::status(path).permissions(), fs::perms::owner_read | fs::perms::owner_write);
}

TEST_F(BenchFolder, LeavesTheOldThingWhenItCannotWrite) {
    const auto missing = writeBenchFile(Bench{}, folder_ / "no" / "such" / "folder.bench.json");
    ASSERT_FALSE(missing.ok());
    EXPECT_EQ(missing.error().kind, ErrorKind::Io);
    const fs::path inTheWay = folder_ / "folder.bench.json";
    fs::create_directory(inTheWay);
    std::ofstream(inTheWay / "keep") << "kept";
    EXPECT_FALSE(writeBenchFile(Bench{}, inTheWay).ok());
    EXPECT_EQ(contentOf(inTheWay / "keep"), "kept");
    EXPECT_EQ(std::distance(fs::directory_iterator(folder_), fs::directory_iterator()), 1)
        << "no temporary file stays";
}

TEST_F(BenchFolder, SaysWhyAFileCannotBeRead) {
    const auto missing = readBenchFile(folder_ / "missing.bench.json");
    ASSERT_FALSE(missing.ok());
    EXPECT_EQ(missing.error().kind, ErrorKind::Io);
    EXPECT_NE(missing.error().oneLine().find("missing.bench.json"), std::string::npos);
    EXPECT_FALSE(readBenchFile(folder_).ok());
    const fs::path large = folder_ / "large.bench.json";
    std::ofstream(large) << "{";
    fs::resize_file(large, kLargestBenchBytes + 1);  // a file with a hole takes no room
    const auto tooLarge = readBenchFile(large);
    ASSERT_FALSE(tooLarge.ok());
    EXPECT_NE(tooLarge.error().oneLine().find("larger than 128 MB"), std::string::npos);
}

TEST(BenchFile, ReadsTenThousandPartsQuickly) {
    test::BenchBuilder builder;
    for (int board = 0; board < 200; ++board) {
        const std::string id = "B" + std::to_string(board);
        builder.board(id, "half", (board % 20) * 33, (board / 20) * 22);
    }
    Bench bench = builder.build();
    for (int i = 0; i < 10'000; ++i) {
        Part part = makePart(*findKind("resistor"), "R" + std::to_string(i));
        const std::string board = "B" + std::to_string(i / 50);
        const int column = 1 + i % 25;
        const bool lower = i % 50 >= 25;
        part.leads = {Hole{board, lower ? Line::F : Line::A, column},
                      Hole{board, lower ? Line::I : Line::D, column}};
        part.values[0] = 100 + i;
        bench.parts.push_back(std::move(part));
    }
    const std::string text = writeBench(bench);
    const auto start = std::chrono::steady_clock::now();
    const auto read = readBench(text);
    const std::chrono::duration<double> seconds = std::chrono::steady_clock::now() - start;
    ASSERT_TRUE(read.ok()) << read.error().oneLine();
    EXPECT_EQ(read->bench, bench);
    // The bar for reading and solving together is 1 s; it takes some 50 ms, here with room for a busy
    // machine.
    EXPECT_LT(seconds.count(), 1.0);
    RecordProperty("milliseconds", std::to_string(seconds.count() * 1000));
}

}  // namespace
}  // namespace tiepoint
