#pragma once
// The traits of how a bench is built: metal, print, colours and values, without a solution. Pure functions; safe from any thread.

#include "core/judge/traits.h"

#include <vector>

namespace tiepoint {

/// Whether none of an instrument's leads is plugged in.
bool liesUnplugged(const Part& instrument);
/// Adds the traits of print and order, and appends the parts that are bypassed, by index.
void observeBuild(const Layout& layout, Traits& traits, std::vector<int>& idle);

}  // namespace tiepoint
