#include "core/solve/circuit_reading.h"

#include "core/solve/circuit_solver.h"

#include <algorithm>
#include <cmath>

namespace tiepoint {

void sumNodes(const Circuit& circuit, std::span<const char> present, const SolveState& state, NodeSums& sums) {
    sums.sum.assign(circuit.nodeCount, 0.0);
    sums.largest.assign(circuit.nodeCount, 0.0);
    for (std::size_t path = 0; path < circuit.paths.size(); ++path) {
        const auto [element, from, to, fromTerminal, toTerminal] = circuit.paths[path];
        if (!present[element]) continue;
        const double current = state.pathAmpere[path];
        sums.sum[from] += current;
        sums.sum[to] -= current;
        sums.largest[from] = std::max(sums.largest[from], std::abs(current));
        sums.largest[to] = std::max(sums.largest[to], std::abs(current));
    }
}

void spreadKnownVolts(const Circuit& circuit, std::span<const KnownNode> nodes, double sourceScale, SolveState& state) {
    for (const KnownNode& known : nodes) {
        double volt = 0;
        if (known.supply >= 0) {
            const SupplyBranch& s = circuit.supplies[known.supply];
            const double emf = sourceScale * s.emfVolt;
            volt = state.nodeVolt[known.parent] + (s.from == known.node ? emf : -emf);
        }
        state.nodeVolt[known.node] = volt;
    }
}

void findKnownCurrents(const Circuit& circuit, std::span<const char> present, std::span<const KnownNode> nodes,
                       SolveState& state, NodeSums& sums) {
    const auto ampereOf = [&](const SupplyBranch& s) -> double& {
        return state.pathAmpere[circuit.firstPath[s.element]];
    };
    // A supply shorted by metal drives itself.
    for (std::size_t k = 0; k < circuit.supplies.size(); ++k) {
        const SupplyBranch& s = circuit.supplies[k];
        if (!present[s.element] || state.limiting[k] || s.from != s.to) continue;
        ampereOf(s) = s.emfVolt == 0 ? 0 : -s.emfVolt / s.seriesOhm;
    }
    bool anyIdeal = false;
    for (const KnownNode& known : nodes) {
        if (known.supply < 0) continue;
        ampereOf(circuit.supplies[known.supply]) = 0;
        anyIdeal = true;
    }
    if (!anyIdeal) return;
    sumNodes(circuit, present, state, sums);
    // Leaf to root: an ideal supply carries what its far node needs.
    for (std::size_t k = nodes.size(); k-- > 0;) {
        const KnownNode& known = nodes[k];
        if (known.supply < 0) continue;
        const SupplyBranch& s = circuit.supplies[known.supply];
        const double leaving = sums.sum[known.node];
        ampereOf(s) = s.from == known.node ? -leaving : leaving;
        sums.sum[known.parent] += leaving;
    }
}

void publishSolution(const Circuit& circuit, std::span<const char> present, std::span<const char> floating,
                     const SolveState& state, NodeSums& sums, CircuitSolution& solution) {
    sumNodes(circuit, present, state, sums);
    solution.nodeVolt = state.nodeVolt;
    solution.floating.assign(floating.begin(), floating.end());
    solution.limiting.resize(state.limiting.size());
    for (std::size_t k = 0; k < state.limiting.size(); ++k) solution.limiting[k] = state.limiting[k] != 0;
    solution.kirchhoffWorst = 0;
    for (double sum : sums.sum) solution.kirchhoffWorst = std::max(solution.kirchhoffWorst, std::abs(sum));
    solution.powerBalance = 0;
    solution.elementWatt.assign(circuit.elementCount(), 0.0);
    solution.terminalAmpere.assign(circuit.nodeOfTerminal.size(), 0.0);
    for (std::size_t path = 0; path < circuit.paths.size(); ++path) {
        const auto [element, from, to, fromTerminal, toTerminal] = circuit.paths[path];
        if (!present[element]) continue;
        const double ampere = state.pathAmpere[path];
        const double watt = (state.nodeVolt[from] - state.nodeVolt[to]) * ampere;
        solution.terminalAmpere[fromTerminal] += ampere;
        solution.terminalAmpere[toTerminal] -= ampere;
        solution.elementWatt[element] += watt;
        solution.powerBalance += watt;
    }
    solution.elementTold.assign(circuit.elementCount(), 0.0);
    eachLaw(circuit.laws, [&]<class Law>(const LawBranches<Law>& branches) {
        if constexpr (Tells<Law>) {
            for (const LawBranch<Law>& b : branches)
                solution.elementTold[b.element] =
                    b.law.toldAt(voltsAcross(b, state.nodeVolt), Law::kBits > 0 ? state.bits[b.bits] : 0U);
        }
    });
    solution.elementAmpere.resize(circuit.elementCount());
    for (int element = 0; element < circuit.elementCount(); ++element)
        solution.elementAmpere[element] = solution.terminalAmpere[circuit.firstTerminal[element]];
}

}  // namespace tiepoint
