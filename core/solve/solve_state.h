#pragma once
// The numbers that a search for an operating point moves, kept from one search to the next as its start.

#include "core/circuit/circuit.h"

#include <vector>

namespace tiepoint {

struct SolveState {
    std::vector<double> nodeVolt;       ///< by node
    std::vector<double> innerVolt;      ///< by junction: voltage of the inner junction
    std::vector<double> filamentVolt;   ///< by filament: where its tangent touched last
    std::vector<double> elementAmpere;  ///< by element, from `from` to `to`
    std::vector<signed char> limiting;  ///< by supply: 0 holds its voltage, -1 gives its limit, +1 takes its limit

    /// A cold start: every curve at its own start (junctions: their critical voltage), everything else at zero.
    void reset(const Circuit& circuit) {
        nodeVolt.assign(circuit.nodeCount, 0.0);
        start(innerVolt, circuit.junctions);
        start(filamentVolt, circuit.filaments);
        elementAmpere.assign(circuit.elementCount(), 0.0);
        limiting.assign(circuit.supplies.size(), 0);
    }

private:
    template <class Branch>
    static void start(std::vector<double>& volts, const std::vector<Branch>& branches) {
        volts.resize(branches.size());
        for (std::size_t i = 0; i < volts.size(); ++i) volts[i] = branches[i].law.startVolt();
    }
};

/// How hard the circuit is driven; the last stage of every search has scale 1 and the ordinary leak.
struct Drive {
    double sourceScale = 1;
    double leakSiemens = kJunctionLeakSiemens;
};

}  // namespace tiepoint
