// More heat than a part bears: usually a resistor of too small a value for its voltage, or of too small a body.

#include "core/base/quantity.h"
#include "core/findings/figure_words.h"
#include "core/findings/over_limit.h"
#include "core/findings/resistor_mend.h"
#include "core/findings/rules.h"
#include "core/findings/trial.h"
#include "core/parts/preferred.h"
#include "core/words/words.h"

namespace tiepoint {
namespace {

constexpr int kPowerTries = 3;

/// At the same voltage the heat falls as the resistance grows.
void proposeResistance(const Examination& examination, const Part& part, const Excess& excess, Suspicion& found) {
    const int value = resistanceValue(*part.kind);
    if (value < 0) return;
    const ValueSpec& spec = part.kind->values[value];
    for (const double ohm : examination.drawer().from(part.value(value) * excess.share.share(), kPowerTries)) {
        if (ohm > spec.maximum) return;
        found.proposals.push_back({say("mend.take", {{"value", formatSetting(ohm, "ohm")}, {"part", part.id}}),
                                   setValueEdit(examination.bench(), part.id, spec.name, ohm)});
    }
}

/// A larger body, where the kind offers one.
void proposeBody(const Bench& bench, const Part& part, const Excess& excess, Suspicion& found) {
    for (const ValueSpec& spec : part.kind->values) {
        if (spec.unit != "W") continue;
        for (const double watt : spec.allowed) {
            if (watt <= excess.share.figure) continue;
            found.proposals.push_back({say("mend.takeBody", {{"value", formatSetting(watt, "W")}, {"part", part.id}}),
                                       setValueEdit(bench, part.id, spec.name, watt)});
            return;
        }
    }
}

}  // namespace

Suspicions findOverPower(const Examination& examination) {
    Suspicions all;
    for (const Excess& excess : excesses(examination, "power")) {
        const Part& part = examination.part(excess.part);
        Suspicion found;
        found.finding.parts = {part.id};
        found.finding.holes = holesOf(part);
        found.finding.text = saidOf(say("finding.over.power", {{"part", part.id},
                                                               {"power", excessInWords(excess)},
                                                               {"limit", formatSetting(excess.share.limit, "W")}}),
                                    *excess.position);
        addFigure(found.finding, "power", excess.shown(), excess.share.limit);
        proposeResistance(examination, part, excess, found);
        proposeBody(examination.bench(), part, excess, found);
        all.push_back(std::move(found));
    }
    return all;
}

}  // namespace tiepoint
