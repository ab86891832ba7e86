// tiepoint nets: which holes and leads are one net.

#include "app/run_program.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <set>

namespace tiepoint::test {
namespace {

using nlohmann::json;

json netsOf(const std::string& file) {
    const Ran ran = runProgram({"nets", file, "--json"});
    EXPECT_EQ(ran.code, 0) << ran.error;
    return json::parse(ran.output);
}

TEST(Nets, BeaconHasItsFourNets) {
    const json nets = netsOf(harbourBench("beacon-lamp"))["nets"];
    const std::vector<std::set<std::string>> expected{
        {"A.top+3", "A.top+7", "A.a8", "A.c8"},  // plus, through W1 to the resistor
        {"A.c14", "A.e14", "A.f14"},             // a joined pair of the button ties both halves of its column
        {"A.e16", "A.f16", "A.h16"},
        {"A.h19", "A.j19", "A.bottom-18", "A.bottom-3"},
    };
    ASSERT_EQ(nets.size(), expected.size());
    for (std::size_t i = 0; i < expected.size(); ++i) {
        EXPECT_EQ(nets[i]["id"], i);
        EXPECT_EQ(nets[i]["holes"].get<std::set<std::string>>(), expected[i]);
        EXPECT_FALSE(nets[i].contains("voltage"));
    }
    EXPECT_EQ(nets[1]["leads"], (json{"R1.2", "S1.1a", "S1.1b"}));
}

// Common practice: a rail joins end to end, the next column doesn't, and the gap parts the halves of a column.
TEST(Nets, RailsJoinAndColumnsPart) {
    const json nets =
        netsOf(scratchFile("rails.bench.json", R"({"format": "tiepoint-bench", "version": 1, "title": "Rails",
      "boards": [{"id": "A", "kind": "full", "at": [0, 0]}], "parts": [],
      "jumpers": [{"id": "W1", "ends": ["A.top+1", "A.a5"], "colour": "red"}, {"id": "W2", "ends": ["A.top+50", "A.a7"], "colour": "red"},
                  {"id": "W3", "ends": ["A.e6", "A.j20"], "colour": "blue"}, {"id": "W4", "ends": ["A.f5", "A.j30"], "colour": "blue"}]})"))
            ["nets"];
    ASSERT_EQ(nets.size(), 3u);
    EXPECT_EQ(nets[0]["jumpers"], (json{"W1", "W2"}));
}

TEST(Nets, SocketsAndHangingLeadsAreListed) {
    const json nets =
        netsOf(scratchFile("sockets.bench.json", R"({"format": "tiepoint-bench", "version": 1, "title": "Sockets",
      "boards": [{"id": "A", "kind": "mini", "at": [0, 0]}],
      "parts": [{"id": "PS1", "kind": "usb-supply"}, {"id": "R1", "kind": "resistor", "leads": {"1": "A.a1"}}],
      "jumpers": [{"id": "W1", "ends": ["PS1.5V", "A.c1"], "colour": "red"}]})"))["nets"];
    std::set<std::string> leads;
    for (const json& net : nets) {
        for (const json& lead : net["leads"]) leads.insert(lead);
        if (net["jumpers"] == json{"W1"}) {
            EXPECT_EQ(net["leads"], (json{"PS1.5V", "R1.1"}));
        }
    }
    EXPECT_EQ(leads, (std::set<std::string>{"PS1.5V", "PS1.GND1", "PS1.GND2", "R1.1", "R1.2"}));
}

TEST(Nets, TextHasALineForEachNet) {
    const Ran ran = runProgram({"nets", harbourBench("beacon-lamp")});
    EXPECT_EQ(ran.code, 0);
    EXPECT_EQ(lineCount(ran.output), 5) << ran.output;  // the title and four nets
    EXPECT_NE(ran.output.find("A.c14 A.e14 A.f14   R1.2 S1.1a S1.1b"), std::string::npos) << ran.output;
}

}  // namespace
}  // namespace tiepoint::test
