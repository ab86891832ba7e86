#pragma once
// An edit as JSON: what it would do to the file, operation by operation.

#include "app/json_writer.h"

#include "core/edit/edit.h"

namespace tiepoint::app {

/// The member "edits" of an object that is open in `json`: a list of {"operation": "replace", "part": {...}}.
/// Parts, jumpers and boards are written as in a bench file.
void writeEdit(JsonWriter& json, const Edit& edit);

}  // namespace tiepoint::app
