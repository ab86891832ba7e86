// The next hole is the one with the least way to go, where a step aside counts several times a step ahead: so a walk keeps its row or
// column as long as there is one, and finds the nearest hole of the next board or rail otherwise.

#include "core/edit/neighbour.h"

#include <cmath>
#include <limits>

namespace tiepoint {
namespace {

constexpr double kAsideWeight = 3;
constexpr double kLeastAheadMm = 0.5;

}  // namespace

std::optional<Hole> neighbourHole(const Bench& bench, const Hole& hole, int columns, int rows) {
    const auto from = holeMm(bench, hole);
    if (!from) return std::nullopt;
    std::optional<Hole> nearest;
    double least = std::numeric_limits<double>::infinity();
    for (const Board& board : bench.boards) {
        for (int index = 0; index < kLineCount; ++index) {
            const Line line = static_cast<Line>(index);
            for (int number = 1; number <= board.kind->holesOf(line); ++number) {
                const Point way = board.cornerMm() + board.kind->holeMm(line, number) - *from;
                const double ahead = way.x * columns + way.y * rows;
                if (ahead < kLeastAheadMm) continue;
                const double cost = ahead + kAsideWeight * std::abs(columns != 0 ? way.y : way.x);
                if (cost >= least) continue;
                least = cost;
                nearest = Hole{board.id, line, number};
            }
        }
    }
    return nearest;
}

std::optional<Hole> firstHole(const Bench& bench) {
    if (bench.boards.empty()) return std::nullopt;
    return Hole{bench.boards.front().id, Line::A, 1};
}

std::optional<Part> stretched(const Bench& bench, const Part& part, int lead, int columns, int rows) {
    const auto& hole = part.leads[static_cast<std::size_t>(lead)];
    if (!hole) return std::nullopt;
    const auto next = neighbourHole(bench, *hole, columns, rows);
    if (!next) return std::nullopt;
    Part result = part;
    result.leads[static_cast<std::size_t>(lead)] = next;
    return result;
}

std::optional<Jumper> stretched(const Bench& bench, const Jumper& jumper, int end, int columns, int rows) {
    const Hole* hole = std::get_if<Hole>(&jumper.ends[static_cast<std::size_t>(end)]);
    const auto next = hole ? neighbourHole(bench, *hole, columns, rows) : std::nullopt;
    if (!next) return std::nullopt;
    Jumper result = jumper;
    result.ends[static_cast<std::size_t>(end)] = *next;
    return result;
}

}  // namespace tiepoint
