#pragma once
// Which elements of a circuit stand in loops with others, whatever their values: its blocks. Pure; safe from any thread.

#include "core/circuit/circuit.h"

#include <span>
#include <vector>

namespace tiepoint {

/// By element: a number that is the same for two elements exactly if some loop runs through both, counted from 0 in the order of
/// elements; -1 for those in no loop with another element, such as one whose two ends are joined by metal. Elements that aren't
/// counted (by element; 0) are not there. An element of more than two terminals joins those that its currents run between, and counts in the
/// loop of the first of its currents that is in one.
std::vector<int> loopBlocks(const Circuit& circuit, std::span<const char> counted);

}  // namespace tiepoint
