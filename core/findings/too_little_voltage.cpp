// An LED, or several in a row, that the supply can't light: together they need more voltage than it gives. Found by trying a larger
// supply, so that it is said only where voltage is what lacks.

#include "core/base/quantity.h"
#include "core/findings/figure_words.h"
#include "core/findings/rules.h"
#include "core/words/words.h"

#include <fmt/format.h>

#include <algorithm>

namespace tiepoint {
namespace {

/// What supplies on a bench are usually set to (common practice).
constexpr double kUsualSupplies[] = {6, 9, 12, 15};

/// Settings that raise a supply: its voltage, or its number of cells.
std::vector<Mend> raises(const Bench& bench, const Part& supply) {
    std::vector<Mend> mends;
    if (const int value = supply.kind->valueIndex("voltage"); value >= 0) {
        for (const double volt : kUsualSupplies) {
            if (volt <= supply.value(value) || volt > supply.kind->values[value].maximum) continue;
            mends.push_back({say("mend.set", {{"part", supply.id}, {"value", formatSetting(volt, "V")}}),
                             setValueEdit(bench, supply.id, "voltage", volt)});
        }
    }
    if (const int value = supply.kind->valueIndex("count"); value >= 0) {
        for (const double count : supply.kind->values[value].allowed) {
            if (count <= supply.value(value)) continue;
            mends.push_back({say("mend.takeCells", {{"count", fmt::format("{}", count)}, {"supply", supply.id}}),
                             setValueEdit(bench, supply.id, "count", count)});
        }
    }
    return mends;
}

/// The potential that pushes a dark light forwards, in the position where it is largest.
Figure forwardVolt(const Examination& examination, int light) {
    Figure most;
    double mostVolt = 0;
    for (const Position& position : examination.positions()) {
        const int anode = position.snapshot->layout->leadIndex(light, 0);
        const double volt = position.snapshot->leadVoltage(anode) - position.snapshot->leadVoltage(anode + 1);
        if (!(volt > mostVolt)) continue;
        mostVolt = volt;
        most = position.snapshot->shown().leadVolt(anode) - position.snapshot->shown().leadVolt(anode + 1);
    }
    return most;
}

}  // namespace

Suspicions findTooLittleVoltage(const Examination& examination) {
    Suspicions all;
    for (const int light : examination.darkLights()) {
        const Part& part = examination.part(light);
        const Figure volt = forwardVolt(examination, light);
        if (!volt.isKnown()) continue;
        for (const Part& supply : examination.bench().parts) {
            if (!supply.kind->isSupply) continue;
            for (Mend& mend : raises(examination.bench(), supply)) {
                Suspicion found;
                found.finding.parts = {part.id, supply.id};
                found.finding.holes = holesOf(part);
                found.finding.text =
                    say("finding.tooLittle", {{"supply", supply.id}, {"light", part.id}, {"voltage", volt.text()}});
                addFigure(found.finding, "voltage", volt);
                found.darkens = {part.id};
                found.proposals.push_back(std::move(mend));
                all.push_back(std::move(found));
            }
        }
    }
    return all;
}

}  // namespace tiepoint
