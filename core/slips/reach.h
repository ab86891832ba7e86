#pragma once
// Where a hand that aims at a hole may land instead. Each relation holds both ways: from where it lands, the hole that was meant is among the
// answers. The holes are of the board and exist; whether they are free is for the caller. Pure functions.

#include "core/slips/ground.h"

#include <vector>

namespace tiepoint {

/// So far along the rails a hand goes to find a free hole.
inline constexpr int kAlongRail = 2;

/// The holes of the same row or rail so many places to the left and right.
std::vector<Hole> holesAlong(const Ground& ground, const Hole& hole, int places);
/// Over the gap: the hole of the column's other half that is nearest.
std::vector<Hole> holesOverGap(const Ground& ground, const Hole& hole);
/// From a row that lies outermost or next to it into the rails of that edge; from a rail into those rows.
std::vector<Hole> holesBetweenRowAndRail(const Ground& ground, const Hole& hole);
/// From a rail into the other rail of the same edge.
std::vector<Hole> holesOfOtherRail(const Ground& ground, const Hole& hole);
/// From a rail into the rail with the same print at the other edge.
std::vector<Hole> holesOfFarRail(const Ground& ground, const Hole& hole);
/// All of them, one and two places along.
std::vector<Hole> holesInReach(const Ground& ground, const Hole& hole);

/// The number of the rail hole that stands about over a column; it may lie off the rail.
int railNumberNear(const BoardKind& kind, int column);

inline bool isPlusRail(Line line) { return line == Line::TopPlus || line == Line::BottomPlus; }

}  // namespace tiepoint
