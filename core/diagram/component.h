#pragma once
// One circuit of a sheet: everything that wires join.

#include "core/diagram/ranks.h"

namespace tiepoint {

/// Draws one component of a circuit from 0,0 on: its parts, wires and words. Returns how much room it takes.
Point drawComponent(Diagram& diagram, const Netlist& netlist, const DiagramHints& hints, SheetFlow flow,
                    const SheetRanks& ranks, const std::vector<double>& key, int component);

}  // namespace tiepoint
