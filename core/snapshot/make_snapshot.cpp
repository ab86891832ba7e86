#include "core/snapshot/make_snapshot.h"

#include "core/base/stopping.h"
#include "core/bench/resolve.h"
#include "core/light/lightness.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace tiepoint {
namespace {

// The figure of an element that says how much of its light an eye sees; absent: all of it.
constexpr std::string_view kVisible = "visible";

double visibleShare(const Part& part) {
    for (std::size_t v = 0; v < part.kind->values.size(); ++v) {
        const ValueSpec& spec = part.kind->values[v];
        if (spec.type != ValueType::Choice) continue;
        const auto& constants = spec.choices[static_cast<std::size_t>(part.value(static_cast<int>(v)))].constants;
        if (const auto found = constants.find(kVisible); found != constants.end()) return found->second;
    }
    return 1;
}

// A joined leg's own share comes from the flow; any other lead carries all that its elements draw.
void shareLeadCurrents(Snapshot& snapshot) {
    const Layout& layout = *snapshot.layout;
    snapshot.leadCurrent = snapshot.solution.leadInjection;
    for (int lead = 0; lead < layout.leadCount(); ++lead) {
        if (const int bridge = layout.pieceOfLead[lead]; bridge >= 0) {
            snapshot.leadCurrent[lead] = snapshot.pieceCurrent[bridge];
        }
    }
}

void addUpParts(Snapshot& snapshot) {
    const Bench& bench = *snapshot.layout->bench;
    snapshot.partPower.assign(bench.parts.size(), 0);
    snapshot.partBrightness.assign(bench.parts.size(), 0);
    for (const ElementState& element : snapshot.solution.elements) {
        const Part& part = bench.parts[element.part];
        snapshot.partPower[element.part] += element.powerWatt;
        if (part.kind->emitsLight) {
            // A junction lights one way only; a filament doesn't mind which way its current runs.
            const double ampere = part.kind->needsResistor ? element.currentAmpere : std::abs(element.currentAmpere);
            snapshot.partBrightness[element.part] =
                brightness(visibleShare(part) * ampere, ratedCurrentAmpere(part), part.kind->lightExponent);
        }
    }
}

double largestMagnitude(const std::vector<double>& currents, double atLeast) {
    for (const double current : currents) atLeast = std::max(atLeast, std::abs(current));
    return atLeast;
}

}  // namespace

std::shared_ptr<Snapshot> makeSnapshot(std::shared_ptr<const Layout> layout, const Solution& solution, Flow& flow) {
    auto snapshot = std::make_shared<Snapshot>();
    snapshot->layout = std::move(layout);
    snapshot->solution = solution;
    // Without a solution there is no number to show: NaN, as in the solution itself.
    const double unsolved = solution.status == Status::None ? std::numeric_limits<double>::quiet_NaN() : 0;
    snapshot->pieceCurrent.assign(snapshot->layout->pieces.size(), unsolved);
    if (solution.status == Status::Solved) flow.solve(solution.leadInjection, snapshot->pieceCurrent);
    shareLeadCurrents(*snapshot);
    addUpParts(*snapshot);
    snapshot->largestCurrentAmpere =
        largestMagnitude(snapshot->pieceCurrent, largestMagnitude(snapshot->leadCurrent, 0));
    return snapshot;
}

double Snapshot::leadVoltage(int lead) const {
    if (status() != Status::Solved) return std::numeric_limits<double>::quiet_NaN();
    return solution.netVoltage[layout->netOfLead[lead]];
}

std::shared_ptr<const Snapshot> evaluate(std::shared_ptr<const Bench> bench, const Inputs& inputs) {
    stopIfAsked();
    const std::shared_ptr<const Layout> layout = buildLayout(std::move(bench));
    OperatingPoint point;
    point.setLayout(layout);
    Flow flow(layout);
    auto snapshot = makeSnapshot(layout, point.solve(inputs), flow);
    snapshot->inputs = inputs;
    snapshot->inputSequence = inputs.sequence;
    return snapshot;
}

}  // namespace tiepoint
