// Rails that should be tied and aren't: those of one sign at the two edges of a board, or of two boards.

#include "core/slips/kinds/kinds.h"
#include "core/slips/rail_ties.h"
#include "core/slips/reach.h"
#include "core/slips/search.h"
#include "core/slips/slip_words.h"
#include "core/words/words.h"

namespace tiepoint {
namespace {

constexpr double kBothShare = 0.8;

bool tiesRails(const Jumper& jumper) {
    const Hole *one = std::get_if<Hole>(&jumper.ends[0]), *other = std::get_if<Hole>(&jumper.ends[1]);
    if (one == nullptr || other == nullptr || !isRail(one->line) || !isRail(other->line)) return false;
    const bool isOneRail = one->board == other->board && one->line == other->line;
    return !isOneRail && isPlusRail(one->line) == isPlusRail(other->line);
}

void findTies(SlipSearch& search) {
    search.eachJumper([&](int index, int away) {
        const Jumper& jumper = search.ground().jumper(index);
        if (!tiesRails(jumper)) return;
        BenchChange change;
        change.removed.push_back(jumper);
        search.offer(std::move(change), away);
    });
}

void offerEach(SlipSearch& search, const std::vector<TieWays>& ties) {
    for (const TieWays& tie : ties) offerTies(search, {tie}, 1);
}

void findGapsBetween(SlipSearch& search, const std::string& one, const std::string& next) {
    for (const Line line : {Line::TopPlus, Line::TopMinus, Line::BottomPlus, Line::BottomMinus})
        offerEach(search, tiesOf(search.ground(), {one, line}, {next, line}));
}

/// Each board's rails with those of its other edge, and with the next board's.
void findGaps(SlipSearch& search) {
    const Ground& ground = search.ground();
    const auto& boards = search.bench().boards;
    for (const int board : search.scope().boards()) {
        const auto b = static_cast<std::size_t>(board);
        const auto plus = tiesOf(ground, {boards[b].id, Line::TopPlus}, {boards[b].id, Line::BottomPlus});
        const auto minus = tiesOf(ground, {boards[b].id, Line::TopMinus}, {boards[b].id, Line::BottomMinus});
        offerEach(search, plus);
        offerEach(search, minus);
        if (!plus.empty() && !minus.empty()) offerTies(search, {plus.front(), minus.front()}, kBothShare);
        if (b + 1 < boards.size()) findGapsBetween(search, boards[b].id, boards[b + 1].id);
        if (b > 0 && !search.scope().isWhole()) findGapsBetween(search, boards[b - 1].id, boards[b].id);
    }
}

void searchRailsApart(SlipSearch& search) { search.backwards() ? findGaps(search) : findTies(search); }

std::string toldRailsApart(const Bench& bench, const Slip& slip) {
    const Jumper& tie = slip.right.added.front();
    const Hole &one = std::get<Hole>(tie.ends[0]), &other = std::get<Hole>(tie.ends[1]);
    const auto name = [&](const Hole& hole) {
        return bench.boards.size() == 1
                   ? std::string(lineName(hole.line))
                   : say("slip.rails-apart.rail", {{"rail", lineName(hole.line)}, {"board", hole.board}});
    };
    return say(isPlusRail(one.line) ? "slip.rails-apart.plus" : "slip.rails-apart.minus",
               {{"one", name(one)}, {"other", name(other)}});
}

}  // namespace

const SlipKind kRailsApart{"rails-apart",  8,        "slip.rails-apart.seen", false, searchRailsApart,
                           toldRailsApart, joinWords};

}  // namespace tiepoint
