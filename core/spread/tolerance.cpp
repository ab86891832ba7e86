#include "core/spread/tolerance.h"

#include "core/bench/resolve.h"
#include "core/circuit/element.h"
#include "core/circuit/junction_law.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace tiepoint {
namespace {

constexpr std::string_view kOwnTolerance = "tolerance";  ///< the value of a kind that says how exact a part is
constexpr double kJunctionAmpere = 0.020;  ///< where a forward voltage is stated, if the kind has no rated current

double timesShare(const std::vector<double>& all, int figure, double share, double /*ratedAmpere*/) {
    return all[static_cast<std::size_t>(figure)] * (1 + share);
}

/// A junction whose forward voltage at its rated current is off: its whole curve is shifted along the axis of volts, which a factor of its
/// saturation current does.
double shiftedSaturation(const std::vector<double>& all, int figure, double share, double ratedAmpere) {
    const JunctionLaw junction{std::span<const double>(all)};
    const double ampere = ratedAmpere > 0 ? ratedAmpere : kJunctionAmpere;
    const double shiftVolt = share * junction.forwardVoltAt(ampere);
    return all[static_cast<std::size_t>(figure)] * std::exp(-shiftVolt / junction.emissionVolt());
}

/// Whether a hand sets the supply's voltage and a display shows it.
bool isSetByHand(const Part& part) {
    return std::ranges::any_of(
        part.kind->values, [](const ValueSpec& value) { return value.unit == "V" && value.maximum > value.minimum; });
}

double ofResistance(const Part& part) {
    constexpr double kTrack = 0.2;  // potentiometers are sold with 20 % (common practice)
    const int own = part.kind->valueIndex(kOwnTolerance);
    return own >= 0 ? part.value(own) : kTrack;
}
double ofSupply(const Part& part) {
    constexpr double kSetByHand =
        0.01;                        // displays of bench supplies show half a per cent and two digits (common practice)
    constexpr double kFixed = 0.05;  // 4.75 to 5.25 V at the port: USB 2.0 specification, 7.2.2 (from memory);
                                     // fresh cells lie as close together (from memory)
    return isSetByHand(part) ? kSetByHand : kFixed;
}
double ofJunction(const Part&) { return 0.1; }     // LEDs and diodes of one type, about 0.2 V of 2 V (from memory)
double ofFilament(const Part&) { return 0.1; }     // current of small lamps at their rated voltage (from memory)
double ofZener(const Part&) { return 0.05; }       // 4.8 to 5.4 V: data sheets of BZX79-C5V1 and BZX55-C5V1
double ofThreshold(const Part&) { return 0.4; }    // 0.8 to 3.0 V about 2.1 V: onsemi 2N7000/D
double ofPhotocell(const Part&) { return 0.33; }   // 10 to 20 kohm at 10 lx for one type (hobby tables)
double ofThermistor(const Part&) { return 0.05; }  // sold with 2, 3 and 5 %: Vishay NTCLE100E3
double ofCoil(const Part&) { return 0.1; }         // 70 ohm +/- 10 %: Songle SRD data sheet
double ofGain(const Part&) { return 0.5; }         // the gain of small transistors of one type (common practice)

struct Rule {
    std::string_view element, parameter, what;
    double (*tolerance)(const Part& part);
    double (*moved)(const std::vector<double>&, int, double, double);
};

constexpr std::array kRules = {
    Rule{"resistance", "resistance", "resistance", ofResistance, timesShare},
    Rule{"supply", "voltage", "voltage", ofSupply, timesShare},
    Rule{"junction", "saturationCurrent", "forward voltage", ofJunction, shiftedSaturation},
    Rule{"filament", "current", "current", ofFilament, timesShare},
    Rule{"armature", "coilResistance", "resistance", ofCoil, timesShare},
    Rule{"transistor", "gain", "gain", ofGain, timesShare},
    Rule{"breakdown", "breakdownVoltage", "zener voltage", ofZener, timesShare},
    Rule{"field-effect", "thresholdVoltage", "threshold", ofThreshold, timesShare},
    Rule{"photo-resistance", "resistanceAt10Lux", "resistance", ofPhotocell, timesShare},
    Rule{"thermal-resistance", "resistanceAt25", "resistance", ofThermistor, timesShare},
};

int parameterIndex(const ElementKind& element, std::string_view name) {
    const auto found = std::ranges::find(element.parameters, name, &ElementParameter::name);
    return static_cast<int>(found - element.parameters.begin());
}

bool readsSomething(const PartKind& kind) {
    return std::ranges::any_of(kind.model, [](const ElementSpec& spec) { return !spec.reads.empty(); });
}

}  // namespace

std::vector<Uncertain> uncertainOf(const Bench& bench) {
    std::vector<Uncertain> all;
    for (int index = 0; index < static_cast<int>(bench.parts.size()); ++index) {
        const Part& part = bench.parts[static_cast<std::size_t>(index)];
        if (readsSomething(*part.kind)) continue;
        for (const Rule& rule : kRules) {
            Uncertain one{index, rule.what, 0, {}, rule.moved};
            for (int spec = 0; spec < static_cast<int>(part.kind->model.size()); ++spec) {
                const ElementKind* element = findElement(part.kind->model[static_cast<std::size_t>(spec)].element);
                if (element->name != rule.element) continue;
                one.figures.push_back({spec, parameterIndex(*element, rule.parameter)});
            }
            one.tolerance = rule.tolerance(part);
            if (!one.figures.empty() && one.tolerance > 0) all.push_back(std::move(one));
        }
    }
    return all;
}

}  // namespace tiepoint
