#pragma once
// The ladder of a value: the numbers that one would try next, up and down. Pure functions.

#include "core/parts/part_kind.h"

#include <vector>

namespace tiepoint {

/// Supply voltages that people meet (common practice: cells of 1.5 V, logic of 3.3 and 5 V, blocks of 9 V, 12 and 24 V systems).
std::span<const double> usualVolts();

/// The number `steps` rungs above (or below) a value: of the allowed numbers, of the preferred series, of the usual volts, or by a
/// hundredth of the range (whole numbers by one). Stays in the range.
double ladderStep(const ValueSpec& spec, double from, int steps);

/// The rungs about a value, ascending: up to `each` below it, the value itself, up to `each` above it. Fewer at the ends of the range.
std::vector<double> ladderAbout(const ValueSpec& spec, double value, int each);

}  // namespace tiepoint
