#pragma once
// Part kinds that are not shipped, for tests of what any kind must go through: packages of families, three and more leads, ratings of
// every quantity. Read once; constant afterwards, and safe from any thread.

#include "core/parts/catalogue.h"
#include "core/parts/kind_file.h"

#include <fmt/format.h>

#include <stdexcept>
#include <string>

namespace tiepoint::test {

/// The shipped kinds and these:
///   test-star   TO-92 with leads left, middle and right; from each a resistance to a common node inside
///   test-npn    TO-92 with leads emitter, base and collector; a transistor
///   test-pair   DIP with 6 legs; two transistors alike, with one emitter, and a leg that nothing touches
///   test-chip   DIP with 8 legs; a resistance from leg 1 to leg 8, another from leg 4 to leg 5
///   test-can    a radial can sized by capacitance and voltageRating; it leaks
///   test-disc   a ceramic disc; it leaks
const Catalogue& testCatalogue();

/// The text of a kind file with a package, leads and what works in it; the rest of it says nothing.
struct KindText {
    std::string kind, package, leads, values = "[]", model = "[]", ratings = "[]";
    std::string text() const;
};
KindText starText();
KindText canText();
/// A DIP with so many legs, called "1", "2", ..., in rows so many pitches apart.
KindText chipText(int legs, int rows);

namespace kinds {

inline const char* const kThreeLeads = R"([{"name": "left", "description": "the left leg"},
    {"name": "middle", "description": "the leg in the middle"}, {"name": "right", "description": "the right leg"}])";
inline const char* const kStarModel =
    R"([{"element": "resistance", "from": "left", "to": "heart", "resistance": "resistance"},
    {"element": "resistance", "from": "middle", "to": "heart", "resistance": "resistance"},
    {"element": "resistance", "from": "right", "to": "heart", "resistance": "resistance"}])";
inline const char* const kStarValues =
    R"([{"name": "resistance", "label": "Resistance", "type": "number", "unit": "ohm",
    "minimum": 1, "maximum": 1e6, "default": 100, "series": "E12"}])";
inline const char* const kStarRatings = R"([
    {"name": "middleCurrent", "quantity": "current", "leads": ["middle"], "label": "maximum", "limit": 0.02},
    {"name": "sideVoltage", "quantity": "voltage", "leads": ["left", "right"], "label": "maximum", "limit": 4},
    {"name": "backwards", "quantity": "reverseVoltage", "leads": ["left", "middle"], "label": "reverse limit", "limit": 2},
    {"name": "power", "quantity": "power", "label": "maximum", "limit": 0.3}])";

inline const char* const kNpnLeads = R"([{"name": "emitter", "description": "the left leg"},
    {"name": "base", "description": "the leg in the middle"}, {"name": "collector", "description": "the right leg"}])";
inline const char* const kNpnValues =
    R"([{"name": "gain", "label": "Gain", "type": "number", "unit": "", "minimum": 10, "maximum": 1000, "default": 100}])";
inline const char* const kNpnModel =
    R"([{"element": "transistor", "between": ["collector", "base", "emitter"], "gain": "gain",
    "saturationCurrent": 1e-14, "emitterCapacitance": 8e-12, "collectorCapacitance": 4e-12}])";
inline const char* const kNpnRatings = R"([
    {"name": "collectorCurrent", "quantity": "current", "leads": ["collector"], "label": "maximum", "limit": 0.2},
    {"name": "baseCurrent", "quantity": "current", "leads": ["base"], "label": "maximum", "limit": 0.05},
    {"name": "collectorVoltage", "quantity": "voltage", "leads": ["collector", "emitter"], "label": "maximum", "limit": 40},
    {"name": "baseReverse", "quantity": "reverseVoltage", "leads": ["base", "emitter"], "label": "reverse limit", "limit": 6},
    {"name": "power", "quantity": "power", "label": "maximum", "limit": 0.625}])";

inline const char* const kPairLeads = R"([{"name": "collector1", "description": "leg 1"},
    {"name": "base1", "description": "leg 2"}, {"name": "emitter", "description": "leg 3"},
    {"name": "collector2", "description": "leg 4"}, {"name": "base2", "description": "leg 5"},
    {"name": "unused", "description": "leg 6"}])";
inline const char* const kPairModel =
    R"([{"element": "transistor", "between": ["collector1", "base1", "emitter"], "gain": "gain", "saturationCurrent": 1e-14},
    {"element": "transistor", "between": ["collector2", "base2", "emitter"], "gain": "gain", "saturationCurrent": 1e-14}])";

inline const char* const kTwoPoles =
    R"([{"name": "+", "description": "the longer leg"}, {"name": "-", "description": "the leg at the stripe"}])";
inline const char* const kCanValues = R"([
    {"name": "capacitance", "label": "Capacitance", "type": "number", "unit": "F", "minimum": 1e-7, "maximum": 0.01,
     "default": 1e-4, "series": "E6", "sought": true},
    {"name": "voltageRating", "label": "Rated voltage", "type": "number", "unit": "V", "minimum": 4, "maximum": 450,
     "default": 16, "allowed": [6.3, 10, 16, 25, 35, 50, 63, 100]}])";
inline const char* const kCanRatings = R"([
    {"name": "voltage", "quantity": "voltage", "label": "maximum", "limit": "voltageRating"},
    {"name": "reverseVoltage", "quantity": "reverseVoltage", "label": "reverse limit", "limit": 1}])";

inline std::string leak(std::string_view from, std::string_view to) {
    return fmt::format(R"({{"element": "resistance", "from": "{}", "to": "{}", "resistance": 1000}})", from, to);
}

inline PartKind read(const KindText& text) {
    auto kind = readPartKind(text.kind, text.text());
    if (!kind) throw std::invalid_argument(kind.error().oneLine());
    return std::move(kind).value();
}

inline std::vector<PartKind> testKinds() {
    std::vector<PartKind> kinds;
    kinds.push_back(read(starText()));
    kinds.push_back(read({"test-npn", R"({"family": "to-92"})", kNpnLeads, kNpnValues, kNpnModel, kNpnRatings}));
    kinds.push_back(
        read({"test-pair", R"({"family": "dip", "legs": 6, "rows": 3})", kPairLeads, kNpnValues, kPairModel}));
    kinds.push_back(read(chipText(8, 3)));
    kinds.push_back(read(canText()));
    kinds.push_back(read({"test-disc", R"({"family": "ceramic-disc"})",
                          R"([{"name": "1", "description": "one leg"}, {"name": "2", "description": "the other"}])",
                          "[]", '[' + leak("1", "2") + ']'}));
    return kinds;
}

}  // namespace kinds

inline std::string KindText::text() const {
    return fmt::format(R"({{"kind": "{}", "label": "{}", "family": "Chip", "order": 1, "prefix": "U", "package": {},
        "leads": {}, "values": {}, "model": {}, "ratings": {}, "search": ["test"],
        "help": {{"what": "A part for tests.", "leads": "As named.", "ratings": "As given.", "caution": "None."}},
        "sources": [{{"figure": "all", "source": "made up for tests", "status": "common practice"}}]}})",
                       kind, kind, package, leads, values, model, ratings);
}

inline KindText chipText(int legs, int rows) {
    std::string leads;
    for (int leg = 1; leg <= legs; ++leg)
        leads += fmt::format(R"({}{{"name": "{}", "description": "leg {}"}})", leg > 1 ? ", " : "", leg, leg);
    KindText text{"test-chip", fmt::format(R"({{"family": "dip", "legs": {}, "rows": {}}})", legs, rows),
                  '[' + leads + ']'};
    const auto leg = [](int number) { return std::to_string(number); };
    text.model = '[' + kinds::leak("1", leg(legs)) + ", " + kinds::leak(leg(legs / 2), leg(legs / 2 + 1)) + ']';
    return text;
}

inline KindText starText() {
    return {"test-star",        R"({"family": "to-92"})", kinds::kThreeLeads,
            kinds::kStarValues, kinds::kStarModel,        kinds::kStarRatings};
}

inline KindText canText() {
    return {"test-can",
            R"({"family": "radial-can", "capacitance": "capacitance", "voltage": "voltageRating"})",
            kinds::kTwoPoles,
            kinds::kCanValues,
            '[' + kinds::leak("+", "-") + ']',
            kinds::kCanRatings};
}

inline const Catalogue& testCatalogue() {
    static const Catalogue kCatalogue(kinds::testKinds());
    return kCatalogue;
}

}  // namespace tiepoint::test
