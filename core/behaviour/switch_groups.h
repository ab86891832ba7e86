#pragma once
// Which switches have to be tried together. Circuits that meet only where supplies hold the voltage don't feel each other's switches, so
// that their positions add up instead of multiplying. Pure; safe from any thread.

#include "core/nets/layout.h"
#include "core/snapshot/throws.h"

#include <vector>

namespace tiepoint {

/// By part: the circuit that it belongs to, as the index of one of its parts. A supply is in none but its own.
std::vector<int> circuitsOf(const Layout& layout);
/// By throw: the group that it belongs to, numbered from 0 in the order of the throws.
std::vector<int> switchGroups(const Layout& layout, const std::vector<Throw>& all);

}  // namespace tiepoint
