#pragma once
// Whole numbers in place of the flows of a network, such that at every node as much comes in as goes out: so printed currents add up
// exactly. A pure function; safe from any thread.

#include <cstdint>
#include <span>
#include <vector>

namespace tiepoint {

struct FlowEdge {
    int from = 0, to = 0;
    double flow = 0;  ///< from `from` to `to`
};

/// By edge; none differs from its flow by more than one. Flows that don't add up at a node (by rounding, far less than one) are
/// balanced along a tree of the largest ones.
std::vector<std::int64_t> wholeFlows(int nodes, std::span<const FlowEdge> edges);

}  // namespace tiepoint
