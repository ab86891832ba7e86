// Which supplies are at their limit (see circuit_solver.h).

#include "core/base/stopping.h"
#include "core/solve/circuit_solver.h"
#include "core/solve/supply_role.h"

#include <algorithm>
#include <cmath>
#include <set>

namespace tiepoint {

namespace {

constexpr std::size_t kMostTried = 6;  ///< supplies whose roles are tried in every combination: 729

}  // namespace

CircuitPlan* CircuitSolver::settleLimits(std::span<const char> present, int reference) {
    const int supplies = static_cast<int>(circuit_.supplies.size());
    const int patience = 2 * supplies + 2;
    const bool mayCycle = mayFeedBack(present);
    std::set<std::vector<signed char>> seen;
    changed_.clear();
    for (std::size_t k = 0; k < circuit_.supplies.size(); ++k) {
        if (!present[circuit_.supplies[k].element]) state_.limiting[k] = 0;
    }
    for (int round = 0; round < 8 * patience; ++round) {
        CircuitPlan* const plan = solveOnce(present, reference);
        if (!plan) return nullptr;
        const int supply = changeOneLimit(present, round < patience);
        if (supply < 0) return plan;
        changed_.push_back(supply);
        if (mayCycle && round >= patience && !seen.insert(state_.limiting).second) break;
    }
    if (mayCycle) {
        if (CircuitPlan* const plan = tryRoles(present, reference)) return plan;
    }
    // The last rounds repeat themselves: who changes in them are those that can't agree.
    const auto last = std::min(changed_.size(), static_cast<std::size_t>(patience));
    failAmong(std::span(changed_).last(last), Trouble::LimitsContend, present);
    return nullptr;
}

/// Every combination of roles of the supplies, or where they are many of those that changed theirs, each from a cold start.
CircuitPlan* CircuitSolver::tryRoles(std::span<const char> present, int reference) {
    std::vector<int> contested;
    for (int k = 0; k < static_cast<int>(circuit_.supplies.size()); ++k)
        if (present[circuit_.supplies[k].element] && std::isfinite(circuit_.supplies[k].limitAmpere))
            contested.push_back(k);
    if (contested.size() > kMostTried) {
        const std::set<int> changed(changed_.begin(), changed_.end());
        contested.assign(changed.begin(), changed.end());
    }
    if (contested.size() > kMostTried) return nullptr;
    const std::vector<signed char> others = state_.limiting;
    const std::vector<unsigned> bits = state_.bits;
    int combinations = 1;
    for (std::size_t k = 0; k < contested.size(); ++k) combinations *= 3;
    for (int combination = 0; combination < combinations; ++combination) {
        restart();
        state_.limiting = others;
        state_.bits = bits;
        int rest = combination;
        for (const int supply : contested) {
            constexpr signed char kRoles[] = {0, -1, 1};
            state_.limiting[supply] = kRoles[rest % 3];
            rest /= 3;
        }
        CircuitPlan* const plan = solveOnce(present, reference);
        if (plan && isContent(present)) return plan;
    }
    return nullptr;
}

bool CircuitSolver::isContent(std::span<const char> present) const {
    for (int k = 0; k < static_cast<int>(circuit_.supplies.size()); ++k)
        if (present[circuit_.supplies[k].element] && !(excessOf(k) <= 0)) return false;
    return true;
}

/// How far a supply is beyond what its role allows, relative; 0 or less if it is content.
double CircuitSolver::excessOf(int supply) const {
    const SupplyBranch& s = circuit_.supplies[supply];
    const double volt = state_.nodeVolt[s.from] - state_.nodeVolt[s.to];
    return supplyExcess(state_.limiting[supply], state_.pathAmpere[circuit_.firstPath[s.element]], volt, s.emfVolt,
                        s.seriesOhm, s.limitAmpere);
}

int CircuitSolver::changeOneLimit(std::span<const char> present, bool worstFirst) {
    int offender = -1;
    double worst = 0;
    for (int k = 0; k < static_cast<int>(circuit_.supplies.size()); ++k) {
        if (!present[circuit_.supplies[k].element]) continue;
        const double excess = excessOf(k);
        if (!(excess > worst)) continue;
        worst = excess;
        offender = k;
        if (!worstFirst) break;
    }
    if (offender < 0) return -1;
    signed char& role = state_.limiting[offender];
    if (role != 0)
        role = 0;
    else
        role = ampereOf(circuit_.supplies[offender]) < 0 ? -1 : 1;
    return offender;
}

}  // namespace tiepoint
