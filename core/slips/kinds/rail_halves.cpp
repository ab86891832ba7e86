// A rail that is in two halves, while it is taken for one. Forwards the board in use has broken rails where the plan's run through; backwards a
// jumper bridges the break.

#include "core/slips/kinds/kinds.h"
#include "core/slips/rail_ties.h"
#include "core/slips/search.h"
#include "core/words/words.h"

namespace tiepoint {
namespace {

constexpr double kAllShare = 0.9;

void findWholeRails(SlipSearch& search) {
    for (const Board& board : search.bench().boards) {
        if (board.rails != Rails::Through || !board.kind->hasRails()) continue;
        BenchChange change;
        change.rails.push_back({board.id, Rails::Split});
        search.offer(std::move(change), 0);
    }
}

void findBreaks(SlipSearch& search) {
    for (const int index : search.scope().boards()) {
        const Board& board = search.bench().boards[static_cast<std::size_t>(index)];
        if (board.rails != Rails::Split) continue;
        std::vector<TieWays> breaks;
        for (const Line rail : {Line::TopPlus, Line::TopMinus, Line::BottomPlus, Line::BottomMinus}) {
            if (const auto bridge = bridgeOf(search.ground(), board, rail)) breaks.push_back(*bridge);
        }
        for (const auto& bridge : breaks) offerTies(search, {bridge}, 1);
        if (breaks.size() > 1) offerTies(search, breaks, kAllShare);
    }
}

void searchRailHalves(SlipSearch& search) { search.backwards() ? findBreaks(search) : findWholeRails(search); }

std::string toldRailHalves(const Bench&, const Slip& slip) {
    const std::string& board = slip.wrong.rails.empty() ? std::get<Hole>(slip.right.added.front().ends[0]).board
                                                        : slip.wrong.rails.front().board;
    return say("slip.rail-halves", {{"board", board}});
}

std::string mendRailHalves(const Bench& bench, const Slip& slip) {
    if (!slip.right.rails.empty()) return say("slip.rail-halves.mend", {{"board", slip.right.rails.front().board}});
    return joinWords(bench, slip);
}

}  // namespace

const SlipKind kRailHalves{"rail-halves", 5, "slip.rail-halves.seen", false, searchRailHalves, toldRailHalves,
                           mendRailHalves};

}  // namespace tiepoint
