#pragma once
// Assigning each of some things to one of others so that the sum of gains is largest.

#include "core/base/grid.h"

#include <vector>

namespace tiepoint {

/// Gains by row and column. Returns by row its column; -1 where a row stays alone, which gains nothing. Rows and columns may differ in number, and
/// nobody is assigned for less than nothing. Cubic in the larger number at worst; where most rows want a column of their own, quadratic.
std::vector<int> bestAssignment(const Grid<double>& gains);

}  // namespace tiepoint
