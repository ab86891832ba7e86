// Where leads go: placing, turning and shifting. Nothing here refuses; core/edit/refusal.cpp does.

#include "core/edit/placement.h"

#include "core/bench/resolve.h"
#include "core/bench/table.h"
#include "core/edit/holes.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace tiepoint {
namespace {

constexpr int kTurnsAround = 4;
constexpr double kQuarterRadians = std::numbers::pi / 2;
constexpr double kLegReachMm = 0.2;               ///< rigid legs give so far
constexpr double kLeadReachMm = kPitchMm * 0.52;  ///< bending leads find the nearest hole, rails stand off the grid

int wrapped(int quarterTurns) { return ((quarterTurns % kTurnsAround) + kTurnsAround) % kTurnsAround; }

Point turnedQuarters(Point p, int quarterTurns) {
    for (int i = 0; i < wrapped(quarterTurns); ++i) p = {-p.y, p.x};
    return p;
}

/// The span of a bending part as it lies, in whole pitches, or that of the tray. One that only the gap has spread takes the latter again, so
/// that it comes back to where it was when it is turned round.
int spanOf(const Bench& bench, const Part& part) {
    const int usual = packageOf(part).defaultSpan;
    const auto places = leadHolesMm(bench, part);
    if (!places[0] || !places[1]) return usual;
    const int span = static_cast<int>(std::lround(distance(*places[0], *places[1]) / kPitchMm));
    const auto lines = std::minmax(part.leads[0]->line, part.leads[1]->line);
    const bool astride =
        lines.first == Line::E && lines.second == Line::F && part.leads[0]->number == part.leads[1]->number;
    return astride ? std::min(span, usual) : span;
}

/// Where the second lead of a bending part goes. A place in the gap counts on to the next row.
std::optional<Hole> secondLead(const Bench& bench, const Hole& anchor, int span, int quarterTurns) {
    const Point along = turnedQuarters({span * kPitchMm, 0}, quarterTurns);
    const Point at = *holeMm(bench, anchor) + along;
    if (auto hole = nearestHole(bench, at, kLeadReachMm)) return hole;
    if (isRail(anchor.line) || !isInGap(*bench.findBoard(anchor.board), at)) return std::nullopt;
    return Hole{anchor.board, along.y > 0 ? Line::F : Line::E, anchor.number};
}

/// Legs that bend stay as far apart as they are.
void placeLegs(const Bench& bench, Part& part, std::span<const Point> footprint, Point anchorMm, int quarterTurns) {
    for (std::size_t i = 1; i < part.leads.size(); ++i) {
        const Point offset = turnedQuarters(footprint[i] - footprint[0], quarterTurns) * kPitchMm;
        part.leads[i] = nearestHole(bench, anchorMm + offset, kLegReachMm);
    }
}

Part endForEnd(Part part) {
    std::swap(part.leads.front(), part.leads.back());
    return part;
}

std::optional<Hole> shiftedHole(const Bench& bench, Hole hole, int columns, int rows) {
    hole.number += columns;
    if (!isRail(hole.line)) {
        const int row = static_cast<int>(hole.line) + rows;
        if (row < 0 || row >= kRowCount) return std::nullopt;
        hole.line = static_cast<Line>(row);
    }
    return holeExists(bench, hole) ? std::optional(hole) : std::nullopt;
}

}  // namespace

Part placedAt(const Bench& bench, const Part& part, const Hole& anchor, int quarterTurns) {
    Part result = part;
    if (part.kind->leads[0].socket || !holeExists(bench, anchor)) return result;
    result.leads[0] = anchor;
    switch (part.kind->package->reach) {
        case Reach::Rigid:
            placeLegs(bench, result, footprintFor(packageOf(part), leadHolesMm(bench, part)), *holeMm(bench, anchor),
                      quarterTurns);
            break;
        case Reach::Bending:
            result.leads[1] = secondLead(bench, anchor, spanOf(bench, part), quarterTurns);
            break;
        case Reach::Flying:
            break;
    }
    return result;
}

int quarterTurnsOf(const Bench& bench, const Part& part) {
    const auto pose = poseOf(packageOf(part), leadHolesMm(bench, part));
    return pose ? wrapped(static_cast<int>(std::lround(pose->angle / kQuarterRadians))) : 0;
}

Part turned(const Bench& bench, const Part& part, int quarterTurns) {
    const bool stays = part.kind->package->reach == Reach::Flying || !part.leads[0] || wrapped(quarterTurns) == 0;
    return stays ? part : placedAt(bench, part, *part.leads[0], quarterTurnsOf(bench, part) + quarterTurns);
}

Turned turnedRound(const Bench& bench, const Part& part, int direction) {
    const Reach reach = part.kind->package->reach;
    if (reach == Reach::Flying) return {std::nullopt, "it stands on the table"};
    if (!part.leads[0]) return {std::nullopt, "its first leg is in no hole"};
    std::string why;
    const auto fits = [&](const Part& candidate) {
        const auto refused = refusal(bench, candidate);
        if (refused && why.empty()) why = *refused;
        return !refused;
    };
    const int most = reach == Reach::Rigid ? 1 : kTurnsAround - 1;
    for (int quarters = 1; quarters <= most; ++quarters) {
        const bool half = quarters == kTurnsAround / 2;
        if (half && part.leads[1] && fits(endForEnd(part))) return {endForEnd(part), {}};
        if (Part candidate = turned(bench, part, direction * quarters); fits(candidate))
            return {std::move(candidate), {}};
    }
    return {std::nullopt, reach == Reach::Rigid ? why : "no turn fits here: " + why};
}

std::optional<Part> shifted(const Bench& bench, const Part& part, int columns, int rows) {
    Part result = part;
    for (auto& lead : result.leads) {
        if (!lead) continue;
        lead = shiftedHole(bench, *lead, columns, rows);
        if (!lead) return std::nullopt;
    }
    return result;
}

std::optional<Jumper> shifted(const Bench& bench, const Jumper& jumper, int columns, int rows) {
    Jumper result = jumper;
    for (JumperEnd& end : result.ends) {
        const Hole* hole = std::get_if<Hole>(&end);
        if (!hole) continue;
        const auto moved = shiftedHole(bench, *hole, columns, rows);
        if (!moved) return std::nullopt;
        end = *moved;
    }
    return result;
}

std::optional<Note> shifted(const Bench& bench, const Note& note, int columns, int rows) {
    const auto at = shiftedHole(bench, note.at, columns, rows);
    if (!at) return std::nullopt;
    Note result = note;
    result.at = *at;
    return result;
}

}  // namespace tiepoint
