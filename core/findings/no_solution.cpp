// The solver found no voltages and currents that satisfy the circuit: no number may be shown, and the place of the trouble is named.

#include "core/findings/rules.h"

namespace tiepoint {

std::vector<Finding> findNoSolution(const Snapshot& snapshot) {
    if (snapshot.status() != Status::None) return {};
    const Bench& bench = *snapshot.layout->bench;
    Finding finding;
    for (const int index : snapshot.solution.troubleParts) {
        const Part& part = bench.parts[index];
        finding.parts.push_back(part.id);
        for (const auto& hole : part.leads) {
            if (hole) finding.holes.push_back(*hole);
        }
    }
    finding.text = snapshot.solution.reason.empty() ? "This circuit has no solution." : snapshot.solution.reason;
    return {finding};
}

}  // namespace tiepoint
