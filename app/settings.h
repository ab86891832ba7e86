#pragma once
// Values and states of a part as a file writes them: numbers, the names of choices, true and false.

#include "app/json_writer.h"
#include "core/bench/bench.h"

namespace tiepoint::app {

/// One setting: a number, a choice's name or a switch.
void writeSetting(JsonWriter& json, const ValueSpec& spec, double setting);
/// The object "values" (and "state" if the kind has any) with everything in force, defaults included.
void writeSettings(JsonWriter& json, const Part& part);

}  // namespace tiepoint::app
