#include "core/snapshot/snapshot_maker.h"

#include "core/light/lightness.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <limits>
#include <span>

namespace tiepoint {
namespace {

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

void addUpPower(Snapshot& snapshot) {
    snapshot.partPower.assign(snapshot.layout->bench->parts.size(), 0);
    for (int e = 0; e < snapshot.solution.elementCount(); ++e)
        snapshot.partPower[(*snapshot.solution.places)[e].part] += snapshot.solution.elementWatt[e];
}

double largestMagnitude(std::span<const double> currents, double atLeast) {
    for (const double current : currents) atLeast = std::max(atLeast, std::abs(current));
    return atLeast;
}

}  // namespace

SnapshotMaker::SnapshotMaker(std::shared_ptr<const Layout> layout) : layout_(std::move(layout)), flow_(layout_) {}

void SnapshotMaker::findEmitters(const Solution& solution) {
    if (emitters_ && places_ == solution.places) return;
    places_ = solution.places;
    emitters_ = std::make_shared<const Emitters>(*layout_->bench, places_ ? *places_ : ElementPlaces());
    lightSum_.assign(emitters_->all.size(), 0);
    lightSeconds_ = 0;
}

void SnapshotMaker::addLight(const Solution& solution, double seconds) {
    assert(seconds >= 0);
    findEmitters(solution);
    for (std::size_t i = 0; i < lightSum_.size(); ++i) {
        const Emitter& emitter = emitters_->all[i];
        lightSum_[i] += seconds * emitter.lightAt(solution.elementAmpere[emitter.element]);
    }
    lightSeconds_ += seconds;
}

void SnapshotMaker::fillLight(Snapshot& snapshot) {
    snapshot.emitterBrightness.resize(lightSum_.size());
    for (std::size_t i = 0; i < lightSum_.size(); ++i) {
        const Emitter& emitter = emitters_->all[i];
        const double light = lightSeconds_ > 0 ? lightSum_[i] / lightSeconds_
                                               : emitter.lightAt(snapshot.solution.elementAmpere[emitter.element]);
        snapshot.emitterBrightness[i] = brightnessOfLight(light);
    }
    std::fill(lightSum_.begin(), lightSum_.end(), 0.0);
    lightSeconds_ = 0;
}

std::shared_ptr<Snapshot> SnapshotMaker::make(const Solution& solution) {
    findEmitters(solution);
    auto snapshot = pool_.take();
    snapshot->layout = layout_;
    snapshot->emitters = emitters_;
    snapshot->inputs = noInputs();
    snapshot->revision = snapshot->inputSequence = 0;
    snapshot->timeSecond = 0;
    snapshot->settled.reset();
    snapshot->solution = solution;
    // Without a solution there is no number to show: NaN, as in the solution itself.
    const double unsolved = solution.status == Status::None ? std::numeric_limits<double>::quiet_NaN() : 0;
    snapshot->pieceCurrent.assign(layout_->pieces.size(), unsolved);
    if (solution.status == Status::Solved) flow_.solve(solution.leadInjection, snapshot->pieceCurrent);
    shareLeadCurrents(*snapshot);
    addUpPower(*snapshot);
    fillLight(*snapshot);
    snapshot->largestCurrentAmpere =
        largestMagnitude(snapshot->pieceCurrent, largestMagnitude(snapshot->leadCurrent, 0));
    return snapshot;
}

}  // namespace tiepoint
