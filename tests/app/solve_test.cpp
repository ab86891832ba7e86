// tiepoint solve: figures, JSON and exit codes of the built program.

#include "app/run_program.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>

namespace tiepoint::test {
namespace {

using nlohmann::json;

json solved(const std::vector<std::string>& arguments, int code = 0) {
    std::vector<std::string> all{"solve", "--json"};
    all.insert(all.end(), arguments.begin(), arguments.end());
    const Ran ran = runProgram(all);
    EXPECT_EQ(ran.code, code) << ran.error;
    return json::parse(ran.output);
}

std::vector<std::string> namesOf(const json& object) {
    std::vector<std::string> names;
    for (const auto& [name, value] : object.items()) names.push_back(name);
    return names;
}

/// The current through a red LED with a resistor on a supply, by bisection of the loop's own law: nothing of the solver in it.
double loopCurrent(double emfVolt, double ohm, const json& junction) {
    // k T / q at 298.15 K with the exact constants of the SI (26th CGPM, 2018).
    const double thermalVolt = 1.380649e-23 * 298.15 / 1.602176634e-19;
    const double emission = junction.at("ideality").get<double>() * thermalVolt;
    const double saturation = junction.at("saturationCurrent"), series = junction.at("seriesResistance");
    double low = 0, high = emfVolt / ohm;
    for (int i = 0; i < 200; ++i) {
        const double current = (low + high) / 2;
        const double drop = emission * std::log1p(current / saturation) + current * (series + ohm);
        (drop < emfVolt ? low : high) = current;
    }
    return low;
}

TEST(Solve, BeaconIsDarkUntilItsButtonIsPressed) {
    const json open = solved({harbourBench("beacon-lamp")});
    EXPECT_EQ(open["status"], "solved");
    EXPECT_NEAR(open["parts"]["D1"]["leads"]["anode"]["current"], 0, 1e-9);
    EXPECT_NEAR(open["parts"]["D1"]["brightness"], 0, 1e-3);

    const json held = solved({harbourBench("beacon-lamp"), "--hold", "S1"});
    const json& led = held["parts"]["D1"];
    const double current = led["leads"]["anode"]["current"];
    EXPECT_NEAR(current, 9.37e-3, 0.01e-3);
    EXPECT_NEAR(led["leads"]["cathode"]["current"], -current, 1e-9);
    // 330 ohm, the contact of the button and the supply's own resistance lie in the one loop.
    EXPECT_NEAR(current, loopCurrent(5, 330 + 0.05 + 0.01, led["model"]), 1e-9 * current + 1e-11);
    EXPECT_GT(led["brightness"], 0.7);
    EXPECT_LT(led["brightness"], 0.8);
}

// Common practice: a red LED on 5 V with its resistor drops 1.6 to 2.1 V.
TEST(Solve, RedLedDropsWhatIsUsual) {
    const json held = solved({harbourBench("beacon-lamp"), "--hold", "S1"});
    const json& leads = held["parts"]["D1"]["leads"];
    const double drop = leads["anode"]["voltage"].get<double>() - leads["cathode"]["voltage"].get<double>();
    EXPECT_GT(drop, 1.6);
    EXPECT_LT(drop, 2.1);
}

TEST(Solve, JsonHasTheAgreedShape) {
    const json held = solved({harbourBench("beacon-lamp"), "--hold", "S1"});
    using Names = std::vector<std::string>;
    // nlohmann::json lists the members of an object in the order of the alphabet.
    EXPECT_EQ(namesOf(held), (Names{"check", "findings", "jumpers", "nets", "parts", "status", "title"}));
    EXPECT_EQ(namesOf(held["nets"][0]), (Names{"floating", "holes", "id", "jumpers", "leads", "voltage"}));
    EXPECT_EQ(namesOf(held["parts"]), (Names{"D1", "PS1", "R1", "S1"}));
    EXPECT_EQ(namesOf(held["parts"]["D1"]), (Names{"brightness", "kind", "leads", "model", "power", "values"}));
    EXPECT_EQ(namesOf(held["parts"]["D1"]["model"]), (Names{"ideality", "saturationCurrent", "seriesResistance"}));
    EXPECT_EQ(namesOf(held["parts"]["R1"]), (Names{"kind", "leads", "model", "power", "values"}));
    EXPECT_EQ(namesOf(held["jumpers"]["W1"]), (Names{"current"}));
    EXPECT_EQ(namesOf(held["check"]), (Names{"kirchhoffWorst", "powerBalance"}));
    EXPECT_EQ(held["title"], "Beacon lamp");
    EXPECT_TRUE(held["findings"].empty());

    // Defaults are included, so that everything that the solve used can be read.
    EXPECT_EQ(held["parts"]["R1"]["values"], (json{{"resistance", 330}, {"tolerance", 0.05}, {"rating", 0.25}}));
    EXPECT_EQ(held["parts"]["PS1"]["state"], (json{{"on", true}}));
    EXPECT_EQ(held["parts"]["D1"]["values"], (json{{"colour", "red"}}));
}

TEST(Solve, NetsSayWhatIsPluggedIn) {
    const json held = solved({harbourBench("beacon-lamp"), "--hold", "S1"});
    const json& plus = held["nets"][0];
    EXPECT_EQ(plus["id"], 0);
    EXPECT_EQ(plus["holes"], (json{"A.top+3", "A.top+7", "A.a8", "A.c8"}));
    EXPECT_EQ(plus["leads"], (json{"PS1.+", "R1.1"}));
    EXPECT_EQ(plus["jumpers"], (json{"W1"}));
    EXPECT_FALSE(plus["floating"]);
    EXPECT_NEAR(plus["voltage"], 5, 1e-3);
}

TEST(Solve, CurrentsAgreeWithThemselves) {
    const json held = solved({harbourBench("beacon-lamp"), "--hold", "S1"});
    const double current = held["parts"]["D1"]["leads"]["anode"]["current"];
    EXPECT_NEAR(held["jumpers"]["W1"]["current"], current, 1e-9);
    EXPECT_NEAR(held["jumpers"]["W2"]["current"], current, 1e-9);
    EXPECT_NEAR(held["parts"]["PS1"]["leads"]["+"]["current"], -current, 1e-9);
    EXPECT_LT(held["parts"]["PS1"]["power"], 0);
    EXPECT_LT(std::abs(held["check"]["kirchhoffWorst"].get<double>()), 1e-9 + 1e-6 * current);
    EXPECT_LT(std::abs(held["check"]["powerBalance"].get<double>()), 1e-9);
}

TEST(Solve, SupplyOffMeansNoVoltageAndNoCurrent) {
    std::string text = readFile(harbourBench("beacon-lamp"));
    const auto at = text.find("\"on\": true");
    ASSERT_NE(at, std::string::npos);
    text.replace(at, 10, "\"on\": false");
    const json off = solved({scratchFile("off.bench.json", text), "--hold", "S1"});
    EXPECT_EQ(off["status"], "off");
    EXPECT_TRUE(off["nets"][0]["voltage"].is_null());
    EXPECT_EQ(off["parts"]["D1"]["leads"]["anode"]["current"], 0);
    ASSERT_EQ(off["findings"].size(), 1u);
    EXPECT_EQ(off["findings"][0]["rule"], "supply-off");
    EXPECT_EQ(off["findings"][0]["severity"], "remark");
    EXPECT_EQ(off["findings"][0]["mend"]["edits"].size(), 1u);
}

TEST(Solve, NoSolutionExitsWithOneAndShowsNoNumber) {
    const json none = solved({clashingBench()}, 1);
    EXPECT_EQ(none["status"], "none");
    EXPECT_TRUE(none["nets"][0]["voltage"].is_null());
    EXPECT_TRUE(none["parts"]["PS1"]["leads"]["+"]["current"].is_null());
    EXPECT_TRUE(none["parts"]["PS1"]["power"].is_null());
    const auto found = std::find_if(none["findings"].begin(), none["findings"].end(),
                                    [](const json& finding) { return finding["rule"] == "no-solution"; });
    ASSERT_NE(found, none["findings"].end());
    EXPECT_EQ((*found)["severity"], "fault");
    EXPECT_FALSE((*found)["parts"].empty());
}

TEST(Solve, PinnedReadingsAreRead) {
    std::string text = readFile(harbourBench("beacon-lamp"));
    text.insert(
        text.find("\"title\""),
        R"("pinned": [{"id": "M1", "volts": ["A.a8", "A.a14"]}, {"id": "M2", "amperes": "W1"}, {"id": "M3", "watts": "D1"}], )");
    const std::string file = scratchFile("pinned.bench.json", text);
    const json held = solved({file, "--hold", "S1"});
    const json& pinned = held["pinned"];
    ASSERT_EQ(namesOf(pinned), (std::vector<std::string>{"M1", "M2", "M3"}));
    EXPECT_EQ(namesOf(pinned["M1"]), (std::vector<std::string>{"of", "unit", "value"}));
    EXPECT_EQ(pinned["M1"]["of"], "volts of a8 above a14");
    const double current = held["jumpers"]["W1"]["current"];
    EXPECT_EQ(pinned["M2"]["value"], current);
    EXPECT_NEAR(pinned["M1"]["value"], 330 * current, 1e-9);  // Ohm's law across R1
    EXPECT_EQ(pinned["M3"]["value"], held["parts"]["D1"]["power"]);
    EXPECT_EQ(pinned["M3"]["unit"], "W");
    EXPECT_NE(runProgram({"solve", file}).output.find("Pinned\n  volts of a8 above a14"), std::string::npos);
}

TEST(Solve, WalksAlongThePotential) {
    const std::string file = harbourBench("beacon-lamp");
    const json walk = solved({file, "--hold", "S1", "--walk", "D1"})["walk"];
    EXPECT_EQ(walk["end"], "closed");
    EXPECT_EQ(walk["supply"], "PS1");
    std::vector<std::string> parts;
    double volt = walk["voltage"], sum = 0;
    for (const json& step : walk["steps"]) {
        sum += step["rise"].get<double>();
        EXPECT_NEAR(step["voltage"].get<double>() - volt, step["rise"].get<double>(), 1e-9);
        volt = step["voltage"];
        if (step.contains("part"))
            parts.push_back(step["part"]);
        else
            EXPECT_EQ(step["rise"], 0);
    }
    EXPECT_NEAR(sum, 0, 1e-9);  // Kirchhoff's voltage law
    EXPECT_EQ(parts, (std::vector<std::string>{"PS1", "R1", "S1", "D1"}));
    EXPECT_EQ(walk["steps"].back()["to"], walk["from"]);

    EXPECT_EQ(solved({file, "--walk", "D1"})["walk"]["end"], "no-current");
    EXPECT_NE(
        runProgram({"solve", file, "--hold", "S1", "--walk", "PS1"}).output.find("Voltage around the loop of PS1"),
        std::string::npos);
    const Ran unknown = runProgram({"solve", file, "--walk", "W1"});
    EXPECT_EQ(unknown.code, 2);
    EXPECT_EQ(lineCount(unknown.error), 1);
}

TEST(Solve, SurroundingsOfTheFileAreThoseOfTheSolve) {
    json bench = json::parse(readFile(harbourBench("beacon-lamp")));
    bench["surroundings"] = {{"light", 50}, {"temperature", -5.5}};
    const json held = solved({scratchFile("cold.bench.json", bench.dump()), "--hold", "S1"});
    EXPECT_EQ(held["surroundings"], (json{{"light", 50}, {"temperature", -5.5}}));
    EXPECT_FALSE(solved({harbourBench("beacon-lamp")}).contains("surroundings"));
}

TEST(Solve, TextSpeaksToPeople) {
    const Ran ran = runProgram({"solve", harbourBench("beacon-lamp"), "--hold", "S1"});
    EXPECT_EQ(ran.code, 0);
    EXPECT_NE(ran.output.find("Beacon lamp: solved"), std::string::npos);
    EXPECT_NE(ran.output.find("9.37 mA"), std::string::npos) << ran.output;
    EXPECT_NE(ran.output.find("5.00 V"), std::string::npos) << ran.output;
    EXPECT_NE(ran.output.find("brightness 7"), std::string::npos) << ran.output;
    EXPECT_EQ(ran.error, "");
}

/// A platform that doesn't exist would end any program that starts a GUI.
TEST(Solve, StartsNoGui) {
    for (const char* command : {"solve", "nets", "check"}) {
        EXPECT_EQ(runProgram({command, harbourBench("beacon-lamp")}, {"QT_QPA_PLATFORM=nowhere"}).code, 0) << command;
    }
    EXPECT_EQ(runProgram({"parts"}, {"QT_QPA_PLATFORM=nowhere"}).code, 0);
}

TEST(Solve, SameOutputEachTime) {
    const std::vector<std::string> arguments{"solve", harbourBench("quay-bell-lamp"), "--hold", "S2,S1", "--json"};
    EXPECT_EQ(runProgram(arguments).output, runProgram(arguments).output);
}

}  // namespace
}  // namespace tiepoint::test
