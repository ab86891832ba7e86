#pragma once
// The order in which a hand builds: wires that lie flat, arcs, then parts from the lowest to the tallest, so that fingers reach every hole; arcs
// that pass over a part after it; the supply last. Pure.

#include "core/sheet/build_plan.h"

namespace tiepoint {

/// Steps of things of one kind, few enough to be found on one picture; the last joins the supply.
std::vector<PlanStep> stepsOf(const Bench& bench, const std::vector<PlanPart>& parts,
                              const std::vector<PlanJumper>& jumpers);

}  // namespace tiepoint
