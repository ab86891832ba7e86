#pragma once
// What is said of a light that stays dark where nothing explains it: what hangs together with it, and what to look at next. Pure.

#include "core/findings/examination.h"
#include "core/findings/finding.h"

#include <optional>

namespace tiepoint {

/// A remark on the first dark light that is joined to something; nothing if there is none. `untried`: not every slip near it was tried.
std::optional<Finding> darkChain(const Examination& examination, bool untried);

}  // namespace tiepoint
