#pragma once
// What one quantity does over a smooth piece of a run: the cubic through its readings at the ends and the thirds, which is what a step's
// dense output is (core/time/moving_island.h). Plain value; no allocation.

#include <array>

namespace tiepoint {

struct Piece3 {
    double fromSecond = 0, untilSecond = 0;
    /// Coefficients by the share of the way, 0..1.
    std::array<double, 4> by{};
    /// Shares strictly inside at which it turns, in order.
    std::array<double, 2> turns{};
    int turnCount = 0;

    /// Through four readings at shares 0, 1/3, 2/3 and 1.
    static Piece3 through(double fromSecond, double untilSecond, const std::array<double, 4>& readings);

    double atShare(double share) const { return by[0] + share * (by[1] + share * (by[2] + share * by[3])); }
    double shareOf(double second) const;
    double at(double second) const { return atShare(shareOf(second)); }
    double secondOf(double share) const { return fromSecond + share * (untilSecond - fromSecond); }
    /// Integrals over a part of it, by time: of the quantity, and of its square. Exact for the cubic.
    struct Sums {
        double once = 0, squared = 0;
    };
    Sums integral(double from, double until) const;
    /// When it passes a level between two instants between which it doesn't turn, and which lie on both sides of it.
    double passes(double level, double from, double until) const;

    /// Visits the stretches of a part of it in which it doesn't turn: visit(from, until).
    template <class Visit>
    void eachStretch(double from, double until, Visit visit) const {
        double begun = from;
        for (int t = 0; t < turnCount; ++t) {
            const double turn = secondOf(turns[t]);
            if (turn <= begun || turn >= until) continue;
            visit(begun, turn);
            begun = turn;
        }
        visit(begun, until);
    }
};

}  // namespace tiepoint
