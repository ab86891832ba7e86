#pragma once
// Which slips can happen with what a class has: nobody takes a part out of the drawer that isn't in it, finds split rails on boards whose rails run
// through, or leaves a meter at the wrong dial who has none. Pure.

#include "core/course/kit.h"
#include "core/slips/slip.h"

namespace tiepoint {

/// Whether a slip that could be made on the bench can be made with the kit. What the kit doesn't say is possible.
bool canHappenWith(const Kit& kit, const Bench& bench, const Slip& slip);

}  // namespace tiepoint
