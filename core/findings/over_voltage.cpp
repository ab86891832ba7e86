// More voltage than a part bears: across an open contact, or backwards across an LED or a diode.

#include "core/base/quantity.h"
#include "core/findings/figure_words.h"
#include "core/findings/over_limit.h"
#include "core/findings/rules.h"
#include "core/findings/trial.h"
#include "core/words/words.h"

#include <algorithm>
#include <cmath>

namespace tiepoint {
namespace {

/// A lower setting for each supply that has one, in whole volts.
void proposeLowerSupplies(const Bench& bench, double limitVolt, Suspicion& found) {
    const double volt = std::floor(limitVolt);
    for (const Part& part : bench.parts) {
        const int value = part.kind->valueIndex("voltage");
        if (!part.kind->isSupply || value < 0 || part.value(value) <= volt || volt < part.kind->values[value].minimum)
            continue;
        found.proposals.push_back({say("mend.set", {{"part", part.id}, {"value", formatSetting(volt, "V")}}),
                                   setValueEdit(bench, part.id, "voltage", volt)});
    }
}

/// The voltage across the part, or between two of its leads; forwards or the wrong way round.
std::string tooMuchVoltage(const Part& part, const Excess& excess) {
    const Rating& rating = *excess.share.rating;
    const bool reverse = rating.quantity == "reverseVoltage";
    const std::string volt = excessInWords(excess), limit = formatSetting(excess.share.limit, "V");
    if (rating.leads.empty())
        return say(reverse ? "finding.over.reverse" : "finding.over.voltage",
                   {{"part", part.id}, {"voltage", volt}, {"limit", limit}});
    return say(reverse ? "finding.over.reverseBetween" : "finding.over.voltageBetween",
               {{"part", part.id},
                {"voltage", volt},
                {"one", part.kind->leads[rating.leads[0]].name},
                {"other", part.kind->leads[rating.leads[1]].name},
                {"limit", limit}});
}

void addExcesses(const Examination& examination, std::string_view quantity, Suspicions& all) {
    for (const Excess& excess : excesses(examination, quantity)) {
        const Part& part = examination.part(excess.part);
        Suspicion found;
        found.finding.parts = {part.id};
        found.finding.holes = holesOf(part);
        found.finding.text = saidOf(tooMuchVoltage(part, excess), *excess.position);
        addFigure(found.finding, "voltage", excess.shown(), excess.share.limit);
        proposeLowerSupplies(examination.bench(), excess.share.limit, found);
        all.push_back(std::move(found));
    }
}

}  // namespace

Suspicions findOverVoltage(const Examination& examination) {
    Suspicions all;
    addExcesses(examination, "voltage", all);
    addExcesses(examination, "reverseVoltage", all);
    return all;
}

}  // namespace tiepoint
