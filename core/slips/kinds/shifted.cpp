// A whole part one or two columns beside its place.

#include "core/slips/kinds/kinds.h"
#include "core/slips/search.h"
#include "core/slips/slip_words.h"
#include "core/words/words.h"

#include <algorithm>
#include <cstdlib>

namespace tiepoint {
namespace {

constexpr double kTwoColumnsShare = 0.3;

BenchChange shiftOf(const Ground& ground, const Part& part, int columns) {
    BenchChange change;
    for (std::size_t lead = 0; lead < part.leads.size(); ++lead) {
        if (!part.leads[lead]) continue;
        Hole to = *part.leads[lead];
        to.number += columns;
        if (isRail(to.line) || ground.holeIndex(to) < 0) return {};
        change.leads.push_back({part.id, static_cast<int>(lead), to});
    }
    return change;
}

void searchShifted(SlipSearch& search) {
    search.eachPart([&](int index, int away) {
        const Part& part = search.ground().part(index);
        if (standsOnTable(part)) return;
        for (const int columns : {1, -1, 2, -2}) {
            BenchChange change = shiftOf(search.ground(), part, columns);
            if (!change.leads.empty())
                search.offer(std::move(change), away, std::abs(columns) > 1 ? kTwoColumnsShare : 1);
        }
    });
}

int columnsAstray(const Slip& slip) {
    return slip.wrong.leads.front().to->number - slip.right.leads.front().to->number;
}

std::string toldShifted(const Bench& bench, const Slip& slip) {
    const int columns = columnsAstray(slip);
    return say(columns > 0 ? "slip.shifted.right" : "slip.shifted.left",
               {{"part", partOf(bench, slip).id}, {"columns", std::abs(columns)}});
}

std::string mendShifted(const Bench& bench, const Slip& slip) {
    const int columns = -columnsAstray(slip);
    return say(columns > 0 ? "slip.shifted.mendRight" : "slip.shifted.mendLeft",
               {{"part", partOf(bench, slip).id}, {"columns", std::abs(columns)}});
}

}  // namespace

const SlipKind kShifted{"shifted", 5, "slip.shifted.seen", true, searchShifted, toldShifted, mendShifted};

}  // namespace tiepoint
