// A lead whose neighbour would close the circuit. Found by trying: each lead near a dark light is put one column on, over the gap,
// or into the neighbouring rail or row, and inspect() keeps what the solve proves.
//
// Only moves of what hangs together with the light, or into that, can help, so only those are tried.

#include "core/base/capital.h"
#include "core/base/stopping.h"
#include "core/edit/holes.h"
#include "core/findings/figure_words.h"
#include "core/findings/neighbourhood.h"
#include "core/findings/positions.h"
#include "core/findings/rules.h"
#include "core/findings/trial.h"
#include "core/meter/meter.h"
#include "core/words/words.h"

#include <algorithm>
#include <cstdlib>
#include <optional>
#include <string>
#include <utility>

namespace tiepoint {
namespace {

/// Whether a part lies straight, along a row or across the gap in one column, as hands usually place it.
bool isStraight(const Part& part) {
    if (part.leads.size() != 2 || !part.leads[0] || !part.leads[1]) return false;
    return part.leads[0]->line == part.leads[1]->line || part.leads[0]->number == part.leads[1]->number;
}

/// Where two ends miss each other by one column, either may be the wrong one. A move that makes a crooked part straight is the likelier
/// slip, one that makes a straight part crooked the less likely.
int crookedness(const Examination& examination, const Move& move) {
    constexpr int kStraightens = 0, kKeeps = 1, kBends = 2;
    const auto* replaced = std::get_if<ReplacePart>(&move.edit.operations.front());
    if (replaced == nullptr) return kKeeps;
    const bool before = isStraight(*examination.bench().findPart(move.id)), after = isStraight(replaced->part);
    if (before == after) return kKeeps;
    return after ? kStraightens : kBends;
}

std::vector<Move> allMoves(const Examination& examination) {
    std::vector<Move> moves;
    const auto add = [&](std::vector<Move> more) { std::ranges::move(more, std::back_inserter(moves)); };
    for (int part = 0; part < examination.partCount(); ++part) {
        if (!looksOn(examination.part(part))) add(movesOfPart(examination, part));
    }
    for (int jumper = 0; jumper < static_cast<int>(examination.bench().jumpers.size()); ++jumper) {
        add(movesOfJumper(examination, jumper));
    }
    std::ranges::stable_sort(moves, {}, [&](const Move& move) {
        stopIfAsked();
        return std::pair(!move.wasAlone, crookedness(examination, move));
    });
    return moves;
}

std::vector<Hole> endHoles(const Jumper& jumper) {
    std::vector<Hole> holes;
    for (const JumperEnd& end : jumper.ends) {
        if (const Hole* hole = std::get_if<Hole>(&end)) holes.push_back(*hole);
    }
    return holes;
}

/// Whether a move can matter to a light: what is moved belongs to its neighbourhood, or comes into it.
bool touches(const Examination& examination, const Neighbourhood& near, const Move& move) {
    const auto isNear = [&](const std::vector<Hole>& before, const std::vector<Hole>& after) {
        return near.concerns(before) || std::ranges::any_of(after, [&](const Hole& hole) { return near.holds(hole); });
    };
    if (const auto* part = std::get_if<ReplacePart>(&move.edit.operations.front())) {
        return isNear(tiepoint::holesOf(*examination.bench().findPart(move.id)), tiepoint::holesOf(part->part));
    }
    return isNear(endHoles(*examination.bench().findJumper(move.id)),
                  endHoles(std::get<ReplaceJumper>(move.edit.operations.front()).jumper));
}

/// The position in which a light shines once something has been moved; nothing if it stays dark.
std::optional<std::string> lightsIn(const Examination& examination, const Move& move, int light) {
    const auto bench = examination.after(move.edit);
    return bench ? positionThatLights(bench, *examination.now().inputs, light) : std::nullopt;
}

/// As much as a gap that nobody bridged, which is told first; and more than that.
constexpr int kDoubtOverGap = 1;
constexpr int kDoubtOfJoined = 2;

/// Along the row, or to the rail beside: no farther than a hand that slips.
bool isNextHole(const Hole& one, const Hole& other) {
    if (one.board != other.board) return false;
    if (isRail(one.line) && isRail(other.line) && one.number == other.number) return true;
    return one.line == other.line && std::abs(one.number - other.number) == 1;
}

std::string wordsOfMove(const Move& move, const std::string& from, const std::string& to, const std::string& light,
                        const std::string& position) {
    const std::string what = capitalised(move.what);
    const bool next = isNextHole(move.from, move.to);
    if (position.empty()) {
        return next ? say("finding.holeOff", {{"what", what}, {"from", from}, {"to", to}, {"light", light}})
                    : say("finding.placeOff", {{"what", what}, {"from", from}, {"to", to}, {"light", light}});
    }
    return next ? say("finding.holeOff.in",
                      {{"what", what}, {"from", from}, {"to", to}, {"light", light}, {"position", position}})
                : say("finding.placeOff.in",
                      {{"what", what}, {"from", from}, {"to", to}, {"light", light}, {"position", position}});
}

Suspicion suspicionOfMove(const Examination& examination, const Move& move, int light, const std::string& position) {
    const Bench& bench = examination.bench();
    const std::string from = holeName(bench, move.from), to = holeName(bench, move.to);
    Suspicion found;
    found.finding.parts = {move.id};
    const std::string& id = examination.part(light).id;
    if (id != move.id) found.finding.parts.push_back(id);
    found.finding.holes = {move.from, move.to};
    found.finding.text = wordsOfMove(move, from, to, id, position);
    addFigure(found.finding, "current now", examination.mostCurrent(light));
    found.darkens = {id};
    // What meets nothing where it is was hardly meant to be there; what is joined already may be.
    // Over the gap the two strips of a column were more likely taken for one.
    const bool overGap = !isRail(move.from.line) && move.from.number == move.to.number && !isRail(move.to.line);
    found.doubt = overGap ? kDoubtOverGap : move.wasAlone ? 0 : kDoubtOfJoined;
    found.proposals.push_back({say("mend.put", {{"plug", move.what}, {"hole", to}}), move.edit});
    return found;
}

}  // namespace

Suspicions findOneHoleOff(const Examination& examination) {
    if (examination.darkLights().empty()) return {};
    const std::vector<Move> moves = allMoves(examination);
    Suspicions found;
    for (const int light : examination.darkLights()) {
        const Neighbourhood near(examination.layout(), light);
        for (const Move& move : moves) {
            stopIfAsked();
            if (!touches(examination, near, move)) continue;
            if (const auto position = lightsIn(examination, move, light))
                found.push_back(suspicionOfMove(examination, move, light, *position));
        }
    }
    return found;
}

}  // namespace tiepoint
