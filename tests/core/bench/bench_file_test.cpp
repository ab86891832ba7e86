// Bench files read and written: the same text again, and nothing in it lost.

#include "core/bench/bench_file.h"

#include "core/base/embedded.h"
#include "core/bench/validate.h"
#include "support/beacon_text.h"
#include "support/build_bench.h"

#include <gtest/gtest.h>

#include <chrono>
#include <string>

namespace tiepoint {
namespace {

using namespace test;

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
        std::string members = R"("boards": [{"id": "A", "kind": "half"}], "notes": [)";
        const auto read = readBench(minimal(members.append(c.note).append("]")));
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
        std::string members =
            R"("boards": [{"id": "A", "kind": "half"}], "parts": [{"id": "R1", "kind": "resistor"}], )";
        members.append(R"("jumpers": [{"id": "W1", "ends": ["A.a1", "A.a5"]}], )").append(c.member);
        const auto read = readBench(minimal(members));
        ASSERT_FALSE(read.ok()) << c.member;
        EXPECT_EQ(read.error().place.pointer, c.pointer) << c.member << read.error().oneLine();
        EXPECT_GT(read.error().place.column, 1) << c.member;
    }
}

TEST(BenchFile, TheScaleOfArrowsMayBeLockedFromANanoampereToAMegampere) {
    const struct {
        const char* scale;
        bool isGood;
    } cases[] = {{"1e-9", true}, {"9.99e-10", false}, {"1e6", true}, {"1000001", false}, {"-1", false}};
    for (const auto& c : cases) {
        const auto read = readBench(minimal(std::string(R"("boards": [], "views": {"fullScale": )") + c.scale + "}"));
        EXPECT_EQ(read.ok(), c.isGood) << c.scale;
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
            full.values[i] = named ? static_cast<double>(kind.values[i].choices.size() - 1) : kind.values[i].maximum;
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
        part.leads = {Hole{board, lower ? Line::F : Line::A, column}, Hole{board, lower ? Line::I : Line::D, column}};
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
