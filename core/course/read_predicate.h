#pragma once
// Reading predicates. Internal to core/course: the names of the readers of benches stay out of what others include.

#include "core/bench/read_objects.h"
#include "core/course/predicate.h"

#include <optional>

namespace tiepoint {

/// Reads one; offsets of the trouble are those of the values. The ids and holes must be on the bench: "a predicate on a part that is gone".
std::optional<Trouble> readPredicate(const JsonValue& json, const Bench& bench, Predicate& predicate);

}  // namespace tiepoint
