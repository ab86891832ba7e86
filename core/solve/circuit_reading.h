#pragma once
// From a search's numbers to what is told of a circuit: voltages of known nodes, currents of ideal supplies, sums at nodes, powers. The
// same for a circuit at rest and one in time. Pure functions on plain values; one thread at a time.

#include "core/solve/circuit_plan.h"

#include <span>
#include <vector>

namespace tiepoint {

struct CircuitSolution;

/// By node: the sum of currents that leave through elements, and the largest of them.
struct NodeSums {
    std::vector<double> sum, largest;
};
void sumNodes(const Circuit& circuit, std::span<const char> present, const SolveState& state, NodeSums& sums);

/// Voltages of the nodes that are known before solving.
void spreadKnownVolts(const Circuit& circuit, std::span<const KnownNode> known, double sourceScale, SolveState& state);

/// Currents of ideal supplies that make a node known, and of supplies shorted by metal.
void findKnownCurrents(const Circuit& circuit, std::span<const char> present, std::span<const KnownNode> known,
                       SolveState& state, NodeSums& sums);

/// Fills all numbers of a solution; its trouble and iterations are the caller's. `sums` is filled too.
void publishSolution(const Circuit& circuit, std::span<const char> present, std::span<const char> floating,
                     const SolveState& state, NodeSums& sums, CircuitSolution& solution);

}  // namespace tiepoint
