// A switch that always conducts: all its sides are in one strip. A push button turned by a quarter on one side of the gap has legs of both
// pairs in one strip, a slide switch turned by a quarter has all its legs there.

#include "core/edit/placement.h"
#include "core/findings/rules.h"
#include "core/findings/turn_astride.h"

#include <fmt/format.h>

#include <algorithm>
#include <set>

namespace tiepoint {
namespace {

/// The strips that a lead's metal inside the part reaches: its own, and those of the legs that it is joined to.
std::set<int> stripsOf(const Layout& layout, int part, int lead) {
    std::set<int> strips;
    for (const int own : joinedTo(*layout.bench->parts[part].kind, lead)) {
        const int hole = layout.holeOfLead[layout.leadIndex(part, own)];
        if (hole >= 0) strips.insert(layout.stripOfHole[hole]);
    }
    return strips;
}

/// Whether every contact of the part has both its sides in one strip: no throw of it can part anything. A jumper that goes round a switch
/// is another matter: it may be there for a while.
bool isAlwaysClosed(const Layout& layout, int part) {
    const PartKind& kind = *layout.bench->parts[part].kind;
    return isSwitch(kind) && std::ranges::all_of(kind.model, [&](const ElementSpec& spec) {
               const int from = kind.leadIndex(spec.from), to = kind.leadIndex(spec.to);
               if (from < 0 || to < 0) return false;
               const auto one = stripsOf(layout, part, from), other = stripsOf(layout, part, to);
               return std::ranges::any_of(one, [&](int strip) { return other.contains(strip); });
           });
}

void proposeTurns(const Bench& bench, const Part& part, Suspicion& found) {
    for (const int quarters : {1, 3}) {
        const Part round = turned(bench, part, quarters);
        if (round.leads == part.leads) continue;
        found.proposals.push_back(
            {fmt::format("Turn {} by a quarter", part.id), {"Turn " + part.id, {ReplacePart{round}}}});
        for (const int columns : {0, -1, 1, -2, 2, -3, 3}) {
            for (const int rows : {0, -1, 1, -2, 2}) {
                const auto aside = shifted(bench, round, columns, rows);
                if (!aside) continue;
                found.proposals.push_back({fmt::format("Turn {} by a quarter and move it", part.id),
                                           {"Turn " + part.id, {ReplacePart{*aside}}}});
            }
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
        found.finding.text =
            fmt::format("{} is always closed (joined, current passes), {}: the board already joins all its legs.",
                        part.id, part.kind->hasCap ? "pressed or not" : "wherever it stands");
        found.finding.figures = {{"voltage", 0}};
        found.proposals = astrideMends(examination.layout(), index);
        if (found.proposals.empty()) proposeTurns(examination.bench(), part, found);
        all.push_back(std::move(found));
    }
    return all;
}

}  // namespace tiepoint
