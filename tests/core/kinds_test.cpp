// Every kind of the catalogue at work: it has an example among the benches of the harbour or in a test of its own, and what the solver
// says about each of its elements is what the element's law says, computed here once more.

#include "core/base/constants.h"
#include "core/base/embedded.h"
#include "core/bench/bench_file.h"
#include "core/circuit/filament_law.h"
#include "core/snapshot/runner.h"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <map>

namespace tiepoint {
namespace {

constexpr double kLoadOhm = 100;

/// Every lead of the part in a column of its own; across the first and the last of them a load, and a supply if the part is none.
Bench around(const PartKind& kind) {
    Bench bench;
    bench.boards.push_back({"A", findBoardKind("full"), 0, 0, Rails::Through, Labels::ATop, {}});
    Part part = makePart(kind, "X1");
    const auto column = [](std::size_t lead) { return 10 + 3 * static_cast<int>(lead); };
    for (std::size_t lead = 0; lead < kind.leads.size(); ++lead) {
        if (!kind.leads[lead].socket) part.leads[lead] = Hole{"A", Line::C, column(lead)};
    }
    for (std::size_t s = 0; s < kind.state.size(); ++s) {
        if (kind.state[s].type == ValueType::Switch) part.state[s] = 1;
    }
    bench.parts.push_back(part);
    for (std::size_t lead = 0; lead < kind.leads.size(); ++lead) {
        if (!kind.leads[lead].socket) continue;
        Jumper jumper;
        jumper.id = fmt::format("W{}", lead + 1);
        jumper.ends = {Socket{"X1", static_cast<int>(lead)}, Hole{"A", Line::B, column(lead)}};
        bench.jumpers.push_back(jumper);
    }
    const int first = column(0), last = column(kind.leads.size() - 1);
    Part load = makePart(*findKind("resistor"), "R1");
    load.values[0] = kLoadOhm;
    load.leads = {Hole{"A", Line::A, first}, Hole{"A", Line::A, kind.isSupply ? last : 50}};
    bench.parts.push_back(load);
    if (!kind.isSupply) {
        Part supply = makePart(*findKind("bench-supply"), "PS1");
        supply.leads = {Hole{"A", Line::D, 50}, Hole{"A", Line::D, last}};
        bench.parts.push_back(supply);
    }
    return bench;
}

using Figures = std::map<std::string, double>;

double figureOr(const Figures& figures, const std::string& name, double otherwise) {
    const auto found = figures.find(name);
    return found == figures.end() ? otherwise : found->second;
}

/// The current of an element by its own law, from the voltage across it; nothing for laws that don't give one.
using Law = std::optional<double> (*)(const Figures& figures, double volt, double ampere);
const std::map<std::string, Law> kLaws = {
    {"resistance", [](const auto& f, double volt, double) { return std::optional(volt / f.at("resistance")); }},
    {"contact", [](const auto& f, double volt, double) { return std::optional(volt / f.at("contactResistance")); }},
    {"supply", [](const auto& f, double volt,
                  double) { return std::optional((volt - f.at("voltage")) / f.at("seriesResistance")); }},
    {"spark", [](const auto&, double, double) { return std::optional(0.0); }},        // far below where air breaks down
    {"capacitance", [](const auto&, double, double) { return std::optional(0.0); }},  // at rest
    {"inductance", [](const auto& f, double volt, double) { return std::optional(volt / f.at("seriesResistance")); }},
    {"junction",
     [](const auto& f, double volt, double ampere) {
         const double inner = volt - f.at("seriesResistance") * ampere;
         return std::optional(f.at("saturationCurrent") * std::expm1(inner / (f.at("ideality") * kThermalVoltage)));
     }},
    {"breakdown",
     [](const auto& f, double volt, double ampere) {
         const double inner = volt - f.at("seriesResistance") * ampere;
         const double breaks = f.at("breakdownVoltage") - f.at("seriesResistance") * f.at("testCurrent");
         const double softness = f.at("testCurrent") * f.at("dynamicResistance");
         return std::optional(f.at("saturationCurrent") * std::expm1(inner / (f.at("ideality") * kThermalVoltage)) -
                              f.at("testCurrent") * std::exp(-(inner + breaks) / softness));
     }},
    // At 300 lx and 25 degrees, where nothing else is said.
    {"photo-resistance",
     [](const auto& f, double volt, double) {
         const double lit = f.at("resistanceAt10Lux") * std::pow(300.0 / 10, -f.at("gamma"));
         return std::optional(volt / std::min(lit, f.at("darkResistance")));
     }},
    {"thermal-resistance",
     [](const auto& f, double volt, double) { return std::optional(volt / f.at("resistanceAt25")); }},
    {"photocurrent",
     [](const auto& f, double, double) { return std::optional(-f.at("current") * 300 / f.at("light")); }},
    {"filament",
     [](const auto& f, double volt, double ampere) {
         // Power and resistance each give a temperature; they must agree. Returned: the current that the resistance allows.
         const double power = volt * ampere / (f.at("voltage") * f.at("current"));
         const double bench4 = std::pow(kBenchKelvin, 4);
         const double kelvin = std::pow(power * (std::pow(f.at("temperature"), 4) - bench4) + bench4, 0.25);
         return std::optional(volt / (f.at("voltage") / f.at("current") * std::pow(kelvin / f.at("temperature"), 1.2)));
     }},
};

/// The same for laws of three terminals, from their voltages in the order of the model.
using LawOfThree = double (*)(const Figures& figures, const std::array<double, 3>& volts);
const std::map<std::string, LawOfThree> kLawsOfThree = {
    {"level", [](const auto& f,
                 const auto& volts) { return (2 * volts[0] - volts[1] - volts[2]) / (2 * f.at("loadResistance")); }},
    {"transistor",
     [](const Figures& f, const std::array<double, 3>& volts) {
         const double sign = figureOr(f, "polarity", 1), saturation = f.at("saturationCurrent");
         const double forward = saturation * std::expm1(sign * (volts[1] - volts[2]) / kThermalVoltage);
         const double back = saturation * std::expm1(sign * (volts[1] - volts[0]) / kThermalVoltage);
         return sign * (forward - back * (1 + 1 / f.at("reverseGain")));
     }},
    {"field-effect",
     [](const Figures& f, const std::array<double, 3>& volts) {
         const double sign = figureOr(f, "polarity", 1), bend = 2 * 1.3 * kThermalVoltage;
         const auto over = [&](double volt) {
             const double soft = bend * std::log1p(std::exp((sign * volt - f.at("thresholdVoltage")) / bend));
             return soft * soft;
         };
         return sign * f.at("transconductance") / 2 * (over(volts[1] - volts[2]) - over(volts[1] - volts[0]));
     }},
};

TEST(Kinds, EachSolvesByTheLawsOfItsElements) {
    for (const PartKind& kind : catalogue()) {
        SCOPED_TRACE(kind.name);
        const auto bench = std::make_shared<const Bench>(around(kind));
        Inputs pressed;
        pressed.held = {"X1"};
        const auto solvedBy = [&](const std::unique_ptr<Runner>& runner, double second) {
            runner->setInputs(pressed);
            runner->setBench(1, bench);
            runner->advanceTo(second);
            return runner->snapshot();
        };
        auto s = solvedBy(makeRestingRunner(), 0);
        if (s->status() != Status::Solved) s = solvedBy(makeRunner(), 1e-3);  // what swings by itself finds no rest
        ASSERT_EQ(s->status(), Status::Solved) << s->solution.reason;
        EXPECT_LT(s->solution.kirchhoffWorst, 1e-12);
        EXPECT_LT(std::abs(s->solution.powerBalance), 1e-11);
        int checked = 0;
        for (const ElementState element : s->solution.elements()) {
            if (element.part != 0 || !element.closed) continue;
            const ElementSpec& spec = kind.model[static_cast<std::size_t>(element.spec)];
            const std::map<std::string, double> figures(element.constants.begin(), element.constants.end());
            const bool isInside =
                std::ranges::any_of(spec.between, [&](const std::string& node) { return kind.leadIndex(node) < 0; });
            if (isInside ||
                spec.between.size() > 3) {  // by tests of their own: tests/core/sensors_test.cpp, tests/core/moving
                continue;
            }
            if (spec.between.size() == 3) {
                ASSERT_TRUE(kLawsOfThree.contains(spec.element)) << spec.element << " has no check";
                std::array<double, 3> volts{};
                for (std::size_t node = 0; node < 3; ++node)
                    volts[node] = s->leadVoltage(kind.leadIndex(spec.between[node]));
                const double expected = kLawsOfThree.at(spec.element)(figures, volts);
                EXPECT_NEAR(element.currentAmpere, expected, 1e-9 + 1e-6 * std::abs(expected)) << spec.element;
                ++checked;
                continue;
            }
            const int from = kind.leadIndex(spec.from()), to = kind.leadIndex(spec.to());
            ASSERT_TRUE(kLaws.contains(spec.element)) << spec.element << " has no check";
            const double volt = s->leadVoltage(from) - s->leadVoltage(to);
            const auto expected = kLaws.at(spec.element)(figures, volt, element.currentAmpere);
            ASSERT_TRUE(expected);
            EXPECT_NEAR(element.currentAmpere, *expected, 1e-9 + 1e-6 * std::abs(*expected)) << spec.element;
            ++checked;
        }
        const auto isBetweenLeads = [&](const ElementSpec& spec) {
            return spec.between.size() <= 3 && std::ranges::all_of(spec.between, [&](const std::string& node) {
                       return kind.leadIndex(node) >= 0;
                   });
        };
        if (std::ranges::any_of(kind.model, isBetweenLeads)) {
            EXPECT_GT(checked, 0);
        }
    }
}

/// Supplies other than the adjustable one, and the diode, stand in benches of tests; everything a newcomer meets first stands in a bench
/// of the harbour.
TEST(Kinds, TheHarbourShowsThem) {
    std::map<std::string, int> shown;
    for (const EmbeddedFile& file : embeddedFiles()) {
        if (!file.name.ends_with(".bench.json")) continue;
        const auto read = readBench(file.text);
        ASSERT_TRUE(read.ok()) << file.name;
        for (const Part& part : read->bench.parts) ++shown[part.kind->name];
    }
    for (const char* kind : {"bench-supply", "resistor", "led", "push-button", "slide-switch", "toggle",
                             "potentiometer", "lamp", "zener", "schottky", "npn", "pnp", "n-mosfet", "p-mosfet",
                             "photoresistor", "phototransistor", "thermistor", "solar-cell", "rgb-led"})
        EXPECT_GT(shown[kind], 0) << kind;
}

}  // namespace
}  // namespace tiepoint
