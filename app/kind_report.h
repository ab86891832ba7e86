#pragma once
// A part kind in words and in JSON.

#include "app/json_writer.h"
#include "core/parts/part_kind.h"

#include <string>

namespace tiepoint::app {

void writeKind(JsonWriter& json, const PartKind& kind);
std::string kindText(const PartKind& kind);

}  // namespace tiepoint::app
