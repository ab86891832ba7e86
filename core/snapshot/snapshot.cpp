#include "core/snapshot/snapshot.h"

#include "core/base/stopping.h"
#include "core/bench/bench_inputs.h"
#include "core/snapshot/settled_snapshot.h"

#include <algorithm>
#include <limits>

namespace tiepoint {

const std::shared_ptr<const Inputs>& noInputs() {
    static const auto none = std::make_shared<const Inputs>();
    return none;
}

double Snapshot::leadVoltage(int lead) const {
    if (status() != Status::Solved) return std::numeric_limits<double>::quiet_NaN();
    return solution.netVoltage[layout->netOfLead[lead]];
}

double Snapshot::brightness(int part) const {
    if (!emitters || emitters->firstOfPart[part] == emitters->firstOfPart[part + 1]) return 0;
    return *std::max_element(emitterBrightness.begin() + emitters->firstOfPart[part],
                             emitterBrightness.begin() + emitters->firstOfPart[part + 1]);
}

std::shared_ptr<const Snapshot> evaluate(std::shared_ptr<const Bench> bench, const Inputs& inputs, const State& state) {
    stopIfAsked();
    const std::shared_ptr<const Layout> layout = buildLayout(std::move(bench));
    const auto here = std::make_shared<const Inputs>(inputsOn(*layout->bench, inputs));
    const auto snapshot = SettledSolver(layout).solve(*here, state);
    snapshot->inputs = here;
    snapshot->inputSequence = inputs.sequence;
    return snapshot;
}

}  // namespace tiepoint
