// Positions are counted like digits: each control is one digit, its throws the values. They are ordered by how many throws away they are,
// so that a fault is told by the smallest change that brings it.

#include "core/behaviour/position_plan.h"

#include "core/behaviour/switch_groups.h"

#include <algorithm>
#include <functional>
#include <iterator>
#include <numeric>
#include <set>

namespace tiepoint {
namespace {

std::vector<ControlGroup> groupsOf(const Layout& layout, const std::vector<Throw>& all) {
    std::vector<ControlGroup> groups;
    const std::vector<int> numbers = switchGroups(layout, all);
    for (std::size_t t = 0; t < numbers.size(); ++t) {
        groups.resize(std::max(groups.size(), static_cast<std::size_t>(numbers[t]) + 1));
        groups[static_cast<std::size_t>(numbers[t])].push_back(t);
    }
    return groups;
}

bool fewCombinations(const std::vector<Throw>& all, const ControlGroup& group, const Digits& now) {
    std::size_t count = 1;
    for (const std::size_t t : group) {
        const bool elsewhere = now[t] >= all[t].values;  // a knob that stands at none of its places
        count *= static_cast<std::size_t>(all[t].values) + (elsewhere ? 1 : 0);
        if (count > kMostCombinations) return false;
    }
    return true;
}

/// Every combination of a group's throws; the others stay as they are.
std::vector<Digits> everyCombination(const std::vector<Throw>& all, const ControlGroup& group, const Digits& now) {
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
std::vector<Digits> nearCombinations(const std::vector<Throw>& all, const ControlGroup& group, const Digits& now) {
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
void changeAll(const std::vector<Throw>& all, const ControlGroup& group, Digits& digits) {
    for (const std::size_t t : group) digits[t] = digits[t] == all[t].values - 1 ? 0 : all[t].values - 1;
}

PositionPlan planFor(const std::vector<ControlGroup>& groups, const std::vector<Throw>& all, const Digits& now) {
    PositionPlan plan;
    std::set<Digits> known{now};
    const auto add = [&](const std::vector<Digits>& more) {
        std::ranges::copy_if(more, std::back_inserter(plan.others),
                             [&](const Digits& each) { return known.insert(each).second; });
    };
    Digits everything = now;
    for (const ControlGroup& group : groups) {
        const bool few = fewCombinations(all, group, now);
        if (!few) plan.untried.insert(plan.untried.end(), group.begin(), group.end());
        add(few ? everyCombination(all, group, now) : nearCombinations(all, group, now));
        changeAll(all, group, everything);
    }
    add({everything});
    std::ranges::stable_sort(plan.others, {}, [&](const Digits& each) { return throwsApart(each, now); });
    std::ranges::sort(plan.untried);
    return plan;
}

}  // namespace

int throwsApart(const Digits& a, const Digits& b) {
    return std::inner_product(a.begin(), a.end(), b.begin(), 0, std::plus<>(), std::not_equal_to<>());
}

PositionPlan planPositions(const Layout& layout, const std::vector<Throw>& all, const Digits& now) {
    return planFor(groupsOf(layout, all), all, now);
}

PositionPlan planGroup(const std::vector<Throw>& all, const ControlGroup& group, const Digits& now) {
    return planFor({group}, all, now);
}

std::vector<Digits> everyPosition(const std::vector<Throw>& all) {
    std::vector<Digits> positions{Digits(all.size(), 0)};
    for (std::size_t t = all.size(); t-- > 0;) {
        const std::size_t before = positions.size();
        for (int value = 1; value < all[t].values; ++value) {
            for (std::size_t i = 0; i < before; ++i) {
                positions.push_back(positions[i]);
                positions.back()[t] = value;
            }
        }
    }
    return positions;
}

}  // namespace tiepoint
