#pragma once
// Whether a supply is shorted at one instant. Pure; safe from any thread.

#include "core/snapshot/snapshot.h"

namespace tiepoint {

bool isShorted(const Snapshot& snapshot);

}  // namespace tiepoint
