#pragma once
// Whether a light is lit at one instant. Pure; safe from any thread.

#include "core/snapshot/snapshot.h"

namespace tiepoint {

/// Below this an LED looks dark in a lit room: under a hundredth of its usual current (common practice).
inline constexpr double kVisibleAmpere = 1e-4;

/// The brightness of an LED at that current; no light under it is called lit.
inline constexpr double kVisibleBrightness = 0.045;

/// Whether a part that emits light is bright enough to be seen. Infrared light counts from kVisibleAmpere, though only a camera sees it.
bool isLit(const Snapshot& snapshot, int part);

}  // namespace tiepoint
