#include "core/snapshot/snapshot_maker.h"

#include "core/circuit/element.h"
#include "core/light/lightness.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <limits>
#include <numbers>
#include <span>

namespace tiepoint {
namespace {

constexpr double kFullTurn = 2 * std::numbers::pi;

void addUpPower(Snapshot& snapshot) {
    snapshot.partPower.assign(snapshot.layout->bench->parts.size(), 0);
    for (int e = 0; e < snapshot.solution.elementCount(); ++e)
        snapshot.partPower[(*snapshot.solution.places)[e].part] += snapshot.solution.elementWatt[e];
}

/// Of each lead: a joined leg's own share of the current comes from the flow.
void shareCurrents(const Layout& layout, const std::vector<double>& pieces, std::vector<double>& leads) {
    for (int lead = 0; lead < layout.leadCount(); ++lead)
        if (const int bridge = layout.pieceOfLead[lead]; bridge >= 0) leads[lead] = pieces[bridge];
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
    turning_.clear();
    turnedRadian_.assign(layout_->bench->parts.size(), 0);
    for (int e = 0; places_ && e < static_cast<int>(places_->size()); ++e) {
        const ElementPlace& place = (*places_)[static_cast<std::size_t>(e)];
        const PartKind& kind = *layout_->bench->parts[static_cast<std::size_t>(place.part)].kind;
        const ElementKind* element = findElement(kind.model[static_cast<std::size_t>(place.spec)].element);
        if (element == &kElementOf<MotorLaw>) turning_.push_back(e);
    }
}

void SnapshotMaker::addLight(const Solution& solution, double seconds) {
    assert(seconds >= 0);
    findEmitters(solution);
    for (std::size_t i = 0; i < lightSum_.size(); ++i) {
        const Emitter& emitter = emitters_->all[i];
        lightSum_[i] += seconds * emitter.lightAt(solution.elementAmpere[emitter.element]);
    }
    lightSeconds_ += seconds;
    for (const int e : turning_) {
        double& turned = turnedRadian_[static_cast<std::size_t>((*places_)[static_cast<std::size_t>(e)].part)];
        const double further = turned + seconds * solution.elementTold[static_cast<std::size_t>(e)];
        turned = further - kFullTurn * std::floor(further / kFullTurn);
    }
    if (seconds == 0 || solution.status == Status::None) return;
    ampereSum_.resize(solution.leadInjection.size());
    sizeSum_.resize(solution.leadInjection.size());
    for (std::size_t lead = 0; lead < ampereSum_.size(); ++lead) {
        ampereSum_[lead] += seconds * solution.leadInjection[lead];
        sizeSum_[lead] += seconds * std::abs(solution.leadInjection[lead]);
    }
}

/// Currents in metal are linear in what leads draw: the mean of the one is that of the other.
void SnapshotMaker::fillMeans(Snapshot& snapshot) {
    if (snapshot.solution.status != Status::Solved) {
        ampereSum_.clear();
        sizeSum_.clear();
    }
    if (!(lightSeconds_ > 0) || ampereSum_.empty()) return;
    constexpr double kToAndFro = 1.25, kNothingAmpere = 1e-6;
    double most = 0;
    for (const double size : sizeSum_) most = std::max(most, size);
    for (std::size_t lead = 0; lead < ampereSum_.size(); ++lead) {
        const bool counts = sizeSum_[lead] > most / 50 && sizeSum_[lead] > kNothingAmpere * lightSeconds_;
        if (counts && sizeSum_[lead] > kToAndFro * std::abs(ampereSum_[lead])) snapshot.alternates = true;
        ampereSum_[lead] /= lightSeconds_;
    }
    snapshot.leadMean = ampereSum_;
    snapshot.pieceMean.assign(layout_->pieces.size(), 0);
    flow_.solve(snapshot.leadMean, snapshot.pieceMean);
    shareCurrents(*layout_, snapshot.pieceMean, snapshot.leadMean);
    snapshot.largestMeanAmpere = largestMagnitude(snapshot.pieceMean, largestMagnitude(snapshot.leadMean, 0));
    std::fill(ampereSum_.begin(), ampereSum_.end(), 0.0);
    std::fill(sizeSum_.begin(), sizeSum_.end(), 0.0);
}

void SnapshotMaker::fillLight(Snapshot& snapshot) {
    snapshot.emitterBrightness.resize(lightSum_.size());
    light_.resize(lightSum_.size());
    for (std::size_t i = 0; i < lightSum_.size(); ++i) {
        const Emitter& emitter = emitters_->all[i];
        const double light = lightSeconds_ > 0 ? lightSum_[i] / lightSeconds_
                                               : emitter.lightAt(snapshot.solution.elementAmpere[emitter.element]);
        light_[i] = light;
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
    snapshot->leadCurrent = solution.leadInjection;
    shareCurrents(*layout_, snapshot->pieceCurrent, snapshot->leadCurrent);
    snapshot->moves = snapshot->alternates = false;
    snapshot->leadMean.clear();
    snapshot->pieceMean.clear();
    snapshot->emitterSteady.clear();
    snapshot->largestMeanAmpere = snapshot->flashesPerSecond = 0;
    fillMeans(*snapshot);
    addUpPower(*snapshot);
    fillLight(*snapshot);
    snapshot->turnedRadian = turnedRadian_;
    snapshot->largestCurrentAmpere =
        largestMagnitude(snapshot->pieceCurrent, largestMagnitude(snapshot->leadCurrent, 0));
    return snapshot;
}

std::shared_ptr<Snapshot> SnapshotMaker::makeMoving(const Solution& solution, double secondsSeen) {
    auto snapshot = make(solution);
    snapshot->moves = true;
    flashes_.take(light_, secondsSeen);
    snapshot->flashesPerSecond = flashes_.perSecond();
    snapshot->emitterSteady.resize(light_.size());
    for (std::size_t i = 0; i < light_.size(); ++i)
        snapshot->emitterSteady[i] = brightnessOfLight(flashes_.meanLight(i));
    return snapshot;
}

}  // namespace tiepoint
