#pragma once
// Which elements of a kind's model a part has: some are there only with a certain value, as the plus or the minus side of a common lead.

#include "core/bench/bench.h"

namespace tiepoint {

/// Whether the element belongs to the part as its values stand.
bool isElementPresent(const Part& part, const ElementSpec& spec);

}  // namespace tiepoint
