#pragma once
// A bench made ready for a class: on its boards, with its supply and, where a value is missing, with the nearest one that does the same. For plans,
// symptoms and the doctor, which then speak of what really lies on the tables. Pure; stoppable.

#include "core/course/fit.h"

namespace tiepoint {

/// Another value serves if in all positions of switches and knobs the same lights are lit, none much brighter or darker, and nothing is found
/// that wasn't found before.
BenchFit benchForKit(const std::shared_ptr<const Bench>& bench, const Kit& kit);

}  // namespace tiepoint
