// The wrong way round: a light, a diode or another part whose ends differ, and a supply with its leads exchanged.

#include "core/slips/exchangeable.h"
#include "core/slips/kinds/kinds.h"
#include "core/slips/search.h"
#include "core/slips/slip_words.h"
#include "core/words/words.h"

#include <algorithm>
#include <cmath>

namespace tiepoint {
namespace {

/// By lead: the lead in whose hole it is after half a turn; empty where the part can't lie so.
std::vector<int> halfTurnOf(const PartKind& kind) {
    const int count = static_cast<int>(kind.leads.size());
    std::vector<int> turned;
    if (kind.package->reach != Reach::Rigid) {
        if (count == 2) turned = {1, 0};
        return turned;
    }
    const auto& legs = kind.package->footprint;
    const auto [left, right] = std::ranges::minmax(legs, {}, &Point::x);
    const auto [top, bottom] = std::ranges::minmax(legs, {}, &Point::y);
    for (const Point leg : legs) {
        const Point to{left.x + right.x - leg.x, top.y + bottom.y - leg.y};
        const auto found = std::ranges::find_if(legs, [&](Point other) { return distance(other, to) < 0.1; });
        if (found == legs.end()) return {};
        turned.push_back(static_cast<int>(found - legs.begin()));
    }
    return turned;
}

void searchReversed(SlipSearch& search) {
    search.eachPart([&](int index, int away) {
        const Part& part = search.ground().part(index);
        const bool plugged = std::ranges::all_of(part.leads, [](const auto& lead) { return lead.has_value(); });
        if (!plugged || !hasDirection(*part.kind)) return;
        const std::vector<int> turned = halfTurnOf(*part.kind);
        BenchChange change;
        for (int lead = 0; lead < static_cast<int>(turned.size()); ++lead)
            change.leads.push_back({part.id, lead, part.leads[static_cast<std::size_t>(turned[lead])]});
        if (!change.leads.empty()) search.offer(std::move(change), away);
    });
}

std::string toldReversed(const Bench& bench, const Slip& slip) {
    const Part& part = partOf(bench, slip);
    const PlacedLead& first = slip.wrong.leads.front();
    return say(standsOnTable(part) ? "slip.reversed.leads" : "slip.reversed",
               {{"part", part.id}, {"lead", ownTipInWords(bench, first)}, {"place", placeName(bench, *first.to)}});
}

std::string mendReversed(const Bench& bench, const Slip& slip) {
    const Part& part = partOf(bench, slip);
    return say(standsOnTable(part) ? "slip.reversed.leadsMend" : "slip.reversed.mend", {{"part", part.id}});
}

}  // namespace

const SlipKind kReversed{"reversed", 14, "slip.reversed.seen", true, searchReversed, toldReversed, mendReversed};

}  // namespace tiepoint
