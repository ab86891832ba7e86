#include "core/slips/rail_ties.h"

#include "core/slips/slip_words.h"
#include "core/words/words.h"

#include <algorithm>

namespace tiepoint {
namespace {

constexpr std::size_t kHolesOfTie = 5;

/// Free holes of a rail's half near a place of it; none where nothing is plugged into the half, or all of it is taken.
std::vector<Hole> freeNear(const Ground& ground, const Hole& hole) {
    const int index = ground.holeIndex(hole);
    if (index < 0 || ground.tipsIn(ground.stripOf(index)).empty()) return {};
    return ground.freeIn(hole, kHolesOfTie);
}

TieWays waysBetween(const Ground& ground, const Hole& one, const Hole& other) {
    TieWays ways;
    const auto netOf = [&](const Hole& hole) { return ground.netOfStrip(ground.stripOf(ground.holeIndex(hole))); };
    const std::vector<Hole> ends = freeNear(ground, other);
    for (const Hole& from : freeNear(ground, one)) {
        for (const Hole& to : ends) {
            if (netOf(from) != netOf(to)) ways.push_back({from, to});
        }
    }
    return ways;
}

}  // namespace

std::vector<TieWays> tiesOf(const Ground& ground, const RailOf& one, const RailOf& other) {
    const auto endsOf = [&](const RailOf& rail) {
        const Board& board = ground.boardOf({rail.board, rail.line, 1});
        std::vector<Hole> ends{{rail.board, rail.line, 1}};
        if (board.rails == Rails::Split) ends.push_back({rail.board, rail.line, board.kind->railHoles});
        return ends;
    };
    std::vector<TieWays> ties;
    for (const Hole& from : endsOf(one)) {
        for (const Hole& to : endsOf(other)) {
            if (TieWays ways = waysBetween(ground, from, to); !ways.empty()) ties.push_back(std::move(ways));
        }
    }
    return ties;
}

std::optional<TieWays> bridgeOf(const Ground& ground, const Board& board, Line rail) {
    const int half = board.kind->railHoles / 2;
    TieWays ways = waysBetween(ground, {board.id, rail, half}, {board.id, rail, half + 1});
    return ways.empty() ? std::nullopt : std::optional(std::move(ways));
}

void offerTies(SlipSearch& search, const std::vector<TieWays>& ties, double share) {
    constexpr int kAway = 2;  // rails reach everywhere
    const Ground& ground = search.ground();
    std::vector<std::array<JumperEnd, 2>> places;
    for (const TieWays& tie : ties) places.push_back(tie.front());  // the ways of a tie give one circuit
    std::size_t work = 1;
    const bool wanted = search.isWanted(ground.circuit().after(ground.joining(places), work));
    ground.count(work);
    if (!wanted) return;
    places.clear();
    for (const TieWays& tie : ties) {
        const auto free =
            std::ranges::find_if(tie, [&](const auto& way) { return ground.canBuild(ground.joining({way})); });
        if (free == tie.end()) return;
        places.push_back(*free);
    }
    search.offer(ground.joining(places), kAway, share);
}

std::string joinWords(const Bench& bench, const Slip& slip) {
    std::vector<std::string> ties;
    for (const Jumper& jumper : slip.right.added)
        ties.push_back(say("slip.join.ends",
                           {{"one", placeName(bench, jumper.ends[0])}, {"other", placeName(bench, jumper.ends[1])}}));
    return say(ties.size() == 1 ? "slip.join" : "slip.joinEach", {{"ends", sayList(ties, "slip.join.more")}});
}

}  // namespace tiepoint
