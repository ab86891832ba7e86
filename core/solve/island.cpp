#include "core/solve/island.h"

#include "core/solve/rest_modes.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace tiepoint {

namespace {

constexpr int kMostIterations = 60;
constexpr int kPatience = 6;            ///< steps at all, then steps without progress, before rounding is blamed
constexpr double kCurveSettled = 1e-6;  ///< of nVt, and of a filament's scale
constexpr double kSettled = 1e-9;       ///< relative, of voltages and currents
constexpr double kSmallVolt = 1e-3;
constexpr double kSmallAmpere = 1e-12;
constexpr double kResidualAmpere = 1e-12;
constexpr double kResidualShare = 1e-12;

bool isSettled(const StepMeasure& m) {
    return m.curveStep <= kCurveSettled && m.voltStep <= kSettled * std::max(m.largestVolt, kSmallVolt) &&
           m.ampereStep <= kSettled * m.largestAmpere + kSmallAmpere;
}

}  // namespace

void Island::gather(const SolveState& state) {
    for (const Unknown& u : unknowns_) x_[u.place] = state.nodeVolt[u.node];
    for (const Constant& c : constants_) x_[c.place] = state.nodeVolt[c.node];
    for (const Source& s : sources_) x_[s.current] = state.pathAmpere[s.path];
    for (Injection& i : injections_) i.ampere = state.pathAmpere[i.path];
    eachLaw(laws_, [&](auto& placed) { placed.gather(state, x_); });
}

void Island::scatter(SolveState& state) const {
    for (const Unknown& u : unknowns_) state.nodeVolt[u.node] = x_[u.place];
    for (const Source& s : sources_) state.pathAmpere[s.path] = x_[s.current];
    for (const Conductor& c : conductors_) {
        state.pathAmpere[c.path] = c.siemens * (x_[c.ends.voltFrom] - x_[c.ends.voltTo]);
    }
    eachLaw(laws_, [&](const auto& placed) { placed.scatter(x_, state); });
}

void Island::load(const Drive& drive) {
    std::copy(baseValues_.begin(), baseValues_.end(), values_.begin());
    std::fill(right_.begin(), right_.end(), 0.0);
    for (const Conductor& c : conductors_) {
        const double current = c.siemens * (x_[c.ends.voltFrom] - x_[c.ends.voltTo]);
        right_[c.ends.sumFrom] -= current;
        right_[c.ends.sumTo] += current;
    }
    for (const Source& s : sources_) {
        const double current = x_[s.current];
        right_[s.ends.sumFrom] -= current;
        right_[s.ends.sumTo] += current;
        right_[s.equation] =
            drive.sourceScale * s.emfVolt - (x_[s.ends.voltFrom] - x_[s.ends.voltTo]) + s.ohm * current;
    }
    for (const Injection& i : injections_) right_[i.sum] -= i.sign * i.ampere;
    eachLaw(laws_, [&](auto& placed) { placed.load(x_, right_, values_, drive); });
}

/// Whether the sums that load() made, and the curves' distance from their law, are as small as rounding allows.
bool Island::isBalanced(double defectAmpere) const {
    double largest = 0, worst = defectAmpere;
    const auto meet = [&](double current) { largest = std::max(largest, std::abs(current)); };
    for (const Conductor& c : conductors_) meet(c.siemens * (x_[c.ends.voltFrom] - x_[c.ends.voltTo]));
    for (const Source& s : sources_) meet(x_[s.current]);
    for (const Injection& i : injections_) meet(i.ampere);
    eachLaw(laws_, [&](const auto& placed) { largest = placed.largestAmpere(largest, x_); });
    for (const Unknown& u : unknowns_) worst = std::max(worst, std::abs(right_[u.sum]));
    return worst <= kResidualAmpere + kResidualShare * largest;
}

StepMeasure Island::correct() {
    StepMeasure m;
    const int size = program_.size();
    for (int i = 0; i < size; ++i) x_[i] += right_[i];
    for (const Unknown& u : unknowns_) {
        m.voltStep = std::max(m.voltStep, std::abs(right_[u.place]));
        m.largestVolt = std::max(m.largestVolt, std::abs(x_[u.place]));
    }
    for (const Source& s : sources_) {
        m.ampereStep = std::max(m.ampereStep, std::abs(right_[s.current]));
        m.largestAmpere = std::max(m.largestAmpere, std::abs(x_[s.current]));
    }
    eachLaw(laws_, [&](auto& placed) { placed.move(x_, right_, m); });
    return m;
}

Island::Outcome Island::solve(SolveState& state, const Drive& drive) {
    gather(state);
    Outcome outcome;
    double bestStep = std::numeric_limits<double>::infinity(), defect = 0;
    int stalled = 0;
    while (!outcome.converged && outcome.iterations < kMostIterations) {
        ++outcome.iterations;
        load(drive);
        const bool balanced = outcome.iterations > kPatience && isBalanced(defect);
        if (!findStep()) break;
        const StepMeasure m = correct();
        const double step = std::max(m.curveStep, m.voltStep);
        if (!std::isfinite(step) || !std::isfinite(m.ampereStep)) break;
        stalled = balanced && step >= bestStep / 2 ? stalled + 1 : 0;
        bestStep = std::min(bestStep, step);
        defect = m.lawDefectAmpere;
        outcome.converged = isSettled(m) || stalled >= kPatience;
    }
    if (!outcome.converged) outcome.troubleNode = worstNode(drive);
    scatter(state);
    return outcome;
}

bool Island::findStep(bool watched) {
    const std::span<double> right = std::span(right_).first(program_.size());
    if (!feedsBack_ || !watched) return program_.run(values_, right);
    return watched_.run(program_, std::span(values_).first(program_.slotCount()), right);
}

bool Island::solveAgain() {
    const std::span<double> right = std::span(right_).first(program_.size());
    if (!feedsBack_) {
        program_.runAgain(values_, right);
        return true;
    }
    return watched_.runAgain(program_, std::span(values_).first(program_.slotCount()), right);
}

std::vector<int> Island::leavingNodes(const SolveState& state) {
    std::vector<int> leaving;
    if (!feedsBack_) return leaving;
    gather(state);
    load({});
    std::vector<ModeEntry> entries;
    for (int row = 0; row < program_.size(); ++row) {
        for (int slot = program_.rowStart(row); slot < program_.rowStart(row + 1); ++slot)
            entries.push_back({row, program_.columnOfSlot(slot), values_[slot]});
    }
    std::vector<int> equations, unknowns;
    for (int node : activeNodes_) {
        equations.push_back(unknowns_[node].sum);
        unknowns.push_back(unknowns_[node].place);
    }
    constexpr double kMoves = 0.1;  // of the node that moves most
    const std::vector<double> mode = growingMode(program_.size(), entries, equations, unknowns);
    for (std::size_t i = 0; i < mode.size(); ++i)
        if (mode[i] >= kMoves) leaving.push_back(unknowns_[activeNodes_[i]].node);
    return leaving;
}

/// Where Kirchhoff's current law fails worst at the end of a search that failed; a node that lost its number comes first.
int Island::worstNode(const Drive& drive) {
    load(drive);
    int worst = -1;
    double most = -1;
    for (const Unknown& u : unknowns_) {
        const double defect = std::abs(right_[u.sum]);
        if (!std::isfinite(x_[u.place]) || !std::isfinite(defect)) return u.node;
        if (defect <= most) continue;
        most = defect;
        worst = u.node;
    }
    return worst;
}

}  // namespace tiepoint
