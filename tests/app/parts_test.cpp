// tiepoint parts: the catalogue, walked kind by kind.

#include "app/run_program.h"
#include "core/parts/part_kind.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

namespace tiepoint::test {
namespace {

using nlohmann::json;

TEST(Parts, EveryKindIsListed) {
    const Ran ran = runProgram({"parts", "--json"});
    ASSERT_EQ(ran.code, 0) << ran.error;
    const json parts = json::parse(ran.output)["parts"];
    ASSERT_EQ(parts.size(), catalogue().size());
    for (std::size_t i = 0; i < parts.size(); ++i) EXPECT_EQ(parts[i]["kind"], catalogue()[i].name);
}

TEST(Parts, EveryKindSaysWhatItIs) {
    for (const PartKind& kind : catalogue()) {
        SCOPED_TRACE(kind.name);
        const Ran ran = runProgram({"parts", kind.name, "--json"});
        ASSERT_EQ(ran.code, 0) << ran.error;
        const json part = json::parse(ran.output)["parts"][0];
        EXPECT_EQ(part["kind"], kind.name);
        EXPECT_EQ(part["leads"].size(), kind.leads.size());
        EXPECT_EQ(part["values"].size(), kind.values.size());
        EXPECT_FALSE(part["model"].empty());
        EXPECT_FALSE(part["help"]["what"].get<std::string>().empty());
        EXPECT_FALSE(part["help"]["leads"].get<std::string>().empty());
        EXPECT_FALSE(part["help"]["ratings"].get<std::string>().empty());
        EXPECT_FALSE(part["sources"].empty());
        for (const json& source : part["sources"]) EXPECT_FALSE(source["status"].get<std::string>().empty());
        for (const json& value : part["values"]) {
            EXPECT_FALSE(value["default"].is_null()) << value;
            if (value["type"] == "number") {
                EXPECT_LE(value["minimum"], value["default"]) << value;
                EXPECT_LE(value["default"], value["maximum"]) << value;
            }
            if (value["type"] == "choice") {
                EXPECT_GE(value["choices"].size(), 2u) << value;
            }
        }
    }
}

TEST(Parts, TextOfOneKindNamesLeadsAndSources) {
    for (const PartKind& kind : catalogue()) {
        SCOPED_TRACE(kind.name);
        const Ran ran = runProgram({"parts", kind.name});
        ASSERT_EQ(ran.code, 0);
        EXPECT_NE(ran.output.find(kind.help.what), std::string::npos);
        for (const LeadSpec& lead : kind.leads) EXPECT_NE(ran.output.find(lead.description), std::string::npos);
        for (const SourceNote& note : kind.sources) EXPECT_NE(ran.output.find(note.source), std::string::npos);
    }
}

TEST(Parts, LedColoursHaveTheirForwardVoltage) {
    const json led = json::parse(runProgram({"parts", "led", "--json"}).output)["parts"][0];
    // Forward voltages at 20 mA as the catalogue promises them; typical figures, common practice.
    const std::map<std::string, double> expected{{"red", 2.0},   {"deep-red", 1.7},   {"amber", 2.1},
                                                 {"green", 2.2}, {"pure-green", 3.2}, {"blue", 3.2},
                                                 {"white", 3.2}, {"infrared", 1.2}};
    std::map<std::string, double> found;
    for (const json& choice : led["values"][0]["choices"])
        found[choice["name"]] = choice["constants"]["forwardVoltage"];
    EXPECT_EQ(found, expected);
}

}  // namespace
}  // namespace tiepoint::test
