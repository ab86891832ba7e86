#include "app/settings.h"

namespace tiepoint::app {

void writeSetting(JsonWriter& json, const ValueSpec& spec, double setting) {
    switch (spec.type) {
        case ValueType::Number:
            json.value(setting);
            return;
        case ValueType::Choice:
            json.value(spec.choices[static_cast<std::size_t>(setting)].name);
            return;
        case ValueType::Switch:
            json.value(setting != 0);
            return;
    }
}

void writeSettings(JsonWriter& json, const Part& part) {
    const PartKind& kind = *part.kind;
    json.key("values").beginObject(JsonWriter::Form::Row);
    for (std::size_t i = 0; i < kind.values.size(); ++i) {
        json.key(kind.values[i].name);
        writeSetting(json, kind.values[i], part.value(static_cast<int>(i)));
    }
    json.endObject();
    if (kind.state.empty()) return;
    json.key("state").beginObject(JsonWriter::Form::Row);
    for (std::size_t i = 0; i < kind.state.size(); ++i) {
        json.key(kind.state[i].name);
        writeSetting(json, kind.state[i], part.stateValue(static_cast<int>(i)));
    }
    json.endObject();
}

}  // namespace tiepoint::app
