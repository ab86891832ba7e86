#pragma once
// A bound from below on how many differences two circuits have, so that an account that is no larger is known to be the smallest. Pure.

#include "core/netlist/resemblance.h"

namespace tiepoint {

/// For circuits that aren't equal: at least 1. `settingsApart` by part of the first and the second, of one kind.
int fewestDifferences(const CircuitSide& first, const CircuitSide& second, const Grid<int>& settingsApart);

}  // namespace tiepoint
