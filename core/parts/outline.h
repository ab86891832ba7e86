#pragma once
// Distances from bodies. Pure functions.

#include "core/parts/package.h"

namespace tiepoint {

/// How far a point lies outside of a body, mm; negative inside.
double distanceOutside(const Outline& body, Point at);

}  // namespace tiepoint
