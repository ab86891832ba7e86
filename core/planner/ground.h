#pragma once
// The holes and strips of one board as the planner asks for them, thousands of times a second.

#include "core/bench/bench.h"

#include <vector>

namespace tiepoint {

class PlanGround {
public:
    PlanGround(const BoardKind& kind, Rails rails);

    struct Spot {
        Line line = Line::A;
        int number = 1;
        Point at;  ///< mm, from the board's corner
        int strip = 0;
    };
    int holeCount() const { return static_cast<int>(spots_.size()); }
    const Spot& spot(int hole) const { return spots_[hole]; }
    int stripCount() const { return static_cast<int>(holesOf_.size()); }
    const std::vector<int>& holesOf(int strip) const { return holesOf_[strip]; }
    bool isRail(int strip) const { return tiepoint::isRail(spots_[holesOf_[strip].front()].line); }
    /// The hole at a place, or -1.
    int holeAt(Point at) const;
    int holeAt(Line line, int number) const;
    /// Holes whose middles lie within a distance of a place.
    void near(Point at, double radiusMm, std::vector<int>& holes) const;
    /// The least way from a hole of the one to a hole of the other, mm.
    double apart(int stripA, int stripB) const { return apart_[stripA * stripCount() + stripB]; }
    Hole address(int hole) const { return {"A", spots_[hole].line, spots_[hole].number}; }
    const BoardKind& kind() const { return kind_; }

private:
    /// The cell of a square millimetre that a place lies in, or -1; no two holes share one.
    int cellOf(long x, long y) const;

    const BoardKind& kind_;
    std::vector<Spot> spots_;
    std::vector<std::vector<int>> holesOf_;
    std::vector<double> apart_;
    long breadth_ = 0, height_ = 0;  ///< cells
    std::vector<int> holeInCell_;
};

}  // namespace tiepoint
