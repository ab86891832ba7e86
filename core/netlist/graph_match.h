#pragma once
// Whether two coloured graphs are equal, and how. The head of graph_match.cpp says how it is decided.

#include "core/netlist/circuit_graph.h"

#include <cstdint>
#include <optional>
#include <vector>

namespace tiepoint {

struct GraphMatch {
    bool decided = true;                 ///< false: the effort was used up
    std::optional<std::vector<int>> to;  ///< by vertex of the first graph: its image
};

/// Vertices match if their colours are equal, their figures alike within the tolerance, and edges lead where they should.
GraphMatch matchGraphs(const CircuitGraph& first, const CircuitGraph& second, double tolerance, std::uint64_t effort);

/// Whether two numbers are alike within a share of the larger.
bool alike(double a, double b, double tolerance);

}  // namespace tiepoint
