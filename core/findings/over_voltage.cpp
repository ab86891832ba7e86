// More voltage than a part bears: across an open contact, or backwards across an LED or a diode.

#include "core/base/quantity.h"
#include "core/findings/figure_words.h"
#include "core/findings/over_limit.h"
#include "core/findings/rules.h"
#include "core/findings/trial.h"

#include <fmt/format.h>

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
        found.proposals.push_back({fmt::format("Set {} to {}", part.id, formatSetting(volt, "V")),
                                   setValueEdit(bench, part.id, "voltage", volt)});
    }
}

/// "across it", "between its gate and its source", "across it the wrong way round".
std::string ratedPlaceInWords(const Part& part, const Rating& rating) {
    const bool reverse = rating.quantity == "reverseVoltage";
    std::string words = "across it";
    if (!rating.leads.empty())
        words = fmt::format("between its {} and its {}", part.kind->leads[rating.leads[0]].name,
                            part.kind->leads[rating.leads[1]].name);
    return reverse ? words + " the wrong way round" : words;
}

void addExcesses(const Examination& examination, std::string_view quantity, Suspicions& all) {
    for (const Excess& excess : excesses(examination, quantity)) {
        const Part& part = examination.part(excess.part);
        Suspicion found;
        found.finding.parts = {part.id};
        found.finding.holes = holesOf(part);
        found.finding.text =
            saidOf(fmt::format("{} has {} {}; its maximum is {}.", part.id, excessInWords(excess),
                               ratedPlaceInWords(part, *excess.share.rating), formatSetting(excess.share.limit, "V")),
                   *excess.position);
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
