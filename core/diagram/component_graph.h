#pragma once
// One circuit of a sheet as a layered graph whose nodes have their order and their places across the current.

#include "core/diagram/ranks.h"
#include "core/diagram/sheet_graph.h"

namespace tiepoint {

struct ComponentGraph {
    std::vector<SheetBlock> blocks;
    SheetGraph graph;  ///< nodes of parts come first, in the order of the blocks
};

ComponentGraph graphOfComponent(const Netlist& netlist, const DiagramHints& hints, SheetFlow flow,
                                const SheetRanks& ranks, const std::vector<double>& key, int component);

}  // namespace tiepoint
