// A push button that always conducts: both its sides are in one net. Turned by a quarter on one side of the gap, legs of both pairs
// share strips.

#include "core/findings/rules.h"
#include "core/findings/trial.h"

#include "core/edit/placement.h"

#include <fmt/format.h>

#include <algorithm>

namespace tiepoint {
namespace {

bool isAlwaysClosed(const Layout& layout, int part) {
    const PartKind& kind = *layout.bench->parts[part].kind;
    return std::ranges::any_of(kind.model, [&](const ElementSpec& spec) {
        const int from = kind.leadIndex(spec.from), to = kind.leadIndex(spec.to);
        return spec.whenHeld && from >= 0 && to >= 0 &&
               layout.netOfLead[layout.leadIndex(part, from)] == layout.netOfLead[layout.leadIndex(part, to)];
    });
}

void proposeTurns(const Bench& bench, const Part& part, Suspicion& found) {
    for (const int quarters : {1, 3}) {
        const Part round = turned(bench, part, quarters);
        if (round.leads == part.leads) continue;
        found.proposals.push_back({fmt::format("Turn {} by a quarter", part.id), {"Turn " + part.id, {ReplacePart{round}}}});
        for (const int columns : {-2, -1, 1, 2}) {
            const auto aside = shifted(bench, round, columns, 0);
            if (!aside) continue;
            found.proposals.push_back({fmt::format("Turn {} by a quarter and move it", part.id),
                                       {"Turn " + part.id, {ReplacePart{*aside}}}});
        }
    }
}

}  // namespace

Suspicions findAlwaysClosed(const Examination& examination) {
    Suspicions all;
    for (int index = 0; index < examination.partCount(); ++index) {
        if (!isAlwaysClosed(examination.layout(), index)) continue;
        const Part& part = examination.part(index);
        Suspicion found;
        found.finding.parts = {part.id};
        found.finding.holes = holesOf(part);
        found.finding.text = fmt::format(
            "{} is always closed (joined, current passes), pressed or not: both its sides are in the same metal.", part.id);
        found.finding.figures = {{"voltage", 0}};
        proposeTurns(examination.bench(), part, found);
        all.push_back(std::move(found));
    }
    return all;
}

}  // namespace tiepoint
