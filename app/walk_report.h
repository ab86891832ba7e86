#pragma once
// A potential walk in words and in JSON, for `solve --walk`.

#include "app/json_writer.h"
#include "core/why/potential_walk.h"

#include <string>

namespace tiepoint::app {

/// Adds the member "walk" to an open object.
void writeWalk(JsonWriter& json, const Snapshot& snapshot, int part);
std::string walkReport(const Snapshot& snapshot, int part);

}  // namespace tiepoint::app
