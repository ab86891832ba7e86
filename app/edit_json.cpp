#include "app/edit_json.h"

#include "core/edit/edit_file.h"

namespace tiepoint::app {

void writeEdit(JsonWriter& json, const Bench& bench, const Edit& edit) {
    json.key("edits").beginArray();
    for (const std::string& line : operationLines(edit, bench)) json.raw(line);
    json.endArray();
}

}  // namespace tiepoint::app
