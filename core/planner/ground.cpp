#include "core/planner/ground.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace tiepoint {

PlanGround::PlanGround(const BoardKind& kind, Rails rails) : kind_(kind) {
    spots_.resize(static_cast<std::size_t>(kind.holeCount()));
    holesOf_.resize(static_cast<std::size_t>(kind.stripCount(rails)));
    for (int line = 0; line < kLineCount; ++line) {
        for (int number = 1; kind.has(static_cast<Line>(line), number); ++number) {
            const Line each = static_cast<Line>(line);
            const int hole = kind.holeIndex(each, number), strip = kind.stripIndex(rails, each, number);
            spots_[hole] = {each, number, kind.holeMm(each, number), strip};
            holesOf_[strip].push_back(hole);
            breadth_ = std::max(breadth_, std::lround(spots_[hole].at.x) + 1);
            height_ = std::max(height_, std::lround(spots_[hole].at.y) + 1);
        }
    }
    holeInCell_.assign(static_cast<std::size_t>(breadth_ * height_), -1);
    for (int hole = 0; hole < holeCount(); ++hole)
        holeInCell_[cellOf(std::lround(spots_[hole].at.x), std::lround(spots_[hole].at.y))] = hole;
    const int strips = stripCount();
    apart_.assign(static_cast<std::size_t>(strips) * strips, 0);
    for (int a = 0; a < strips; ++a) {
        for (int b = 0; b < a; ++b) {
            double least = std::numeric_limits<double>::max();
            for (const int one : holesOf_[a]) {
                for (const int other : holesOf_[b]) least = std::min(least, distance(spots_[one].at, spots_[other].at));
            }
            apart_[a * strips + b] = apart_[b * strips + a] = least;
        }
    }
}

int PlanGround::cellOf(long x, long y) const {
    return x < 0 || y < 0 || x >= breadth_ || y >= height_ ? -1 : static_cast<int>(y * breadth_ + x);
}

int PlanGround::holeAt(Point at) const {
    constexpr double kBesideMm = 0.37;
    const long x = std::lround(at.x), y = std::lround(at.y);
    for (const long dx : {0L, -1L, 1L}) {
        for (const long dy : {0L, -1L, 1L}) {
            const int cell = cellOf(x + dx, y + dy);
            const int hole = cell < 0 ? -1 : holeInCell_[cell];
            if (hole < 0) continue;
            const Point off = spots_[hole].at - at;
            if (std::abs(off.x) < kBesideMm && std::abs(off.y) < kBesideMm) return hole;
        }
    }
    return -1;
}

int PlanGround::holeAt(Line line, int number) const {
    return kind_.has(line, number) ? kind_.holeIndex(line, number) : -1;
}

void PlanGround::near(Point at, double radiusMm, std::vector<int>& holes) const {
    for (int line = 0; line < kLineCount; ++line) {
        const Line each = static_cast<Line>(line);
        if (!kind_.has(each, 1)) continue;
        const Point first = kind_.holeMm(each, 1);
        if (std::abs(first.y - at.y) > radiusMm) continue;
        const int from =
            std::max(1, static_cast<int>((at.x - first.x - radiusMm) / kPitchMm) - 13);  // rails skip holes
        for (int number = from; kind_.has(each, number); ++number) {
            const int hole = kind_.holeIndex(each, number);
            if (spots_[hole].at.x > at.x + radiusMm) break;
            if (spots_[hole].at.x >= at.x - radiusMm) holes.push_back(hole);
        }
    }
}

}  // namespace tiepoint
