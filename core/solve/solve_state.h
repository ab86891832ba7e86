#pragma once
// The numbers that a search for an operating point moves, kept from one search to the next as its start.

#include "core/circuit/circuit.h"

#include <algorithm>
#include <vector>

namespace tiepoint {

struct SolveState {
    std::vector<double> nodeVolt;       ///< by node
    std::vector<double> touchVolt;      ///< by touch of the circuit: where the laws' tangents touched last
    std::vector<double> pathAmpere;     ///< by path of the circuit
    std::vector<signed char> limiting;  ///< by supply: 0 holds its voltage, -1 gives its limit, +1 takes its limit
    std::vector<unsigned> bits;         ///< by branch with bits
    std::vector<double> stored;         ///< by store of the circuit: charge, coulomb, or flux, weber
    std::vector<double> storing;        ///< by store: how it changes, ampere or volt

    /// A cold start: every law at its own start (junctions: their critical voltage), everything else at zero.
    void reset(const Circuit& circuit) {
        nodeVolt.assign(circuit.nodeCount, 0.0);
        resetTouch(circuit);
        pathAmpere.assign(circuit.paths.size(), 0.0);
        limiting.assign(circuit.supplies.size(), 0);
        resetBits(circuit);
        stored.assign(circuit.storeCount, 0.0);
        storing.assign(circuit.storeCount, 0.0);
    }
    void resetTouch(const Circuit& circuit) {
        touchVolt.resize(circuit.touchCount);
        eachLaw(circuit.laws, [&](const auto& branches) {
            for (const auto& b : branches) setTouch(b, b.law.startVolts());
        });
    }
    /// What power-up finds.
    void resetBits(const Circuit& circuit) {
        bits.assign(circuit.bitsCount, 0U);
        eachLaw(circuit.laws, [&](const auto& branches) {
            for (const auto& b : branches)
                if (b.law.startBits() != 0) bits[b.bits] = b.law.startBits();
        });
    }
    template <class Branch, class Volts>
    void setTouch(const Branch& branch, const Volts& volts) {
        std::copy(volts.begin(), volts.end(), touchVolt.begin() + branch.touch);
    }
};

/// How time goes on while currents are sought: each store changes as (what it holds - what it would hold if it stood still) * perSecond.
/// At rest nothing changes.
struct Pace {
    double perSecond = 0;           ///< 0: at rest
    const double* still = nullptr;  ///< by store
};

/// How hard the circuit is driven; the last stage of every search has scale 1 and the ordinary leak.
struct Drive {
    double sourceScale = 1;
    double leakSiemens = kJunctionLeakSiemens;
    Pace pace{};
};

}  // namespace tiepoint
