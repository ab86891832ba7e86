#pragma once
// What a class has, for the planner: the form of its boards, and what of a circuit it can't build. Pure.

#include "core/planner/planner.h"

namespace tiepoint {

/// A plan on the board of the kit, where it says one, and with its parts. The kit must outlive the wish.
PlanWish wishFor(const Kit& kit);
/// Parts that the kit lacks; of those alike of which it has some, the ones that come last in natural order of ids.
std::vector<Unplaced> beyondKit(const Kit& kit, const Netlist& circuit);

}  // namespace tiepoint
