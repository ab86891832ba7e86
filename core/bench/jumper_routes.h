#pragma once
// How the arcs of jumpers lie: round what stands tall on the boards, and where they can also off lying bodies, ids and each other.
// Derived from where things are, never saved: the same bench always looks the same. Pure functions.

#include "core/bench/bodies.h"

namespace tiepoint {

/// The arc of each jumper, by jumper index. Jumpers choose in the order of the bench among a few dozen arcs: the first that touches
/// nothing, or else the one that touches least; one that runs through a tall body only where all do. The first choice bows to the left
/// of the way from the end nearer to the boards' middle line. Flat jumpers lie straight.
std::vector<Arc> routeJumpers(const Bench& bench, const InOrder<Body>& bodies, const Table& table);

/// The arc of one more jumper, on a table whose jumpers have theirs; one with the same id counts as taken away.
Arc routeJumper(const Bench& bench, const Table& table, const Jumper& jumper);

/// The arcs to choose among, the first liked best. Bow and lean are shares of the usual bow. With each there is its mirror image.
const std::vector<Arc>& arcShapes();
/// Whether there is an arc between two places that runs through nothing tall.
bool arcGetsTo(const InOrder<Body>& bodies, Point first, Point second);
/// The tall bodies that the usual arcs between two places run through.
std::vector<Body> inWayOfArc(const InOrder<Body>& bodies, Point first, Point second);
/// Whether one of the arcs runs through a body.
bool arcRunsThrough(const Body& body, Point first, Point second, const Arc& arc);

/// The bow of a jumper that is still being drawn.
double usualBow(Point first, Point second, double middleY);

/// A point of an arc, t from 0 to 1.
Point arcPoint(Point first, Point second, const Arc& arc, double t);
/// The cubic that it is.
WireCurve arcCurve(Point first, Point second, const Arc& arc);

}  // namespace tiepoint
