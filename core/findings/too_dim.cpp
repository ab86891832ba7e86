// A light far below a visible current because its resistor is too large, told with the bands that are there and those that would suit.

#include "core/base/quantity.h"
#include "core/bench/resolve.h"
#include "core/findings/figure_words.h"
#include "core/findings/over_limit.h"
#include "core/findings/resistor_mend.h"
#include "core/findings/rules.h"
#include "core/findings/trial.h"
#include "core/parts/preferred.h"
#include "core/words/words.h"

#include <algorithm>

namespace tiepoint {
namespace {

/// Below this an LED is hard to see in a lit room: a fiftieth of its usual current (common practice).
constexpr double kDimAmpere = 4e-4;
/// What a mend aims at: half the usual current.
constexpr double kTargetShare = 0.5;
/// Less than this across a resistor is next to nothing of any supply.
constexpr double kHoldingBackVolt = 0.1;
/// Less than this is no dim light but an open circuit.
constexpr double kLeastAmpere = 1e-7;

/// A text about a resistance with its bands after it, where it has some.
std::string withBands(std::string text, double ohm, double tolerance) {
    const auto bands = colourBands(ohm, tolerance);
    if (!bands) return text;
    std::string names;
    for (std::size_t band = 0; band + 1 < bands->size(); ++band)  // the last is the tolerance
        names += (names.empty() ? "" : " ") + std::string(bandName((*bands)[band]));
    return say("finding.bands", {{"value", text}, {"bands", names}});
}

/// The position in which the part carries most.
const Position& brightest(const Examination& examination, int part) {
    return *std::ranges::max_element(examination.positions(), {}, [&](const Position& position) {
        return currentThrough(*position.snapshot, part).inAmpere;
    });
}

/// The largest track of a knob in a chain; 0 without one.
double trackOf(const Bench& bench, const std::vector<int>& chain) {
    double most = 0;
    for (const int index : chain) {
        const Part& part = bench.parts[index];
        const bool knob =
            std::ranges::any_of(part.kind->state, [](const ValueSpec& spec) { return spec.type == ValueType::Number; });
        for (std::size_t v = 0; knob && v < part.values.size(); ++v) {
            if (part.kind->values[v].unit == "ohm") most = std::max(most, part.value(static_cast<int>(v)));
        }
    }
    return most;
}

/// The largest resistance in a light's chain; -1 if there is none, or if a knob with more is in it that may be meant to dim.
int resistorOf(const Snapshot& snapshot, int light) {
    const Bench& bench = *snapshot.layout->bench;
    const auto chain = chainOf(snapshot, light);
    int largest = -1;
    double most = trackOf(bench, chain);
    for (const int other : chain) {
        const Part& part = bench.parts[other];
        const int value = resistanceValue(*part.kind);
        if (value < 0 || part.value(value) <= most) continue;
        most = part.value(value);
        largest = other;
    }
    return largest;
}

}  // namespace

Suspicions findTooDim(const Examination& examination) {
    Suspicions all;
    for (int light = 0; light < examination.partCount(); ++light) {
        const Part& part = examination.part(light);
        if (!part.kind->needsResistor) continue;
        const Position& position = brightest(examination, light);
        const double ampere = currentThrough(*position.snapshot, light).inAmpere;
        if (examination.mostAmpere(light) >= kDimAmpere || !examination.decided()) continue;
        if (ampere >= kDimAmpere || ampere < kLeastAmpere || position.snapshot->status() != Status::Solved) continue;
        const int index = resistorOf(*position.snapshot, light);
        // A resistor that takes next to no voltage isn't what holds the current back.
        if (index < 0 ||
            ampere * examination.part(index).value(resistanceValue(*examination.part(index).kind)) < kHoldingBackVolt)
            continue;
        const Part& resistor = examination.part(index);
        const double ohm = resistor.value(resistanceValue(*resistor.kind));
        const int tolerance = resistor.kind->valueIndex("tolerance");
        const double share = tolerance >= 0 ? resistor.value(tolerance) : 0;
        const Figure shown = position.snapshot->shown().through(light).in;

        Suspicion found;
        found.finding.severity = ampere < kVisibleAmpere ? Severity::Fault : Severity::Remark;
        found.finding.parts = {part.id, resistor.id};
        found.finding.holes = holesOf(resistor);
        found.finding.text =
            saidOf(say("finding.dim", {{"light", part.id},
                                       {"current", shown.text()},
                                       {"resistorId", resistor.id},
                                       {"resistance", withBands(formatSetting(ohm, "ohm"), ohm, share)}}),
                   position);
        addFigure(found.finding, "current", shown);
        found.finding.figures.emplace_back("resistance", ohm);
        found.proposals =
            resistanceMends(*position.snapshot, light, kTargetShare * ratedCurrentAmpere(part), examination.drawer());
        for (Mend& mend : found.proposals) {
            const auto* taken = std::get_if<ReplacePart>(&mend.edit.operations.front());
            if (taken == nullptr || taken->part.id != resistor.id) continue;
            mend.text = withBands(mend.text, taken->part.value(resistanceValue(*resistor.kind)), share);
        }
        if (ampere < kVisibleAmpere) found.darkens = {part.id};
        all.push_back(std::move(found));
    }
    return all;
}

}  // namespace tiepoint
