// The catalogue walked from end to end.
// LED figures: "5mm LED typical technical data" (suppliers' table, 2011) and the LED table of
// utilitiesbunker.com; maximum of infrared, white and pure green from memory. Usual current 20 mA and reverse
// limit 5 V: T. R. Kuphaldt, Lessons in Electric Circuits, Vol. III, ch. 3. Thermal voltage at 298.15 K:
// computed from the exact SI k and q.

#include "core/base/constants.h"
#include "core/base/embedded.h"
#include "core/bench/bench.h"
#include "core/bench/resolve.h"
#include "core/parts/derivation.h"
#include "core/parts/kind_file.h"
#include "support/kinds_by_name.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

namespace tiepoint {
namespace {

using test::kindOf;

TEST(Catalogue, HoldsTheKindsOfTheBench) {
    std::vector<std::string> names;
    for (const PartKind& kind : catalogue()) names.push_back(kind.name);
    EXPECT_EQ(names, (std::vector<std::string>{"bench-supply",
                                               "usb-supply",
                                               "cells",
                                               "block-9v",
                                               "solar-cell",
                                               "resistor",
                                               "potentiometer",
                                               "led",
                                               "rgb-led",
                                               "push-button",
                                               "slide-switch",
                                               "toggle",
                                               "ceramic-capacitor",
                                               "electrolytic-capacitor",
                                               "inductor",
                                               "diode",
                                               "zener",
                                               "schottky",
                                               "npn",
                                               "pnp",
                                               "n-mosfet",
                                               "p-mosfet",
                                               "photoresistor",
                                               "phototransistor",
                                               "thermistor",
                                               "lamp",
                                               "timer-555",
                                               "buzzer-active",
                                               "buzzer-passive",
                                               "motor",
                                               "relay",
                                               "multimeter",
                                               "oscilloscope",
                                               "signal-source",
                                               "logic-probe"}));
    for (const PartKind& kind : catalogue()) EXPECT_EQ(findKind(kind.name), &kind);
    EXPECT_EQ(findKind("valve"), nullptr);
}

TEST(Catalogue, EveryFileIsAKind) {
    std::size_t files = 0;
    for (const EmbeddedFile& file : embeddedFiles()) {
        if (!file.name.starts_with("parts/")) continue;
        ++files;
        const auto kind = readPartKind(file.name, file.text);
        ASSERT_TRUE(kind.ok()) << kind.error().oneLine();
        EXPECT_EQ(file.name, "parts/" + kind->name + ".json");
    }
    EXPECT_EQ(files, catalogue().size());
}

TEST(Catalogue, EveryKindIsDescribed) {
    for (const PartKind& kind : catalogue()) {
        ASSERT_NE(kind.package, nullptr) << kind.name;
        EXPECT_FALSE(kind.searchWords.empty()) << kind.name;
        for (const std::string* text : {&kind.help.what, &kind.help.leads, &kind.help.ratings, &kind.help.caution}) {
            EXPECT_GE(text->size(), 10u) << kind.name;
            EXPECT_EQ(text->back(), '.') << kind.name << ": " << *text;
        }
        EXPECT_FALSE(kind.sources.empty()) << kind.name;
        for (const LeadSpec& lead : kind.leads) EXPECT_FALSE(lead.description.empty()) << kind.name << lead.name;
    }
}

TEST(Catalogue, NamesInsideAKindAreUnique) {
    for (const PartKind& kind : catalogue()) {
        std::set<std::string> leads, settings;
        for (const LeadSpec& lead : kind.leads) EXPECT_TRUE(leads.insert(lead.name).second) << kind.name;
        for (const auto* specs : {&kind.values, &kind.state}) {
            for (const ValueSpec& spec : *specs) {
                EXPECT_TRUE(settings.insert(spec.name).second) << kind.name << " " << spec.name;
                for (const Choice& choice : spec.choices) {
                    for (const auto& [constant, figure] : choice.constants)
                        EXPECT_LT(kind.valueIndex(constant), 0) << kind.name << " " << constant;
                }
            }
        }
    }
}

/// One prefix is shared only by kinds that people number together: supplies, switches, and diodes with LEDs.
TEST(Catalogue, PrefixesMakeIds) {
    std::map<std::string, std::set<std::string>> families;
    for (const PartKind& kind : catalogue()) {
        EXPECT_TRUE(isId(kind.prefix + "1")) << kind.name;
        families[kind.prefix].insert(kind.family);
    }
    for (const auto& [prefix, sharing] : families)
        EXPECT_TRUE(sharing.size() == 1 || sharing == (std::set<std::string>{"Diode", "LED"})) << prefix;
}

TEST(Catalogue, DefaultsLieInRange) {
    for (const PartKind& kind : catalogue()) {
        for (const auto* specs : {&kind.values, &kind.state}) {
            for (const ValueSpec& spec : *specs) {
                EXPECT_GE(spec.fallback, spec.minimum) << kind.name << " " << spec.name;
                EXPECT_LE(spec.fallback, spec.maximum) << kind.name << " " << spec.name;
                if (spec.integer) {
                    EXPECT_EQ(spec.fallback, std::floor(spec.fallback)) << kind.name;
                }
                if (spec.type == ValueType::Choice) {
                    EXPECT_EQ(spec.maximum + 1, spec.choices.size()) << kind.name;
                }
                if (!spec.allowed.empty()) {
                    EXPECT_NE(std::find(spec.allowed.begin(), spec.allowed.end(), spec.fallback), spec.allowed.end())
                        << kind.name << " " << spec.name;
                }
            }
        }
    }
}

/// The range of each setting and its default, as the description of the file format has them.
TEST(Catalogue, SettingsAreThoseOfTheFileFormat) {
    const struct {
        const char *kind, *value;
        double minimum, maximum, fallback;
    } cases[] = {
        {"bench-supply", "voltage", 0, 30, 5},
        {"bench-supply", "currentLimit", 0.001, 30, 0.5},
        {"bench-supply", "seriesResistance", 0, 100, 0.01},
        {"cells", "count", 1, 8, 2},
        {"resistor", "resistance", 0.01, 1e9, 330},
    };
    for (const auto& c : cases) {
        const ValueSpec& spec = kindOf(c.kind).values[kindOf(c.kind).valueIndex(c.value)];
        EXPECT_EQ(spec.minimum, c.minimum) << c.value;
        EXPECT_EQ(spec.maximum, c.maximum) << c.value;
        EXPECT_EQ(spec.fallback, c.fallback) << c.value;
    }
    const struct {
        const char *kind, *value;
        double fallback;
    } defaults[] = {{"usb-supply", "voltage", 5},
                    {"usb-supply", "currentLimit", 0.5},
                    {"usb-supply", "seriesResistance", 0.1},
                    {"resistor", "tolerance", 0.05},
                    {"resistor", "rating", 0.25},
                    {"push-button", "contactResistance", 0.05},
                    {"potentiometer", "resistance", 10e3}};
    for (const auto& c : defaults) {
        const PartKind& kind = kindOf(c.kind);
        EXPECT_EQ(kind.values[kind.valueIndex(c.value)].fallback, c.fallback) << c.kind << " " << c.value;
    }
}

TEST(Catalogue, ModelsResolveToSaneFigures) {
    const std::map<std::string, std::set<std::string>> needed = {
        {"resistance", {"resistance"}},
        {"junction", {"saturationCurrent", "ideality", "seriesResistance"}},
        {"supply", {"voltage", "seriesResistance"}},
        {"contact", {"contactResistance"}},
        {"filament", {"voltage", "current", "temperature"}},
        {"capacitance", {"capacitance", "seriesResistance"}},
        {"inductance", {"inductance", "seriesResistance"}},
        {"breakdown",
         {"saturationCurrent", "ideality", "seriesResistance", "breakdownVoltage", "testCurrent", "dynamicResistance"}},
        {"photo-resistance", {"resistanceAt10Lux", "gamma", "darkResistance"}},
        {"thermal-resistance", {"resistanceAt25", "beta"}},
        {"photocurrent", {"current", "light"}},
        {"transistor", {"gain", "reverseGain", "saturationCurrent"}},
        {"spark", {}},
        {"latch", {"highResistance", "lowResistance", "openResistance", "resetVoltage"}},
        {"armature", {"coilResistance", "pullIn", "dropOut", "contactResistance"}},
        {"rotor", {"resistance", "torqueConstant", "inertia", "friction"}},
        {"sounder", {"resistance", "audible"}},
        {"wave", {"amplitude", "frequency", "outputResistance", "shape"}},
        {"level", {"loadResistance", "highVoltage", "highShare", "lowVoltage", "lowShare"}},
        {"field-effect", {"thresholdVoltage", "transconductance", "channelLength"}},
    };
    const std::set<std::string> besides = {
        "bounceTime",          "delay", "startSpeed", "transitTime", "reverseTransitTime", "emitterCapacitance",
        "collectorCapacitance"};
    for (const PartKind& kind : catalogue()) {
        EXPECT_FALSE(kind.model.empty()) << kind.name;
        const Part part = makePart(kind, "X1");
        for (const ElementSpec& element : kind.model) {
            ASSERT_TRUE(needed.contains(element.element)) << kind.name;
            std::set<std::string> names;
            for (const auto& [name, parameter] : element.parameters) {
                names.insert(name);
                const double figure = resolve(parameter, part);
                EXPECT_TRUE(std::isfinite(figure)) << kind.name << " " << name;
                if (name == "polarity")
                    EXPECT_EQ(figure, -1) << kind.name;
                else
                    EXPECT_GE(figure, 0) << kind.name << " " << name;
            }
            names.erase("polarity");
            for (const std::string& name : besides) names.erase(name);
            if (element.element == "supply") names.erase("currentLimit");
            names.erase("startVoltage");
            names.erase("startCurrent");
            EXPECT_EQ(names, needed.at(element.element)) << kind.name;
            if (element.element == "contact") {
                EXPECT_TRUE(element.whenHeld || !element.whenState.empty()) << kind.name;
            }
        }
        for (const Rating& rating : kind.ratings) EXPECT_GT(resolve(rating.limit, part), 0) << kind.name;
    }
}

TEST(Catalogue, SuppliesAreSuppliesAndLightsAreLights) {
    for (const PartKind& kind : catalogue()) {
        EXPECT_EQ(kind.isSupply, kind.family == "Supply") << kind.name;
        // Light can't be switched off: what it drives has no switch.
        const bool isLit = std::ranges::any_of(
            kind.model, [](const ElementSpec& element) { return element.element == "photocurrent"; });
        EXPECT_EQ(kind.isSupply && !isLit, kind.stateIndex("on") >= 0) << kind.name;
        if (kind.emitsLight) {
            EXPECT_GT(ratedCurrentAmpere(makePart(kind, "X1")), 0) << kind.name;
        }
    }
    EXPECT_TRUE(kindOf("led").emitsLight);
    EXPECT_TRUE(kindOf("push-button").hasCap);
}

TEST(Catalogue, AKindSaysItselfWhetherItIsAResistor) {
    for (const PartKind& kind : catalogue()) {
        const int value = resistanceValue(kind);
        EXPECT_EQ(value >= 0, kind.name == "resistor") << kind.name;
        if (value >= 0) {
            EXPECT_EQ(kind.values[static_cast<std::size_t>(value)].name, "resistance");
        }
    }
    PartKind other = kindOf("resistor");  // whatever it is called, and wherever its resistance stands
    other.name = "winding";
    std::swap(other.values[0], other.values[1]);
    EXPECT_EQ(resistanceValue(other), 1);
    other.model.front().parameters = {{"resistance", Parameter{47.0}}};
    EXPECT_EQ(resistanceValue(other), -1) << "nothing can be set";
    other = kindOf("resistor");
    other.model.push_back(other.model.front());
    EXPECT_EQ(resistanceValue(other), -1) << "it is more than a resistance";
}

TEST(Catalogue, TheUsualKindsAreTheFirstOfTheirSort) {
    EXPECT_EQ(&usualSupply(), &kindOf("bench-supply"));
    EXPECT_EQ(&usualResistor(), &kindOf("resistor"));
    EXPECT_EQ(&usualLight(), &kindOf("led"));
}

/// Forward voltage at 20 mA, maximum, and whether eyes see it.
TEST(Catalogue, LedFiguresAreThePublishedOnes) {
    const struct {
        const char* colour;
        double forwardVolt, maximumAmpere;
        bool visible;
    } cases[] = {{"red", 2.0, 0.030, true},   {"deep-red", 1.7, 0.030, true},   {"amber", 2.1, 0.030, true},
                 {"green", 2.2, 0.025, true}, {"pure-green", 3.2, 0.030, true}, {"blue", 3.2, 0.030, true},
                 {"white", 3.2, 0.030, true}, {"infrared", 1.2, 0.050, false}};
    const PartKind& led = kindOf("led");
    ASSERT_EQ(led.values[0].choices.size(), std::size(cases));
    for (std::size_t i = 0; i < std::size(cases); ++i) {
        const Choice& choice = led.values[0].choices[i];
        EXPECT_EQ(choice.name, cases[i].colour);
        EXPECT_EQ(choice.constants.at("forwardVoltage"), cases[i].forwardVolt) << choice.name;
        EXPECT_EQ(choice.constants.at("maximumCurrent"), cases[i].maximumAmpere) << choice.name;
        EXPECT_EQ(choice.constants.at("visible") != 0, cases[i].visible) << choice.name;
    }
    EXPECT_EQ(ratedCurrentAmpere(makePart(led, "D1")), 0.020);
}

TEST(Jumpers, ComeInEightColours) {
    const char* names[] = {"red", "black", "blue", "yellow", "green", "violet", "orange", "white"};
    ASSERT_EQ(jumperColours().size(), std::size(names));
    for (int i = 0; i < 8; ++i) {
        EXPECT_EQ(jumperColours()[i].name, names[i]);
        EXPECT_EQ(findJumperColour(names[i]), i);
    }
    EXPECT_EQ(findJumperColour("pink"), -1);
}

}  // namespace
}  // namespace tiepoint
