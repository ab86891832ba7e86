#include "core/course/ghost.h"

#include "core/flow/flow.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace tiepoint {

std::shared_ptr<const Snapshot> ghostOf(const Situation& situation, const WrongIdea& idea) {
    auto ghost = std::make_shared<Snapshot>(*evaluate(situation.bench, situation.inputs));
    const Layout& layout = *ghost->layout;
    const Bench& bench = *layout.bench;
    ghost->solution.status = Status::Solved;
    std::ranges::fill(ghost->solution.netVoltage, std::numeric_limits<double>::quiet_NaN());
    std::vector<double> injection(static_cast<std::size_t>(layout.leadCount()), 0.0);
    for (const auto& [in, ampere] : idea.amperes) {
        const int part = bench.partIndex(in.id);
        injection[layout.leadIndex(part, bench.parts[part].kind->leadIndex(in.lead))] = ampere;
    }
    ghost->solution.leadInjection = injection;
    ghost->leadCurrent = injection;
    ghost->pieceCurrent.assign(layout.pieces.size(), 0.0);
    Flow(ghost->layout).solve(injection, ghost->pieceCurrent);
    std::ranges::fill(ghost->partPower, 0.0);
    std::ranges::fill(ghost->emitterBrightness, 0.0);
    ghost->largestCurrentAmpere = 0;
    for (const std::vector<double>* all : {&ghost->leadCurrent, &ghost->pieceCurrent}) {
        for (const double ampere : *all)
            ghost->largestCurrentAmpere = std::max(ghost->largestCurrentAmpere, std::abs(ampere));
    }
    return ghost;
}

}  // namespace tiepoint
