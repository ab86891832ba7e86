#include "core/slips/search.h"

#include "core/base/stopping.h"
#include "core/slips/reach.h"

#include <algorithm>

namespace tiepoint {

void SlipSearch::turn() const {
    stopIfAsked();
    ground_.count(1);
}

void SlipSearch::offer(std::vector<BenchChange> ways, int away, double share) {
    if (ways.empty()) return;
    std::size_t work = 1;
    const std::uint64_t circuit = ground_.circuit().after(ways.front(), work);
    ground_.count(work);
    if (!isWanted(circuit)) return;
    SlipCandidate candidate;
    candidate.slip.kind = &kind_;
    candidate.slip.made = backwards_;
    candidate.slip.weight = kind_.weight * share;
    candidate.slip.about = about_;
    candidate.slip.away = away;
    candidate.slip.circuit = circuit;
    candidate.ways = std::move(ways);
    found_.push_back(std::move(candidate));
}

/// Asked only where one circuit is looked for; else what is offered is judged once it is written down.
bool SlipSearch::leadsOn(const BenchChange& change) const {
    if (!wanted_) return true;
    std::size_t work = 1;
    const std::uint64_t circuit = ground_.circuit().after(change, work);
    ground_.count(work);
    return isWanted(circuit);
}

void SlipSearch::offerMove(const Tip& tip, const Hole& to, int away, double share) {
    constexpr std::size_t kHolesOfColumn = 5;
    const int hole = ground_.holeIndex(to);
    if (hole < 0 || ground_.stripOf(hole) == tip.strip) return;
    if (!leadsOn(ground_.moved(tip, to))) return;
    std::vector<BenchChange> ways;
    for (const Hole& free : ground_.freeIn(to, kHolesOfColumn)) ways.push_back(ground_.moved(tip, free));
    // A rail is long: there a hole near the leg's own is as natural.
    const Hole from = ground_.holeAt(tip.hole);
    if (isRail(to.line) && from.board == to.board) {
        Hole near = to;
        near.number = isRail(from.line) ? from.number : railNumberNear(*ground_.boardOf(to).kind, from.number);
        const int index = ground_.holeIndex(near);
        if (index >= 0 && ground_.stripOf(index) == ground_.stripOf(hole)) {
            for (const Hole& free : ground_.freeIn(near, kHolesOfColumn)) ways.push_back(ground_.moved(tip, free));
        }
    }
    offer(std::move(ways), away, share);
}

void SlipSearch::offerMove(const Tip& tip, const std::vector<Hole>& to, int away, double share) {
    // Each strip by itself: rails may be broken, and columns lie beside each other.
    std::vector<int> strips;
    for (const Hole& first : to) {
        const int strip = ground_.stripOf(ground_.holeIndex(first));
        if (strip == tip.strip || std::find(strips.begin(), strips.end(), strip) != strips.end()) continue;
        strips.push_back(strip);
        if (!leadsOn(ground_.moved(tip, first))) continue;
        std::vector<BenchChange> ways;
        for (const Hole& hole : to) {
            const int index = ground_.holeIndex(hole);
            if (ground_.stripOf(index) == strip && ground_.isFree(index)) ways.push_back(ground_.moved(tip, hole));
        }
        offer(std::move(ways), away, share);
    }
}

}  // namespace tiepoint
