#pragma once
// A change of a bench as a variant that can be solved by ports. Pure.

#include "core/slips/bench_change.h"
#include "core/variants/variant.h"

#include <optional>

namespace tiepoint {

/// Nothing where a variant can't say it: broken rails, and what is broken inside.
std::optional<Variant> asVariant(const Bench& bench, const BenchChange& change);

}  // namespace tiepoint
