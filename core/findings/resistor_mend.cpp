// The junctions of a chain hold their voltage while the current changes, so what is left for the resistance is known beforehand:
// that voltage, divided by the current wanted, is the value; the next preferred one above is safe.

#include "core/findings/resistor_mend.h"

#include "core/base/quantity.h"
#include "core/findings/over_limit.h"
#include "core/words/words.h"

#include <algorithm>
#include <cmath>

namespace tiepoint {
namespace {

constexpr double kSameCurrent = 0.01;
constexpr int kTries = 3;

const ValueSpec& specOf(const Part& part) { return part.kind->values[resistanceValue(*part.kind)]; }

double voltageOver(const Snapshot& snapshot, int part) {
    const int first = snapshot.layout->firstLead[part];
    return std::abs(snapshot.leadVoltage(first) - snapshot.leadVoltage(first + 1));
}

/// The largest voltage that any supply of the bench gives.
double supplyVolt(const Snapshot& snapshot) {
    double most = 0;
    for (const ElementState element : snapshot.solution.elements()) {
        if (!snapshot.layout->bench->parts[element.part].kind->isSupply || !element.closed) continue;
        for (const auto& [name, figure] : element.constants) {
            if (name == "voltage") most = std::max(most, figure);
        }
    }
    return most;
}

/// A light's usual voltage, or nothing to take off for other parts.
double ownVolt(const Part& part) {
    for (std::size_t v = 0; v < part.kind->values.size(); ++v) {
        const ValueSpec& spec = part.kind->values[v];
        if (spec.type != ValueType::Choice) continue;
        const auto& constants = spec.choices[static_cast<std::size_t>(part.value(static_cast<int>(v)))].constants;
        if (const auto found = constants.find("forwardVoltage"); found != constants.end()) return found->second;
    }
    return 0;
}

/// What a chain's lights leave for a resistor.
double voltageLeft(const Snapshot& snapshot, int part) {
    const Bench& bench = *snapshot.layout->bench;
    double volt = supplyVolt(snapshot) - ownVolt(bench.parts[part]);
    for (const int other : chainOf(snapshot, part)) volt -= ownVolt(bench.parts[other]);
    return volt;
}

}  // namespace

std::vector<Mend> resistanceMends(const Snapshot& snapshot, int part, double targetAmpere,
                                  const ResistorDrawer& drawer) {
    const Bench& bench = *snapshot.layout->bench;
    std::vector<Mend> mends;
    for (const int other : chainOf(snapshot, part)) {
        const Part& resistor = bench.parts[other];
        if (resistanceValue(*resistor.kind) < 0) continue;
        const ValueSpec& spec = specOf(resistor);
        // Reckoned from the supply: a chain in current limit, or one nearly without current, shows another voltage now.
        const double left = voltageLeft(snapshot, part);
        const double least = (left > 0 ? left : voltageOver(snapshot, other)) / targetAmpere;
        for (const double ohm : drawer.from(least, kTries)) {
            if (ohm < spec.minimum || ohm > spec.maximum) continue;
            mends.push_back({say("mend.take", {{"value", formatSetting(ohm, "ohm")}, {"part", resistor.id}}),
                             setValueEdit(bench, resistor.id, spec.name, ohm)});
        }
    }
    return mends;
}

std::vector<Mend> insertionMends(const Snapshot& snapshot, int part, double targetAmpere,
                                 const ResistorDrawer& drawer) {
    const Bench& bench = *snapshot.layout->bench;
    std::vector<Mend> mends;
    const double ampere = currentThrough(snapshot, part).inAmpere;
    const double volt = voltageLeft(snapshot, part);
    const PartKind& kind = usualResistor();
    if (!(volt > 0)) return mends;
    const std::vector<double> held = drawer.from(volt / targetAmpere, 1);
    if (held.empty()) return mends;
    const double ohm = held.front();
    for (std::size_t j = 0; j < bench.jumpers.size(); ++j) {
        const Jumper& jumper = bench.jumpers[j];
        const bool carries =
            std::abs(std::abs(snapshot.jumperCurrent(static_cast<int>(j))) - ampere) < kSameCurrent * ampere;
        const Hole* from = std::get_if<Hole>(&jumper.ends[0]);
        const Hole* to = std::get_if<Hole>(&jumper.ends[1]);
        if (!carries || from == nullptr || to == nullptr) continue;
        Part resistor = makePart(kind, freeId(bench, kind.prefix));
        resistor.leads = {*from, *to};
        resistor.values[resistanceValue(kind)] = ohm;
        Edit edit{say("history.insert", {{"part", resistor.id}, {"jumper", jumper.id}}),
                  {Remove{jumper.id}, AddPart{resistor}}};
        mends.push_back(
            {say("mend.insert", {{"value", formatSetting(ohm, "ohm")}, {"jumper", jumper.id}}), std::move(edit)});
    }
    return mends;
}

}  // namespace tiepoint
