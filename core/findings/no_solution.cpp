// The solver found no voltages and currents that satisfy the circuit: no number may be shown, and the place of the trouble is named.

#include "core/findings/rules.h"
#include "core/findings/trial.h"
#include "core/words/words.h"

namespace tiepoint {

Suspicions findNoSolution(const Examination& examination) {
    for (const Position& position : examination.positions()) {
        const Solution& solution = position.snapshot->solution;
        if (solution.status != Status::None) continue;
        Suspicion found;
        for (const int index : solution.troubleParts) {
            const Part& part = examination.part(index);
            found.finding.parts.push_back(part.id);
            for (const Hole& hole : holesOf(part)) found.finding.holes.push_back(hole);
        }
        const std::string reason = solution.reason.empty() ? say("finding.noSolution") : solution.reason;
        found.finding.text = saidOf(reason, position);
        return {found};
    }
    return {};
}

}  // namespace tiepoint
