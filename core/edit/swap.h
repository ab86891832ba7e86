#pragma once
// Taking another thing of the same kind and value for one: what is broken in it goes, everything else stays. Pure.

#include "core/edit/edit.h"

#include <string>

namespace tiepoint {

/// Requires a part or a jumper of that id.
Edit swapEdit(const Bench& bench, const std::string& id);

}  // namespace tiepoint
