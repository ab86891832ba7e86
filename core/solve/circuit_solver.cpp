#include "core/solve/circuit_solver.h"

#include "core/base/stopping.h"
#include "core/solve/circuit_reading.h"

#include <algorithm>
#include <cmath>
#include <set>

namespace tiepoint {

namespace {

constexpr std::size_t kKeptPlans = 16;
constexpr double kAcceptAmpere = 1e-9;
constexpr double kAcceptShare = 1e-6;

}  // namespace

CircuitSolver::CircuitSolver(Circuit circuit) : circuit_(std::move(circuit)) { state_.reset(circuit_); }

const CircuitSolution& CircuitSolver::solve(std::span<const char> present, int reference) {
    solution_.troubleElements.clear();
    solution_.trouble = Trouble::None;
    solution_.iterations = 0;
    if (const std::vector<int> loop = idealLoop(circuit_, present); !loop.empty()) {
        solution_.trouble = Trouble::IdealLoop;
        for (int k : loop) solution_.troubleElements.push_back(circuit_.supplies[k].element);
        return solution_;
    }
    state_.resetBits(circuit_);
    if (mayFeedBack(present)) restart();
    bool found = search(present, reference);
    if (!found && !cold_) {
        restart();
        found = search(present, reference);
    }
    if (!found) {
        restart();
    } else {
        cold_ = false;
        solution_.trouble = Trouble::None;
        solution_.troubleElements.clear();
    }
    return solution_;
}

void CircuitSolver::restart() {
    state_.reset(circuit_);
    cold_ = true;
}

/// Settles limits and bits, and takes what then stands if it is a state of rest.
bool CircuitSolver::search(std::span<const char> present, int reference) {
    std::set<std::vector<unsigned>> seen;
    std::vector<int> flipped;
    for (;;) {
        CircuitPlan* const plan = settleLimits(present, reference);
        if (!plan) return false;
        std::vector<unsigned> before = state_.bits;
        const int element = flipOneBit(present);
        if (element < 0) return accept(present, *plan);
        flipped.push_back(element);
        if (!seen.insert(std::move(before)).second) {
            failWith(flipped, Trouble::NeverRests);
            return false;
        }
    }
}

bool CircuitSolver::accept(std::span<const char> present, CircuitPlan& plan) {
    tiepoint::sumNodes(circuit_, present, state_, sums_);
    if (const int node = worstNode(); node >= 0) {
        failAt(node, Trouble::Unbalanced, present);
        return false;
    }
    if (mayFeedBack(present) && (isSaddle(present, plan) || hasOtherRest(present, plan))) return false;
    publishSolution(circuit_, present, plan.floating, state_, sums_, solution_);
    return true;
}

CircuitPlan* CircuitSolver::solveOnce(std::span<const char> present, int reference) {
    stopIfAsked();
    CircuitPlan& plan = planFor(present, reference);
    if (!runPlan(plan, {}) && !runHard(plan)) {
        failAt(troubleNode_, Trouble::NotConverged, present);
        return nullptr;
    }
    findKnownCurrents(circuit_, present, plan.known, state_, sums_);
    return &plan;
}

/// The node furthest beyond what is accepted of Kirchhoff's current law; -1 if it holds everywhere.
int CircuitSolver::worstNode() const {
    int worst = -1;
    double most = 1;
    for (int node = 0; node < circuit_.nodeCount; ++node) {
        const double share = std::abs(sums_.sum[node]) / (kAcceptAmpere + kAcceptShare * sums_.largest[node]);
        if (!std::isfinite(share)) return node;
        if (share <= most) continue;
        most = share;
        worst = node;
    }
    return worst;
}

CircuitPlan& CircuitSolver::planFor(std::span<const char> present, int reference) {
    key_.assign(present.begin(), present.end());
    for (signed char limited : state_.limiting) key_.push_back(limited != 0);
    for (unsigned rest = static_cast<unsigned>(reference + 1); rest != 0; rest >>= 7)
        key_.push_back(static_cast<char>(rest & 127));
    const auto kept = std::find_if(plans_.begin(), plans_.end(), [&](const KeptPlan& p) { return p.key == key_; });
    if (kept != plans_.end()) return kept->plan;
    if (plans_.size() == kKeptPlans) plans_.pop_front();
    plans_.push_back({key_, makePlan(circuit_, present, state_.limiting, reference)});
    return plans_.back().plan;
}

void CircuitSolver::setLimitedCurrents(const Drive& drive) {
    for (std::size_t k = 0; k < circuit_.supplies.size(); ++k) {
        const SupplyBranch& s = circuit_.supplies[k];
        if (state_.limiting[k]) ampereOf(s) = state_.limiting[k] * s.limitAmpere * drive.sourceScale;
    }
}

bool CircuitSolver::runPlan(CircuitPlan& plan, const Drive& drive) {
    for (int path : plan.idle) state_.pathAmpere[path] = 0;
    spreadKnownVolts(circuit_, plan.known, drive.sourceScale, state_);
    setLimitedCurrents(drive);
    int slowest = 0;
    for (Island& island : plan.islands) {
        stopIfAsked();
        const Island::Outcome outcome = island.solve(state_, drive);
        slowest = std::max(slowest, outcome.iterations);
        if (!outcome.converged) {
            troubleNode_ = outcome.troubleNode;
            return false;
        }
    }
    solution_.iterations = slowest;
    return true;
}

/// From the critical voltage, then with sources stepped up, then with leaks stepped down. Limits stay as they are.
bool CircuitSolver::runHard(CircuitPlan& plan) {
    const std::vector<signed char> limits = state_.limiting;
    const std::vector<unsigned> bits = state_.bits;
    const auto again = [&] {
        state_.reset(circuit_);
        state_.limiting = limits;
        state_.bits = bits;
    };
    if (!cold_) {
        again();
        if (runPlan(plan, {})) return true;
    }
    again();
    if (runFromNothing(plan)) return true;
    again();
    constexpr double kFirstLeak = 1e-3;
    for (double leak = kFirstLeak; leak > 2 * kJunctionLeakSiemens; leak /= 10) {
        if (!runPlan(plan, {1, leak})) return false;
    }
    return runPlan(plan, {});
}

bool CircuitSolver::runFromNothing(CircuitPlan& plan) {
    constexpr double kFirstStep = 0.1;
    constexpr double kSmallestStep = 1e-4;
    std::fill(state_.touchVolt.begin(), state_.touchVolt.end(), 0.0);
    SolveState good = state_;
    double reached = 0;
    for (double step = kFirstStep; step > kSmallestStep;) {
        const double next = std::min(1.0, reached + step);
        if (runPlan(plan, {next, kJunctionLeakSiemens})) {
            if (next == 1.0) return true;
            reached = next;
            good = state_;
            step *= 2;
        } else {
            state_ = good;
            step /= 4;
        }
    }
    return false;
}

/// The elements at a node; without a node, or one where nothing is, every supply that is on.
void CircuitSolver::failAt(int node, Trouble trouble, std::span<const char> present) {
    solution_.trouble = trouble;
    solution_.troubleElements.clear();
    for (int element = 0; element < circuit_.elementCount(); ++element) {
        const auto nodes = circuit_.nodesOf(element);
        const bool touches = std::find(nodes.begin(), nodes.end(), node) != nodes.end();
        if (present[element] && touches) solution_.troubleElements.push_back(element);
    }
    if (solution_.troubleElements.empty()) failAmong({}, trouble, present);
}

/// These supplies; of none, every supply that is on.
void CircuitSolver::failAmong(std::span<const int> supplies, Trouble trouble, std::span<const char> present) {
    solution_.trouble = trouble;
    solution_.troubleElements.clear();
    for (int k = 0; k < static_cast<int>(circuit_.supplies.size()); ++k) {
        const int element = circuit_.supplies[k].element;
        const bool named = supplies.empty() || std::find(supplies.begin(), supplies.end(), k) != supplies.end();
        if (named && present[element]) solution_.troubleElements.push_back(element);
    }
}

}  // namespace tiepoint
