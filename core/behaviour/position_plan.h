#pragma once
// Which positions of its controls a bench is looked at in. Within a group of controls that feel each other every combination, as long as
// they are few; groups take turns, and once everything is thrown at the same time. Pure; safe from any thread.

#include "core/nets/layout.h"
#include "core/snapshot/throws.h"

#include <vector>

namespace tiepoint {

/// More combinations than this of one group aren't solved.
inline constexpr std::size_t kMostCombinations = 64;

/// The controls of one group, by their place among all.
using ControlGroup = std::vector<std::size_t>;

/// How many throws stand otherwise in two positions of the same controls.
int throwsApart(const Digits& a, const Digits& b);

struct PositionPlan {
    std::vector<Digits> others;  ///< beside the present one: those the fewest throws away first
    /// Controls of groups that are too large, by their place among all: of them only one was thrown at a time, and once all.
    std::vector<std::size_t> untried;

    bool complete() const { return untried.empty(); }
};
PositionPlan planPositions(const Layout& layout, const std::vector<Throw>& all, const Digits& now);
/// Only the controls of one group are thrown.
PositionPlan planGroup(const std::vector<Throw>& all, const ControlGroup& group, const Digits& now);
/// How many controls stand otherwise.
int throwsApart(const Digits& a, const Digits& b);
/// Every combination of all controls; the first changes slowest.
std::vector<Digits> everyPosition(const std::vector<Throw>& all);

}  // namespace tiepoint
