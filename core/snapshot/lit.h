#pragma once
// Whether a light is lit at one instant. Pure; safe from any thread.

#include "core/snapshot/snapshot.h"

namespace tiepoint {

/// Below this an LED looks dark in a lit room: under a hundredth of its usual current (common practice).
inline constexpr double kVisibleAmpere = 1e-4;

/// Whether a part that emits light carries enough current to be seen; infrared light counts, though only a camera sees it.
bool isLit(const Snapshot& snapshot, int part);

}  // namespace tiepoint
