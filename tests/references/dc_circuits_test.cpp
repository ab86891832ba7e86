// Worked circuits from published books, as data in circuits.json beside this file: each names its source.
// Those with sources of up to 30 V are laid out on boards and go through the whole chain from bench to snapshot; the others are
// solved below the board level. Ideal sources are bench supplies without series resistance and with the largest limit.

#include "core/bench/validate.h"
#include "core/snapshot/snapshot.h"
#include "core/solve/circuit_solver.h"
#include "support/lay_out.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <cmath>
#include <fstream>
#include <functional>
#include <map>
#include <string>

namespace tiepoint {
namespace {

using Json = nlohmann::json;

constexpr double kBoardVolt = 30;
constexpr double kLargestLimitAmpere = 30;

/// What a solved circuit says about nodes and elements, by name.
struct Answers {
    std::map<std::string, double> volt;    ///< by node
    std::map<std::string, double> ampere;  ///< by element, first node to second
    std::map<std::string, double> watt;    ///< by element, absorbed
    std::map<std::string, double> across;  ///< by element, first node above second

    /// Nothing for a quantity that isn't known here.
    std::optional<double> of(const std::string& quantity) const {
        const auto open = quantity.find('('), close = quantity.find(')');
        const std::string name = quantity.substr(0, open), inner = quantity.substr(open + 1, close - open - 1);
        if (name == "V") {
            const auto comma = inner.find(',');
            return volt.at(inner.substr(0, comma)) - volt.at(inner.substr(comma + 1));
        }
        if (name == "I") return ampere.at(inner);
        if (name == "Isup") return -ampere.at(inner);
        if (name == "P") return watt.at(inner);
        if (name == "Psup") return -watt.at(inner);
        if (name == "Rsrc") return across.at(inner) / -ampere.at(inner);
        return std::nullopt;
    }
};

/// Figures of a junction: a diode of the data, or one that drops the stated voltage at 20 mA.
struct JunctionFigures {
    double saturationAmpere, ideality;
};
JunctionFigures junctionFigures(const Json& element) {
    if (element["kind"] == "diode") {
        // The bench stands at 298.15 K; another temperature of the data is the same exponent with another ideality.
        return {element["saturationCurrent"],
                element["ideality"].get<double>() * element["kelvin"].get<double>() / kBenchKelvin};
    }
    constexpr double kTestAmpere = 0.020, kIdeality = 2;
    return {kTestAmpere / std::expm1(element["value"].get<double>() / (kIdeality * kThermalVoltage)), kIdeality};
}

Answers solveOnBoards(const Json& circuit) {
    std::vector<test::Piece2> pieces;
    for (const Json& element : circuit["elements"]) {
        test::Piece2 piece{element["name"], "", element["nodes"][0], element["nodes"][1], {}};
        if (element["kind"] == "source") {
            piece.kind = "bench-supply";
            piece.values = {
                {"voltage", element["value"]}, {"seriesResistance", 0}, {"currentLimit", kLargestLimitAmpere}};
        } else if (element["kind"] == "resistor") {
            piece.kind = "resistor";
            piece.values = {{"resistance", element["value"]}};
        } else {
            const JunctionFigures figures = junctionFigures(element);
            piece.kind = "diode";
            piece.values = {{"saturationCurrent", figures.saturationAmpere},
                            {"ideality", figures.ideality},
                            {"seriesResistance", 0}};
        }
        pieces.push_back(piece);
    }
    const auto bench = std::make_shared<const Bench>(test::layOut(pieces));
    EXPECT_TRUE(validate(*bench).ok());
    const auto snapshot = evaluate(bench);
    EXPECT_EQ(snapshot->status(), Status::Solved) << snapshot->solution.reason;
    EXPECT_LT(snapshot->solution.kirchhoffWorst, 1e-12);
    EXPECT_LT(std::abs(snapshot->solution.powerBalance), 1e-11);

    Answers answers;
    for (std::size_t part = 0; part < pieces.size(); ++part) {
        const int lead = snapshot->layout->leadIndex(static_cast<int>(part), 0);
        const std::string& id = pieces[part].id;
        answers.volt[pieces[part].first] = snapshot->leadVoltage(lead);
        answers.volt[pieces[part].second] = snapshot->leadVoltage(lead + 1);
        answers.ampere[id] = snapshot->leadCurrent[lead];
        EXPECT_NEAR(snapshot->leadCurrent[lead + 1], -answers.ampere[id], 1e-12) << id;
        answers.watt[id] = snapshot->partPower[part];
        answers.across[id] = snapshot->leadVoltage(lead) - snapshot->leadVoltage(lead + 1);
    }
    return answers;
}

Answers solveBelowBoards(const Json& circuit) {
    Circuit compiled;
    std::map<std::string, int> nodes;
    const auto node = [&](const std::string& name) {
        const auto [found, fresh] = nodes.try_emplace(name, compiled.nodeCount);
        if (fresh) compiled.addNode();
        return found->second;
    };
    for (const Json& element : circuit["elements"]) {
        const int from = node(element["nodes"][0]), to = node(element["nodes"][1]);
        if (element["kind"] == "source") {
            compiled.addSupply(from, to, element["value"]);
        } else if (element["kind"] == "resistor") {
            compiled.addConductor(from, to, element["value"]);
        } else {
            const JunctionFigures figures = junctionFigures(element);
            compiled.add(JunctionLaw(figures.saturationAmpere, figures.ideality), {from, to});
        }
    }
    CircuitSolver solver(compiled);
    const CircuitSolution& solution = solver.solve(std::vector<char>(compiled.elementCount(), 1), nodes.at("0"));
    EXPECT_TRUE(solution.solved());
    Answers answers;
    if (!solution.solved()) return answers;
    for (const auto& [name, index] : nodes) answers.volt[name] = solution.nodeVolt[index];
    for (std::size_t e = 0; e < circuit["elements"].size(); ++e) {
        const std::string id = circuit["elements"][e]["name"];
        answers.ampere[id] = solution.elementAmpere[e];
        answers.watt[id] = solution.elementWatt[e];
        answers.across[id] = solution.nodeVolt[compiled.nodesOf(static_cast<int>(e))[0]] -
                             solution.nodeVolt[compiled.nodesOf(static_cast<int>(e))[1]];
    }
    return answers;
}

Json readCircuits() {
    std::ifstream file(TIEPOINT_SOURCE_DIR "/tests/references/circuits.json");
    return Json::parse(file)["circuits"];
}

bool fitsOnBoards(const Json& circuit) {
    for (const Json& element : circuit["elements"]) {
        if (element["kind"] == "source" && element["value"] > kBoardVolt) return false;
    }
    return true;
}

void checkCircuit(const Json& circuit, const Answers& answers) {
    for (const Json& c : circuit["checks"]) {
        const std::string quantity = c["quantity"];
        const std::optional<double> value = answers.of(quantity);
        ASSERT_TRUE(value) << quantity;
        if (c.contains("printed")) {
            EXPECT_NEAR(*value, std::stod(c["printed"].get<std::string>()), c["tolerance"].get<double>()) << quantity;
        }
        // Our own twelve digits, of the ideal circuit; what should be nothing may be rounding.
        constexpr double kDigits = 1e-9, kNothing = 1e-12;
        const double exact = c["exact"];
        EXPECT_NEAR(*value, exact, kDigits * std::abs(exact) + kNothing) << quantity;
    }
}

TEST(DcCircuits, MeetPublishedValues) {
    const Json circuits = readCircuits();
    int onBoards = 0, below = 0;
    for (const Json& circuit : circuits) {
        SCOPED_TRACE(circuit["id"].get<std::string>() + ": " + circuit["source"].get<std::string>());
        const bool fits = fitsOnBoards(circuit);
        ++(fits ? onBoards : below);
        checkCircuit(circuit, fits ? solveOnBoards(circuit) : solveBelowBoards(circuit));
    }
    EXPECT_EQ(onBoards, 27);
    EXPECT_EQ(below, 4);
}

TEST(DcCircuits, BothLevelsAgree) {
    for (const Json& circuit : readCircuits()) {
        if (!fitsOnBoards(circuit)) continue;
        SCOPED_TRACE(circuit["id"].get<std::string>());
        const Answers onBoards = solveOnBoards(circuit), below = solveBelowBoards(circuit);
        for (const auto& [id, ampere] : below.ampere) {
            EXPECT_NEAR(onBoards.ampere.at(id), ampere, 1e-12 * std::abs(ampere) + 1e-15) << id;
        }
    }
}

}  // namespace
}  // namespace tiepoint
