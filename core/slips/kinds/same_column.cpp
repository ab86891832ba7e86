// Both legs of a part in one column: the metal under it bypasses the part.
//
// Backwards the right column is unknown: it is one that something else is in, as near as the part reaches.

#include "core/slips/kinds/kinds.h"
#include "core/slips/reach.h"
#include "core/slips/search.h"
#include "core/slips/slip_words.h"
#include "core/words/words.h"

namespace tiepoint {
namespace {

/// Who sees both legs of a part in one column has found a slip: no circuit needs that. So its mends weigh more than the kind does, less
/// the farther the leg has to go.
constexpr double kSurely = 6, kFarther = 0.25;

bool isBending(const Ground& ground, int part) {
    return ground.part(part).kind->package->reach == Reach::Bending && ground.tipsOfPart(part).size() == 2;
}

const Tip& tipAt(const Ground& ground, int part, std::size_t which) {
    return ground.tips()[static_cast<std::size_t>(ground.tipsOfPart(part)[which])];
}

void offerColumns(SlipSearch& search, const Tip& tip, int away) {
    const Ground& ground = search.ground();
    Hole from = ground.holeAt(tip.hole);
    if (isRail(from.line)) {  // both legs in one rail: one belongs into a column near it
        const bool top = from.line == Line::TopPlus || from.line == Line::TopMinus;
        from = {from.board, top ? Line::A : Line::J, ground.boardOf(from).kind->railColumn(from.number)};
    }
    const auto offer = [&](const std::vector<Hole>& holes, int places) {
        for (const Hole& to : holes) {
            if (!ground.tipsIn(ground.stripOf(ground.holeIndex(to))).empty())
                search.offerMove(tip, to, away, kSurely / (1 + kFarther * places));
        }
    };
    const int farthest = static_cast<int>(ground.part(tip.thing).kind->package->maxSpan);
    for (int places = 0; places <= farthest; ++places) offer(holesAlong(ground, from, places), places);
    offer(holesOverGap(ground, from), 1);
    const Hole outermost{from.board, from.line <= Line::E ? Line::A : Line::J, from.number};
    const std::vector<Hole> rails = holesBetweenRowAndRail(ground, outermost);
    search.offerMove(tip, rails, away, kSurely / 2);
}

void searchSameColumn(SlipSearch& search) {
    const Ground& ground = search.ground();
    search.eachPart([&](int part, int away) {
        if (!isBending(ground, part)) return;
        const Tip &one = tipAt(ground, part, 0), &other = tipAt(ground, part, 1);
        if (search.backwards()) {
            if (one.strip != other.strip) return;
            offerColumns(search, one, away);
            offerColumns(search, other, away);
            return;
        }
        search.offerMove(one, ground.holeAt(other.hole), away);
        search.offerMove(other, ground.holeAt(one.hole), away);
    });
}

std::string toldSameColumn(const Bench& bench, const Slip& slip) {
    const Misplaced tip = misplacedBy(bench, slip).front();
    return say("slip.same-column", {{"part", partOf(bench, slip).id},
                                    {"tip", tip.tip},
                                    {"here", placeName(bench, tip.wrong)},
                                    {"there", placeName(bench, tip.right)}});
}

}  // namespace

const SlipKind kSameColumn{"same-column",  5,       "slip.same-column.seen", false, searchSameColumn,
                           toldSameColumn, putWords};

}  // namespace tiepoint
