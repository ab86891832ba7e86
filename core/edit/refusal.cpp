// Why a place is refused, in words for a person who holds the part in hand. The first reason found is the one
// told: legs that reach no hole, holes that are taken, legs that don't suit, and then what can't be there together.

#include "core/bench/resolve.h"
#include "core/bench/table.h"
#include "core/edit/clashes.h"
#include "core/edit/holes.h"
#include "core/edit/placement.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace tiepoint {
namespace {

using Reason = std::optional<std::string>;
using Ids = std::vector<std::string>;

constexpr double kSameColumnMm = 0.3;

bool holds(const Ids& ids, std::string_view id) { return std::find(ids.begin(), ids.end(), id) != ids.end(); }

/// Answers who is in a hole, leaving out the thing that is being moved.
class Takers {
public:
    Takers(const Bench& bench, std::string_view mover, const Ids& ignoring)
        : bench_(bench),
          mover_(mover),
          ignoring_(ignoring) {}

    const std::string* takerOf(const JumperEnd& end) const {
        if (const Hole* hole = std::get_if<Hole>(&end)) {
            for (const Part& part : bench_.parts) {
                if (counts(part.id) && std::find(part.leads.begin(), part.leads.end(), *hole) != part.leads.end())
                    return &part.id;
            }
        }
        for (const Jumper& jumper : bench_.jumpers) {
            if (counts(jumper.id) && (jumper.ends[0] == end || jumper.ends[1] == end)) return &jumper.id;
        }
        return nullptr;
    }

    /// "c14 is taken by R1; b14 is the same metal". `own` are the holes that the mover wants for itself.
    Reason taken(const Hole& hole, const std::vector<Hole>& own) const {
        const std::string* taker = takerOf(hole);
        if (!taker) return std::nullopt;
        Ids away = ignoring_;
        away.emplace_back(mover_);
        const Occupancy around(bench_, away);
        const auto isFree = [&](const Hole& other) {
            return !takerOf(other) && std::find(own.begin(), own.end(), other) == own.end() && !around.over(other);
        };
        const auto other = nearestWhere(bench_, hole, isFree);
        const std::string rest = other ? fmt::format("{} is the same metal", holeName(bench_, *other))
                                       : std::string("no hole of its strip is free");
        return fmt::format("{} is taken by {}; {}", holeName(bench_, hole), *taker, rest);
    }

private:
    bool counts(std::string_view id) const { return id != mover_ && !holds(ignoring_, id); }

    const Bench& bench_;
    std::string_view mover_;
    const Ids& ignoring_;
};

std::string holesApart(int count) { return fmt::format("{} {} apart", count, count == 1 ? "hole" : "holes"); }

/// How a rigid part lies by its present legs, and where each leg belongs.
struct Footing {
    std::vector<std::optional<Point>> present;
    std::vector<Point> belongs;
    bool quarterTurned = false;
};

std::optional<Footing> footingOf(const Bench& bench, const Part& part) {
    const Package& package = packageOf(part);
    Footing footing;
    footing.present = leadHolesMm(bench, part);
    const auto pose = poseOf(package, footing.present);
    if (!pose) return std::nullopt;
    footing.belongs = legPlaces(package, footing.present);
    footing.quarterTurned = std::abs(std::sin(pose->angle)) > 0.5;
    return footing;
}

const Board* boardUnder(const Bench& bench, Point at) {
    const auto found = std::find_if(bench.boards.begin(), bench.boards.end(),
                                    [&](const Board& board) { return board.frameMm().contains(at); });
    return found == bench.boards.end() ? nullptr : &*found;
}

/// The lead in the same column from which a person counts rows towards a leg that falls into the gap.
std::optional<Hole> countedFrom(const Part& part, const Footing& footing, Point leg) {
    std::optional<Hole> nearest;
    double best = 0;
    for (std::size_t i = 0; i < footing.present.size(); ++i) {
        if (!footing.present[i] || std::abs(footing.present[i]->x - leg.x) > kSameColumnMm) continue;
        if (std::abs(footing.belongs[i].y - footing.present[i]->y) > kSameColumnMm) continue;  // itself misplaced
        const double away = std::abs(footing.present[i]->y - leg.y);
        if (nearest && away >= best) continue;
        best = away;
        nearest = part.leads[i];
    }
    return nearest;
}

/// "its legs are now 2 holes apart; e to f is 3", for the leg that falls into the gap.
Reason gapReason(const Part& part, const Footing& footing, const Board& board, Point leg) {
    const auto from = countedFrom(part, footing, leg);
    if (!from || isRail(from->line)) return std::nullopt;
    const double fromMm = rowMm(board, from->line);
    const Line beyond = leg.y > fromMm ? Line::F : Line::E;
    const auto pitches = [](double mm) { return static_cast<int>(std::lround(std::abs(mm) / kPitchMm)); };
    return fmt::format("its legs are {}{}; {} to {} is {}", footing.quarterTurned ? "now " : "",
                       holesApart(pitches(leg.y - fromMm)), lineName(from->line), lineName(beyond),
                       pitches(rowMm(board, beyond) - fromMm));
}

/// Why one leg of a rigid part reaches no hole or not its own.
std::string legReason(const Bench& bench, const Part& part, const Footing& footing, std::size_t lead) {
    const Point leg = footing.belongs[lead];
    const Board* board = boardUnder(bench, leg);
    if (board && isInGap(*board, leg)) {
        if (auto reason = gapReason(part, footing, *board, leg)) return *reason;
    }
    return board ? "one of its legs would stand where there is no hole" : "one of its legs would be off the board";
}

/// Whether a lead may hang: it hangs on the bench already, as a person left it.
bool hangsAlready(const Bench& bench, const Part& part, std::size_t lead) {
    const Part* before = bench.findPart(part.id);
    return before && lead < before->leads.size() && !before->leads[lead];
}

bool liesOnTable(const Part& part) {
    return std::none_of(part.leads.begin(), part.leads.end(), [](const auto& lead) { return lead.has_value(); });
}

Reason reachReason(const Bench& bench, const Part& part) {
    const Reach reach = part.kind->package->reach;
    if (reach == Reach::Flying || liesOnTable(part)) return std::nullopt;
    for (std::size_t i = 0; i < part.leads.size(); ++i) {
        if (part.leads[i] || hangsAlready(bench, part, i)) continue;
        if (reach == Reach::Bending) return "its other lead would reach no hole";
        return legReason(bench, part, *footingOf(bench, part), i);
    }
    return std::nullopt;
}

Reason fitReason(const Bench& bench, const Part& part) {
    auto reason = misfit(packageOf(part), leadHolesMm(bench, part));
    if (!reason || part.kind->package->reach != Reach::Rigid) return reason;
    // Rows say more than distances where a leg belongs into the gap.
    const Footing footing = *footingOf(bench, part);
    for (std::size_t i = 0; i < part.leads.size(); ++i) {
        const Board* board = boardUnder(bench, footing.belongs[i]);
        if (!board || !isInGap(*board, footing.belongs[i])) continue;
        if (auto gap = gapReason(part, footing, *board, footing.belongs[i])) return gap;
    }
    return reason;
}

std::vector<Hole> ownHoles(const Part& part) {
    std::vector<Hole> holes;
    for (const auto& lead : part.leads) {
        if (lead) holes.push_back(*lead);
    }
    return holes;
}

Reason holeReason(const Bench& bench, const Part& part, const Ids& ignoring) {
    const Takers takers(bench, part.id, ignoring);
    const std::vector<Hole> own = ownHoles(part);
    for (const Hole& hole : own) {
        if (!holeExists(bench, hole)) return fmt::format("there is no hole {}", holeName(bench, hole));
        if (std::count(own.begin(), own.end(), hole) > 1)
            return fmt::format("two of its leads can't share {}", holeName(bench, hole));
        if (auto reason = takers.taken(hole, own)) return reason;
    }
    return std::nullopt;
}

/// Why the part can't be put so, what else is on the boards left aside. `before` is the bench it was on.
Reason placeReason(const Bench& before, const Bench& bench, const Part& part, const Ids& ignoring) {
    if (auto reason = reachReason(before, part)) return reason;
    if (auto reason = fitReason(bench, part)) return reason;
    return holeReason(bench, part, ignoring);
}

Reason endReason(const Bench& bench, const Takers& takers, const JumperEnd& end, const std::vector<Hole>& own) {
    if (const Hole* hole = std::get_if<Hole>(&end)) {
        if (!holeExists(bench, *hole)) return fmt::format("there is no hole {}", holeName(bench, *hole));
        return takers.taken(*hole, own);
    }
    const Socket& socket = std::get<Socket>(end);
    const Part* part = bench.findPart(socket.part);
    const bool exists = part && socket.lead >= 0 && socket.lead < static_cast<int>(part->kind->leads.size());
    if (!exists || !part->kind->leads[socket.lead].socket) return "there is no such socket";
    const std::string* taker = takers.takerOf(end);
    if (!taker) return std::nullopt;
    return fmt::format("the socket {} of {} is taken by {}", part->kind->leads[socket.lead].name, part->id, *taker);
}

Reason placeReason(const Bench& bench, const Jumper& jumper, const Ids& ignoring) {
    if (jumper.ends[0] == jumper.ends[1]) return "both of its ends can't share one place";
    std::vector<Hole> own;
    for (const JumperEnd& end : jumper.ends) {
        if (const Hole* hole = std::get_if<Hole>(&end)) own.push_back(*hole);
    }
    const Takers takers(bench, jumper.id, ignoring);
    for (const JumperEnd& end : jumper.ends) {
        if (auto reason = endReason(bench, takers, end, own)) return reason;
    }
    return std::nullopt;
}

bool liesOtherwise(const Bench& before, const Part& part) {
    const Part* old = before.findPart(part.id);
    return old == nullptr || old->kind != part.kind || old->leads != part.leads;
}
bool liesOtherwise(const Bench& before, const Jumper& jumper) {
    const Jumper* old = before.findJumper(jumper.id);
    return old == nullptr || old->ends != jumper.ends || old->flat != jumper.flat;
}

template <class Thing>
std::vector<const Thing*> laidOtherwise(const Bench& before, const std::vector<Thing>& things) {
    std::vector<const Thing*> found;
    for (const Thing& thing : things) {
        if (liesOtherwise(before, thing)) found.push_back(&thing);
    }
    return found;
}

template <class Thing>
Reason clashReason(const Occupancy& around, const Bench& bench, const Thing& thing) {
    const auto clashes = around.clashesOf(thing);
    return clashes.empty() ? std::nullopt : Reason(saidToHand(bench, clashes.front(), thing.id));
}

}  // namespace

std::optional<std::string> refusal(const Bench& bench, const Part& part, const std::vector<std::string>& ignoring) {
    if (auto reason = placeReason(bench, bench, part, ignoring)) return reason;
    if (liesOnTable(part)) return std::nullopt;
    Bench after = bench;
    const int index = bench.partIndex(part.id);
    (index >= 0 ? after.parts[index] : after.parts.emplace_back()) = part;
    return clashReason(Occupancy(after, ignoring), after, part);
}

std::optional<std::string> refusal(const Bench& bench, const Jumper& jumper, const std::vector<std::string>& ignoring) {
    if (auto reason = placeReason(bench, jumper, ignoring)) return reason;
    Bench after = bench;
    const int index = bench.jumperIndex(jumper.id);
    (index >= 0 ? after.jumpers[index] : after.jumpers.emplace_back()) = jumper;
    return clashReason(Occupancy(after, ignoring), after, jumper);
}

std::optional<std::string> refusalOfChange(const Bench& before, const Bench& after) {
    const std::vector<const Part*> parts = laidOtherwise(before, after.parts);
    const std::vector<const Jumper*> jumpers = laidOtherwise(before, after.jumpers);
    const bool several = parts.size() + jumpers.size() > 1;
    const auto said = [&](const std::string& id, std::string reason) {
        return several ? id + ": " + reason : std::move(reason);
    };
    for (const Part* part : parts) {
        if (auto reason = placeReason(before, after, *part, {})) return said(part->id, std::move(*reason));
    }
    for (const Jumper* jumper : jumpers) {
        if (auto reason = placeReason(after, *jumper, {})) return said(jumper->id, std::move(*reason));
    }
    if (parts.empty() && jumpers.empty()) return std::nullopt;
    const Occupancy around(after);
    for (const Part* part : parts) {
        if (auto reason = clashReason(around, after, *part)) return said(part->id, std::move(*reason));
    }
    for (const Jumper* jumper : jumpers) {
        if (auto reason = clashReason(around, after, *jumper)) return said(jumper->id, std::move(*reason));
    }
    return std::nullopt;
}

std::vector<std::string> overlapping(const Bench& bench, const Part& part) {
    std::vector<std::string> ids;
    const auto pose = poseOf(packageOf(part), leadHolesMm(bench, part));
    if (!pose) return ids;
    for (const Part& other : bench.parts) {
        if (other.id == part.id) continue;
        const auto otherPose = poseOf(packageOf(other), leadHolesMm(bench, other));
        if (otherPose && overlap(pose->body, otherPose->body)) ids.push_back(other.id);
    }
    return ids;
}

}  // namespace tiepoint
