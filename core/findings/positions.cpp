// Positions are counted like digits: each switch is one digit, its throws the values. They are ordered by how many throws away they are,
// so that a fault is told by the smallest change that brings it.

#include "core/findings/positions.h"

#include "core/findings/switch_groups.h"
#include "core/snapshot/lit.h"
#include "core/snapshot/position_solver.h"

#include <fmt/format.h>

#include <algorithm>
#include <functional>
#include <iterator>
#include <numeric>
#include <set>

namespace tiepoint {
namespace {

constexpr std::size_t kMostCombinations = 64;

/// The throws of one group, by their place among all.
using Group = std::vector<std::size_t>;

std::vector<Group> groupsOf(const Layout& layout, const std::vector<Throw>& all) {
    std::vector<Group> groups;
    const std::vector<int> numbers = switchGroups(layout, all);
    for (std::size_t t = 0; t < numbers.size(); ++t) {
        groups.resize(std::max(groups.size(), static_cast<std::size_t>(numbers[t]) + 1));
        groups[static_cast<std::size_t>(numbers[t])].push_back(t);
    }
    return groups;
}

bool fewCombinations(const std::vector<Throw>& all, const Group& group) {
    std::size_t count = 1;
    for (const std::size_t t : group) {
        count *= static_cast<std::size_t>(all[t].values);
        if (count > kMostCombinations) return false;
    }
    return true;
}

/// Every combination of a group's throws; the others stay as they are.
std::vector<Digits> everyCombination(const std::vector<Throw>& all, const Group& group, const Digits& now) {
    std::vector<Digits> found{now};
    for (const std::size_t t : group) {
        const std::size_t before = found.size();
        for (int value = 0; value < all[t].values; ++value) {
            for (std::size_t i = 0; value != now[t] && i < before; ++i) {
                found.push_back(found[i]);
                found.back()[t] = value;
            }
        }
    }
    return found;
}

/// One throw of a group away.
std::vector<Digits> nearCombinations(const std::vector<Throw>& all, const Group& group, const Digits& now) {
    std::vector<Digits> found;
    for (const std::size_t t : group) {
        for (int value = 0; value < all[t].values; ++value) {
            if (value == now[t]) continue;
            found.push_back(now);
            found.back()[t] = value;
        }
    }
    return found;
}

/// Every throw of a group changed.
void changeAll(const std::vector<Throw>& all, const Group& group, Digits& digits) {
    for (const std::size_t t : group) digits[t] = digits[t] == all[t].values - 1 ? 0 : all[t].values - 1;
}

int throwsApart(const Digits& a, const Digits& b) {
    return std::inner_product(a.begin(), a.end(), b.begin(), 0, std::plus<>(), std::not_equal_to<>());
}

PositionPlan planFor(const std::vector<Group>& groups, const std::vector<Throw>& all, const Digits& now) {
    PositionPlan plan;
    std::set<Digits> known{now};
    const auto add = [&](const std::vector<Digits>& more) {
        std::ranges::copy_if(more, std::back_inserter(plan.others),
                             [&](const Digits& each) { return known.insert(each).second; });
    };
    Digits everything = now;
    for (const Group& group : groups) {
        const bool few = fewCombinations(all, group);
        plan.complete = plan.complete && few;
        add(few ? everyCombination(all, group, now) : nearCombinations(all, group, now));
        changeAll(all, group, everything);
    }
    add({everything});
    std::ranges::stable_sort(plan.others, {}, [&](const Digits& each) { return throwsApart(each, now); });
    return plan;
}

}  // namespace

PositionPlan planPositions(const Layout& layout, const std::vector<Throw>& all, const Digits& now) {
    return planFor(groupsOf(layout, all), all, now);
}

std::string positionWords(const std::vector<Throw>& all, const Bench& bench, const Digits& digits, const Digits& now) {
    std::vector<std::string> pressed, released, thrown;
    for (std::size_t t = 0; t < all.size(); ++t) {
        const Part& part = bench.parts[all[t].part];
        if (!all[t].isCap()) {
            if (digits[t] == now[t]) continue;
            thrown.push_back(fmt::format("with {} {}", part.id, positionInWords(all[t], bench, digits[t])));
        } else if (digits[t] != 0) {
            pressed.push_back(part.id);
        } else if (now[t] != 0) {
            released.push_back(part.id);
        }
    }
    if (!pressed.empty()) {
        thrown.push_back(
            fmt::format("while {} {} pressed", fmt::join(pressed, " and "), pressed.size() == 1 ? "is" : "are"));
    } else if (!released.empty()) {
        thrown.push_back(fmt::format("without {} pressed", fmt::join(released, " and ")));
    }
    return fmt::format("{}", fmt::join(thrown, " and "));
}

std::optional<std::string> positionThatLights(const std::shared_ptr<const Bench>& bench, const Inputs& inputs,
                                              int light) {
    const auto shines = [light](const Snapshot& snapshot) {
        return snapshot.status() == Status::Solved && isLit(snapshot, light);
    };
    const auto now = evaluate(bench, inputs);
    if (shines(*now)) return std::string();
    PositionSolver solver(now->layout);
    const auto& all = solver.throws();
    const std::vector<int> circuits = circuitsOf(*now->layout);
    Group felt;
    for (std::size_t t = 0; t < all.size(); ++t) {
        if (circuits[all[t].part] == circuits[light]) felt.push_back(t);
    }
    if (felt.empty()) return std::nullopt;
    const Digits present = digitsOf(all, *bench, inputs);
    const PositionPlan plan = planFor({felt}, all, present);
    const auto lit =
        std::ranges::find_if(plan.others, [&](const Digits& digits) { return shines(*solver.solve(digits)); });
    if (lit == plan.others.end()) return std::nullopt;
    return positionWords(all, *bench, *lit, present);
}

}  // namespace tiepoint
