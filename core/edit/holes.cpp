// Finding holes: by a place on the bench, by what is in them, and the free ones of a strip.

#include "core/edit/holes.h"

#include "core/edit/clashes.h"
#include "core/edit/placement.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace tiepoint {
namespace {

bool isNear(const Rect& frame, Point at, double reachMm) {
    return at.x >= frame.left - reachMm && at.x <= frame.right() + reachMm && at.y >= frame.top - reachMm &&
           at.y <= frame.bottom() + reachMm;
}

/// The holes of the strip that a hole belongs to, from row a or number 1 on.
std::vector<Hole> stripOf(const Board& board, const Hole& hole) {
    std::vector<Hole> holes;
    const int strip = board.kind->stripIndex(board.rails, hole.line, hole.number);
    const auto add = [&](Line line, int number) {
        if (board.kind->stripIndex(board.rails, line, number) == strip) holes.push_back({hole.board, line, number});
    };
    if (isRail(hole.line)) {
        for (int number = 1; number <= board.kind->railHoles; ++number) add(hole.line, number);
    } else {
        for (int row = 0; row < kRowCount; ++row) add(static_cast<Line>(row), hole.number);
    }
    return holes;
}

int stepsBetween(const Hole& a, const Hole& b) {
    return std::abs(a.number - b.number) + std::abs(static_cast<int>(a.line) - static_cast<int>(b.line));
}

}  // namespace

bool holeExists(const Bench& bench, const Hole& hole) {
    const Board* board = bench.findBoard(hole.board);
    return board && board->kind->has(hole.line, hole.number);
}

bool sameStrip(const Bench& bench, const Hole& a, const Hole& b) {
    if (a.board != b.board || !holeExists(bench, a) || !holeExists(bench, b)) return false;
    const Board& board = *bench.findBoard(a.board);
    return board.kind->stripIndex(board.rails, a.line, a.number) ==
           board.kind->stripIndex(board.rails, b.line, b.number);
}

std::string holeName(const Bench& bench, const Hole& hole) {
    return bench.boards.size() == 1 ? shortName(hole) : toString(hole);
}

double rowMm(const Board& board, Line row) { return board.cornerMm().y + board.kind->holeMm(row, 1).y; }

bool isInGap(const Board& board, Point at) {
    constexpr double kOnRowMm = 0.3;
    return at.y > rowMm(board, Line::E) + kOnRowMm && at.y < rowMm(board, Line::F) - kOnRowMm;
}

std::optional<Hole> nearestWhere(const Bench& bench, const Hole& hole, const std::function<bool(const Hole&)>& suits) {
    if (!holeExists(bench, hole)) return std::nullopt;
    std::optional<Hole> nearest;
    for (const Hole& candidate : stripOf(*bench.findBoard(hole.board), hole)) {
        const bool nearer = !nearest || stepsBetween(candidate, hole) < stepsBetween(*nearest, hole);
        if (nearer && suits(candidate)) nearest = candidate;
    }
    return nearest;
}

std::optional<Hole> nearestHole(const Board& board, Point at, double reachMm) {
    if (!isNear(board.frameMm(), at, reachMm)) return std::nullopt;
    std::optional<Hole> nearest;
    double best = reachMm;
    for (int index = 0; index < kLineCount; ++index) {
        const Line line = static_cast<Line>(index);
        for (int number = 1; number <= board.kind->holesOf(line); ++number) {
            const double away = distance(board.cornerMm() + board.kind->holeMm(line, number), at);
            if (away > best || (nearest && away == best)) continue;
            best = away;
            nearest = Hole{board.id, line, number};
        }
    }
    return nearest;
}

std::optional<Hole> nearestHole(const Bench& bench, Point at, double reachMm) {
    std::optional<Hole> nearest;
    double best = reachMm;
    for (const Board& board : bench.boards) {
        const auto hole = nearestHole(board, at, best);
        const double away = hole ? distance(board.cornerMm() + board.kind->holeMm(hole->line, hole->number), at) : best;
        if (!hole || (nearest && away == best)) continue;
        best = away;
        nearest = hole;
    }
    return nearest;
}

std::optional<Occupant> occupantOf(const Bench& bench, const Hole& hole) {
    for (const Part& part : bench.parts) {
        for (int lead = 0; lead < static_cast<int>(part.leads.size()); ++lead) {
            if (part.leads[lead] == hole) return Occupant{part.id, lead, false};
        }
    }
    for (const Jumper& jumper : bench.jumpers) {
        for (int end = 0; end < static_cast<int>(jumper.ends.size()); ++end) {
            if (jumper.ends[end] == JumperEnd(hole)) return Occupant{jumper.id, end, true};
        }
    }
    return std::nullopt;
}

std::optional<Hole> nearestFreeInStrip(const Occupancy& around, const Hole& hole) {
    return nearestWhere(around.bench(), hole, [&](const Hole& candidate) {
        return !occupantOf(around.bench(), candidate) && !around.over(candidate);
    });
}
std::optional<Hole> nearestFreeInStrip(const Bench& bench, const Hole& hole) {
    return nearestFreeInStrip(Occupancy(bench), hole);
}

std::optional<std::string> whyNotFree(const Occupancy& around, const Hole& hole) {
    if (occupantOf(around.bench(), hole)) return holeName(around.bench(), hole) + " is taken";
    const auto clash = around.over(hole);
    return clash ? std::optional(liesUnder(around.bench(), *clash)) : std::nullopt;
}
std::optional<std::string> whyNotFree(const Bench& bench, const Hole& hole) {
    return whyNotFree(Occupancy(bench), hole);
}

}  // namespace tiepoint
