#pragma once
// Hints in three steps, each telling more: how far things are as they should be, between which places to look, and at what. Pure; safe from any
// thread.

#include "core/hunt/hidden_slip.h"

#include <string>
#include <vector>

namespace tiepoint {

/// Three sentences for a bench that hides a slip; `target` is the bench without it.
std::vector<std::string> hintsFor(const Bench& bench, const HiddenSlip& slip);

}  // namespace tiepoint
