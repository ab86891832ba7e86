#pragma once
// What every bench in the program fulfils. The reader refuses files that don't; edits that would break it are refused.

#include "core/base/result.h"
#include "core/bench/bench.h"

namespace tiepoint {

/// Checks ids (form, uniqueness), boards (overlap), holes and sockets (exist, taken once), footprints, spans and ranges,
/// and that each supply has a series resistance above 0 or a current limit.
/// The error's place.pointer is the JSON pointer of the offender. Linear in the size of the bench. Overlapping bodies are no error.
Result<Done> validate(const Bench& bench);

}  // namespace tiepoint
