#pragma once
// What of a bench is read when its figures vary: each light's current, and what is pinned. Internal to core/spread.

#include "core/spread/figured_circuit.h"
#include "core/spread/spread.h"

#include <functional>
#include <vector>

namespace tiepoint {

struct Readout {
    SpreadReading about;  ///< name, quantity, unit, light
    std::function<double(FiguredCircuit&)> read;
};
std::vector<Readout> readoutsOf(const Snapshot& nominal, const FiguredCircuit& circuit);
/// Volts at holes, in their order.
std::vector<Readout> readoutsAt(const Layout& layout, const std::vector<Hole>& holes);

}  // namespace tiepoint
