#pragma once
// An edit as JSON: what it would do to the file, operation by operation.

#include "app/json_writer.h"
#include "core/edit/edit.h"

namespace tiepoint::app {

/// The member "edits" of an object that is open in `json`, as core/edit/edit_file.h reads it. `bench` is the one that the edit is meant for.
void writeEdit(JsonWriter& json, const Bench& bench, const Edit& edit);

}  // namespace tiepoint::app
