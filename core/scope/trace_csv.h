#pragma once
// What an oscilloscope shows, as a table. Pure.

#include "core/scope/traces.h"

#include <string>

namespace tiepoint {

/// One row for each column of time that was swept: its beginning in seconds of the bench's clock, and least and greatest volts of each
/// channel that is plugged in. The first row names them: time,least1,greatest1,...
std::string traceCsv(const ScopeTrace& trace);

}  // namespace tiepoint
