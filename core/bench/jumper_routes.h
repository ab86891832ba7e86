#pragma once
// How the arcs of jumpers lie, so that they keep off bodies and off each other. Derived from where things are, never saved: the same
// bench always looks the same. Pure functions.

#include "core/bench/table.h"

namespace tiepoint {

/// The share of its span by which each jumper's arc stands out to the left of the way from its first end to its second (negative: to
/// the right; 0: straight), by jumper index. Jumpers choose in the order of the bench among a few arcs: the first that touches nothing,
/// or else the one that touches least. The first choice bows to the left of the way from the end nearer to the boards' middle line.
std::vector<double> routeJumpers(const Bench& bench, const Table& table);

/// The bow of a jumper that is still being drawn.
double usualBow(Point first, Point second, double middleY);

/// A point of an arc with that bow, t from 0 to 1.
Point arcPoint(Point first, Point second, double bow, double t);

/// Where the controls of the arc's cubic stand along its span, as a share from each end.
inline constexpr double kArcControl = 0.28;

}  // namespace tiepoint
