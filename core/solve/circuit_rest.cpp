// Bits at rest, and states of rest that aren't the only one (see circuit_solver.h).

#include "core/solve/circuit_reading.h"
#include "core/solve/circuit_solver.h"

#include <algorithm>
#include <cmath>

namespace tiepoint {

namespace {

constexpr std::size_t kMostStarts = 12;  ///< searches for other states, each about as long as the first
constexpr double kOtherShare = 1e-6;     ///< of the largest current: what makes it another state
constexpr double kOtherAmpere = 1e-9;

}  // namespace

bool CircuitSolver::mayFeedBack(std::span<const char> present) const {
    bool may = false;
    eachLaw(circuit_.laws, [&]<class Law>(const LawBranches<Law>& branches) {
        if (Law::kRising) return;
        for (const LawBranch<Law>& b : branches) may = may || present[b.element];
    });
    return may;
}

int CircuitSolver::flipOneBit(std::span<const char> present) {
    int flipped = -1;
    eachLaw(circuit_.laws, [&]<class Law>(const LawBranches<Law>& branches) {
        if constexpr (HasBits<Law>) {
            for (const LawBranch<Law>& b : branches) {
                if (flipped >= 0 || !present[b.element]) continue;
                typename Law::Amperes amperes{};
                std::copy_n(state_.pathAmpere.begin() + circuit_.firstPath[b.element], Law::kPaths, amperes.begin());
                const auto volts = voltsAcross(b, state_.nodeVolt);
                unsigned& bits = state_.bits[b.bits];
                for (int bit = 0; bit < Law::kBits && flipped < 0; ++bit) {
                    if (!(b.law.eventAt(bit, volts, amperes, bits) > 0)) continue;
                    bits ^= 1U << bit;
                    flipped = b.element;
                }
            }
        }
    });
    return flipped;
}

bool CircuitSolver::isSaddle(std::span<const char> present, CircuitPlan& plan) {
    for (Island& island : plan.islands) {
        const std::vector<int> leaving = island.leavingNodes(state_);
        if (leaving.empty()) continue;
        std::vector<int> elements;
        eachLaw(circuit_.laws, [&]<class Law>(const LawBranches<Law>& branches) {
            if (Law::kRising) return;
            for (const LawBranch<Law>& b : branches) {
                const bool there =
                    std::find_first_of(b.nodes.begin(), b.nodes.end(), leaving.begin(), leaving.end()) != b.nodes.end();
                if (present[b.element] && there) elements.push_back(b.element);
            }
        });
        failWith(std::move(elements), Trouble::ManyRests);
        return true;
    }
    return false;
}

/// Searches again with what can be off off: all, then all but one.
bool CircuitSolver::hasOtherRest(std::span<const char> present, CircuitPlan& plan) {
    std::vector<int> switchable;
    eachLaw(circuit_.laws, [&](const auto& branches) {
        for (const auto& b : branches)
            if (b.law.canBeOff() && present[b.element]) switchable.push_back(b.element);
    });
    if (switchable.empty()) return false;
    const SolveState found = state_;
    const int iterations = solution_.iterations;
    double largest = 0;
    for (const double ampere : found.pathAmpere) largest = std::max(largest, std::abs(ampere));
    const std::size_t starts = std::min(switchable.size() + 1, kMostStarts);
    for (std::size_t start = 0; start < starts; ++start) {
        state_ = found;
        std::fill(state_.nodeVolt.begin(), state_.nodeVolt.end(), 0.0);
        state_.resetTouch(circuit_);
        const int on = start == 0 ? -1 : switchable[start - 1];
        eachLaw(circuit_.laws, [&](const auto& branches) {
            for (const auto& b : branches)
                if (b.law.canBeOff() && b.element != on) state_.setTouch(b, b.law.offVolts());
        });
        if (!runPlan(plan, {})) continue;
        findKnownCurrents(circuit_, present, plan.known, state_, sums_);
        if (!isContent(present)) continue;
        std::vector<int> differing;
        for (std::size_t path = 0; path < found.pathAmpere.size(); ++path) {
            const double apart = std::abs(state_.pathAmpere[path] - found.pathAmpere[path]);
            const int element = circuit_.paths[path].element;
            const bool isSwitchable = std::find(switchable.begin(), switchable.end(), element) != switchable.end();
            const bool counted = !differing.empty() && differing.back() == element;
            if (apart > kOtherAmpere + kOtherShare * largest && isSwitchable && !counted) differing.push_back(element);
        }
        if (differing.empty()) continue;
        failWith(std::move(differing), Trouble::ManyRests);
        return true;
    }
    state_ = found;
    solution_.iterations = iterations;
    return false;
}

void CircuitSolver::failWith(std::vector<int> elements, Trouble trouble) {
    solution_.trouble = trouble;
    std::sort(elements.begin(), elements.end());
    elements.erase(std::unique(elements.begin(), elements.end()), elements.end());
    solution_.troubleElements = std::move(elements);
}

}  // namespace tiepoint
