// Circuit files read and written: the same text again, every error with its place, and benches taken where a circuit is wanted.

#include "core/netlist/circuit_file.h"

#include "core/base/embedded.h"
#include "core/bench/bench_file.h"
#include "core/netlist/bench_netlist.h"
#include "core/netlist/equality.h"
#include "support/beacon_text.h"

#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <string>

namespace tiepoint {
namespace {

using namespace test;

constexpr std::string_view kBeaconCircuit = R"({
  "format": "tiepoint-circuit",
  "version": 1,
  "title": "Beacon lamp",
  "parts": [
    {"id": "PS1", "kind": "bench-supply", "values": {"voltage": 5}, "leads": {"+": "plus", "-": "minus"}},
    {"id": "R1", "kind": "resistor", "values": {"resistance": 220}, "leads": {"1": "plus", "2": "fed"}},
    {"id": "S1", "kind": "push-button", "cap": "A", "leads": {"1a": "fed", "2b": "lit"}},
    {"id": "D1", "kind": "led", "values": {"colour": "amber"}, "leads": {"anode": "lit", "cathode": "minus"}},
    {"id": "S2", "kind": "toggle", "state": {"closed": true}}
  ]
}
)";

std::string circuitWith(std::string_view from, std::string_view to) {
    std::string text(kBeaconCircuit);
    const auto at = text.find(from);
    if (at == std::string::npos) throw std::invalid_argument("the circuit has no " + std::string(from));
    return text.replace(at, from.size(), to);
}

TEST(CircuitFile, ReadsACircuitAndWritesTheSameText) {
    const auto read = readNetlist(kBeaconCircuit);
    ASSERT_TRUE(read.ok()) << read.error().oneLine();
    EXPECT_TRUE(read->warnings.empty());
    const Netlist& netlist = read->netlist;
    EXPECT_EQ(netlist.title, "Beacon lamp");
    EXPECT_EQ(netlist.nets, (std::vector<std::string>{"plus", "minus", "fed", "lit"}));
    ASSERT_EQ(netlist.parts.size(), 5u);
    EXPECT_EQ(netlist.parts[1].value(0), 220);
    EXPECT_EQ(netlist.leads[2], (std::vector<int>{2, -1, -1, 3}));
    EXPECT_EQ(netlist.parts[4].stateValue(0), 1);
    EXPECT_EQ(netlist.partIndex("D1"), 3);
    EXPECT_EQ(netlist.netIndex("lit"), 3);
    EXPECT_EQ(writeNetlist(netlist), kBeaconCircuit);
}

TEST(CircuitFile, TakesMembersInAnyOrderAndNullLeads) {
    const auto read = readNetlist(
        "\xEF\xBB\xBF"
        R"({"parts": [{"leads": {"2": "b – é", "1": null}, "kind": "resistor", "id": "R1"},
        {"id": "R2", "kind": "resistor", "leads": {"2": "c", "1": "b – é"}}], "version": 1, "format": "tiepoint-circuit"})");
    ASSERT_TRUE(read.ok()) << read.error().oneLine();
    EXPECT_EQ(read->netlist.leads, (std::vector<std::vector<int>>{{-1, 0}, {0, 1}}));
    EXPECT_EQ(read->netlist.nets, (std::vector<std::string>{"b – é", "c"}));
    EXPECT_EQ(readNetlist(writeNetlist(read->netlist))->netlist, read->netlist);
}

TEST(CircuitFile, KeepsUnknownMembersAsTheyAreAndWarns) {
    const std::string text =
        circuitWith("\"cap\": \"A\"", "\"cap\": \"A\", \"at\": [1, 2], \"note\": {\"a\": [1, -0]}");
    const auto read = readNetlist(std::string(text).replace(text.rfind('}'), 1, ", \"wharf\": []}"));
    ASSERT_TRUE(read.ok()) << read.error().oneLine();
    ASSERT_EQ(read->warnings.size(), 3u);
    EXPECT_EQ(read->warnings[0].place.pointer, "/parts/2/at");
    EXPECT_EQ(read->warnings[0].place.line, 8);
    EXPECT_EQ(read->warnings[1].place.pointer, "/parts/2/note");
    EXPECT_EQ(read->warnings[2].place.pointer, "/wharf");
    const std::string written = writeNetlist(read->netlist);
    EXPECT_NE(written.find("\"at\": [1, 2], \"note\": {\"a\": [1, -0]}, \"leads\""), std::string::npos) << written;
    EXPECT_NE(written.find("\"wharf\": []"), std::string::npos);
    EXPECT_EQ(readNetlist(written)->netlist, read->netlist);
}

TEST(CircuitFile, AtIsUnknownAlsoForABoxThatABenchHasRoomFor) {
    const auto read = readNetlist(circuitWith("\"bench-supply\"", "\"bench-supply\", \"at\": \"the quay\""));
    ASSERT_TRUE(read.ok()) << read.error().oneLine();
    EXPECT_EQ(read->warnings.size(), 1u);
    EXPECT_FALSE(read->netlist.parts[0].at);
}

TEST(CircuitFile, PlacesErrors) {
    using enum ErrorKind;
    const struct {
        const char* name;
        std::string text;
        ErrorKind kind;
        const char* pointer;
        int line;
        const char* words;
    } rows[] = {
        {"empty", "", Syntax, "", 1, "end of input"},
        {"no object", "[1]", Format, "", 1, "a list, not an object"},
        {"no format", "{\"version\": 1}", Format, "", 1, "this is no circuit"},
        {"a bench", circuitWith("-circuit", "-bench"), Format, "/format", 2, "\"tiepoint-bench\", not"},
        {"newer", circuitWith("\"version\": 1", "\"version\": 2"), Format, "/version", 3, "newer"},
        {"title", circuitWith("\"Beacon lamp\"", "7"), Format, "/title", 4, "a number stands where text"},
        {"NUL in the title", circuitWith("Beacon lamp", "a\\u0000b"), Format, "/title", 4, "NUL"},
        {"parts", R"({"format": "tiepoint-circuit", "version": 1, "parts": {}})", Format, "/parts", 1, "where a list"},
        {"a number", R"({"format": "tiepoint-circuit", "version": 1, "parts": [7]})", Format, "/parts/0", 1,
         "an object"},
        {"no id", circuitWith("\"id\": \"R1\", ", ""), Format, "/parts/1", 7, "\"id\" is missing"},
        {"bad id", circuitWith("\"R1\"", "\"1R\""), Format, "/parts/1/id", 7, "is no id"},
        {"id twice", circuitWith("\"R1\"", "\"PS1\""), Reference, "/parts/1/id", 7, "used twice"},
        {"kind", circuitWith("\"resistor\"", "\"crane\""), Reference, "/parts/1/kind", 7, "no kind of part \"crane\""},
        {"lead", circuitWith("\"anode\"", "\"nose\""), Reference, "/parts/3/leads/nose", 9, "it has: anode, cathode"},
        {"lead's type", circuitWith("\"anode\": \"lit\"", "\"anode\": 3"), Format, "/parts/3/leads/anode", 9,
         "text or null"},
        {"leads' type", circuitWith("{\"anode\": \"lit\", \"cathode\": \"minus\"}", "[]"), Format, "/parts/3/leads", 9,
         "an object"},
        {"empty net", circuitWith("\"anode\": \"lit\"", "\"anode\": \"\""), Format, "/parts/3/leads/anode", 9,
         "can't name a net"},
        {"net with a line break", circuitWith("\"anode\": \"lit\"", "\"anode\": \"l\\nt\""), Format,
         "/parts/3/leads/anode", 9, "printable"},
        {"long net", circuitWith("\"anode\": \"lit\"", "\"anode\": \"" + std::string(101, 'x') + "\""), Format,
         "/parts/3/leads/anode", 9, "100 bytes"},
        {"value", circuitWith("\"resistance\"", "\"weight\""), Reference, "/parts/1/values/weight", 7, "no value"},
        {"out of range", circuitWith("220", "-1"), Range, "/parts/1/values/resistance", 7, "it may be"},
        {"choice", circuitWith("amber", "mauve"), Reference, "/parts/3/values/colour", 9, "mauve"},
        {"state", circuitWith("true", "1"), Format, "/parts/4/state/closed", 10, "true or false"},
        {"cap", circuitWith("\"cap\": \"A\"", "\"cap\": \"AB\""), Format, "/parts/2/cap", 8, "cap"},
        {"lead twice", circuitWith("\"1\": \"plus\"", "\"2\": \"plus\""), Format, "/parts/1/leads/2", 7,
         "stands twice"},
    };
    for (const auto& row : rows) {
        SCOPED_TRACE(row.name);
        const auto read = readNetlist(row.text);
        ASSERT_FALSE(read.ok());
        const Error& error = read.error();
        EXPECT_EQ(error.kind, row.kind) << error.oneLine();
        EXPECT_EQ(error.place.pointer, row.pointer) << error.oneLine();
        EXPECT_EQ(error.place.line, row.line) << error.oneLine();
        EXPECT_GE(error.place.column, 1);
        EXPECT_NE(error.message.find(row.words), std::string::npos) << error.oneLine();
        EXPECT_EQ(error.oneLine().find('\n'), std::string::npos);
    }
}

TEST(CircuitFile, EveryShippedBenchGoesThroughAFile) {
    int benches = 0;
    for (const EmbeddedFile& file : embeddedFiles()) {
        if (!file.name.starts_with("benches/")) continue;
        SCOPED_TRACE(file.name);
        ++benches;
        const auto circuit = readCircuitText(file.text);
        ASSERT_TRUE(circuit.ok()) << circuit.error().oneLine();
        ASSERT_TRUE(circuit->bench);
        EXPECT_TRUE(validate(circuit->netlist).ok());
        EXPECT_EQ(circuit->netlist.parts.size(), circuit->bench->parts.size());
        const auto again = readCircuitText(writeNetlist(circuit->netlist));
        ASSERT_TRUE(again.ok()) << again.error().oneLine();
        EXPECT_FALSE(again->bench);
        EXPECT_EQ(again->netlist, circuit->netlist);
        EXPECT_EQ(compareCircuits(again->netlist, circuit->netlist).verdict, Verdict::Equal);
    }
    EXPECT_GE(benches, 9);
}

TEST(CircuitFile, ABenchServesWhereACircuitIsWanted) {
    const auto bench = readCircuitText(kBeacon);
    ASSERT_TRUE(bench.ok()) << bench.error().oneLine();
    EXPECT_EQ(bench->bench->title, "Beacon lamp");
    const auto circuit = readCircuitText(kBeaconCircuit);
    ASSERT_TRUE(circuit.ok()) << circuit.error().oneLine();
    EXPECT_FALSE(circuit->bench);
    const auto other = readCircuitText(circuitWith("tiepoint-circuit", "chart"));
    ASSERT_FALSE(other.ok());
    EXPECT_EQ(other.error().place.pointer, "/format");
    EXPECT_EQ(other.error().place.line, 2);
    EXPECT_NE(other.error().message.find("neither"), std::string::npos);
    EXPECT_NE(readCircuitText("{}").error().message.find("\"format\" is missing"), std::string::npos);
    EXPECT_NE(readCircuitText(circuitWith("220", "-1")).error().message.find("it may be"), std::string::npos);
}

TEST(CircuitFile, FilesAreNamedInErrorsAndWarnings) {
    const auto folder = std::filesystem::path(testing::TempDir()) / "circuit_file_test";
    std::filesystem::create_directories(folder);
    const auto path = folder / "beacon.circuit.json";
    EXPECT_EQ(readCircuit(folder / "none.circuit.json").error().kind, ErrorKind::Io);
    std::ofstream(path) << circuitWith("220", "-1");
    EXPECT_EQ(readCircuit(path).error().file, path.string());
    std::ofstream(path) << circuitWith("\"cap\"", "\"hat\"");
    ASSERT_TRUE(readCircuit(path).ok());
    EXPECT_EQ(readCircuit(path)->warnings.at(0).file, path.string());
    ASSERT_TRUE(writeNetlistFile(readNetlist(kBeaconCircuit)->netlist, path).ok());
    EXPECT_EQ(writeNetlist(readCircuit(path)->netlist), kBeaconCircuit);
    std::filesystem::remove_all(folder);
}

}  // namespace
}  // namespace tiepoint
