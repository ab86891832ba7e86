#pragma once
// Which source other than the meter's own drives what lies between its leads. Pure; safe from any thread.

#include "core/snapshot/snapshot.h"

namespace tiepoint {

/// The first source (by part index, a supply or another meter's test source) that is on and hangs together with a part through closed
/// elements; -1 without one.
int otherSourceAt(const Snapshot& snapshot, int part);

}  // namespace tiepoint
