// A switch that always conducts: all its sides are in one strip. A push button turned by a quarter on one side of the gap has legs of both
// pairs in one strip, a slide switch turned by a quarter has all its legs there.

#include "core/edit/placement.h"
#include "core/findings/rules.h"
#include "core/findings/turn_astride.h"
#include "core/words/words.h"

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
               const int from = kind.leadIndex(spec.from()), to = kind.leadIndex(spec.to());
               if (from < 0 || to < 0) return false;
               const auto one = stripsOf(layout, part, from), other = stripsOf(layout, part, to);
               return std::ranges::any_of(one, [&](int strip) { return other.contains(strip); });
           });
}

void proposeTurns(const Bench& bench, const Part& part, Suspicion& found) {
    for (const int quarters : {1, 3}) {
        const Part round = turned(bench, part, quarters);
        if (round.leads == part.leads) continue;
        found.proposals.push_back({say("mend.turnQuarter", {{"part", part.id}}),
                                   {say("history.turn", {{"thing", part.id}}), {ReplacePart{round}}}});
        for (const int columns : {0, -1, 1, -2, 2, -3, 3}) {
            for (const int rows : {0, -1, 1, -2, 2}) {
                const auto aside = shifted(bench, round, columns, rows);
                if (!aside) continue;
                found.proposals.push_back({say("mend.turnQuarterMove", {{"part", part.id}}),
                                           {say("history.turn", {{"thing", part.id}}), {ReplacePart{*aside}}}});
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
            say(part.kind->hasCap ? "finding.closed.button" : "finding.closed.switch", {{"part", part.id}});
        found.finding.figures = {{"voltage", 0}};
        found.proposals = astrideMends(examination.layout(), index);
        if (found.proposals.empty()) proposeTurns(examination.bench(), part, found);
        all.push_back(std::move(found));
    }
    return all;
}

}  // namespace tiepoint
