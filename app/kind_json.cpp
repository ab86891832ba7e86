#include "app/kind_report.h"
#include "app/settings.h"

namespace tiepoint::app {
namespace {

using Form = JsonWriter::Form;

/// A parameter as in the kind's own file: a number, the name of a value, or {"derivation": name, "arguments": {...}}.
void writeParameter(JsonWriter& json, const Parameter& parameter) {
    if (const auto* number = std::get_if<double>(&parameter.source)) {
        json.value(*number);
    } else if (const auto* name = std::get_if<std::string>(&parameter.source)) {
        json.value(*name);
    } else {
        const auto& derived = std::get<Parameter::Derived>(parameter.source);
        json.beginObject(Form::Row).field("derivation", derived.name).key("arguments").beginObject(Form::Row);
        for (const auto& [argument, content] : derived.arguments) {
            json.key(argument);
            writeParameter(json, content);
        }
        json.endObject().endObject();
    }
}

void writeLeads(JsonWriter& json, const PartKind& kind) {
    json.key("leads").beginArray();
    for (const LeadSpec& lead : kind.leads) {
        json.beginObject(Form::Row).field("name", lead.name).field("description", lead.description);
        json.field("socket", lead.socket).endObject();
    }
    json.endArray().key("joined").beginArray();
    for (const auto& group : kind.joined) {
        json.beginArray(Form::Row);
        for (const int lead : group) json.value(kind.leads[lead].name);
        json.endArray();
    }
    json.endArray();
}

void writeChoices(JsonWriter& json, const ValueSpec& spec) {
    json.key("choices").beginArray();
    for (const Choice& choice : spec.choices) {
        json.beginObject(Form::Row).field("name", choice.name).field("label", choice.label);
        json.key("constants").beginObject(Form::Row);
        for (const auto& [name, constant] : choice.constants) json.field(name, constant);
        json.endObject().endObject();
    }
    json.endArray();
}

void writeSpecs(JsonWriter& json, std::string_view member, const std::vector<ValueSpec>& specs) {
    static constexpr std::string_view kTypes[] = {"number", "choice", "switch"};  // as ValueType
    json.key(member).beginArray();
    for (const ValueSpec& spec : specs) {
        json.beginObject(spec.type == ValueType::Choice ? Form::Block : Form::Row).field("name", spec.name);
        json.field("label", spec.label).field("type", kTypes[static_cast<int>(spec.type)]).key("default");
        writeSetting(json, spec, spec.fallback);
        if (spec.type == ValueType::Choice) writeChoices(json, spec);
        if (spec.type == ValueType::Number) {
            json.field("unit", spec.unit).field("minimum", spec.minimum).field("maximum", spec.maximum);
            json.field("whole", spec.integer).field("sought", spec.sought);
            if (!spec.series.empty()) json.field("series", spec.series);
        }
        json.endObject();
    }
    json.endArray();
}

void writeClosedWhen(JsonWriter& json, const ElementSpec& spec) {
    if (spec.whenHeld) json.field("closedWhen", "held");
    if (spec.whenState.empty()) return;
    json.key("closedWhen").beginObject(Form::Row).field("state", spec.whenState);
    if (!spec.whenChoice.empty()) json.field("is", spec.whenChoice);
    json.endObject();
}

void writeNodes(JsonWriter& json, const ElementSpec& spec) {
    if (spec.between.size() == 2) {
        json.field("from", spec.from()).field("to", spec.to());
        return;
    }
    json.texts("between", spec.between);
}

void writeModel(JsonWriter& json, const PartKind& kind) {
    json.key("model").beginArray();
    for (const ElementSpec& spec : kind.model) {
        json.beginObject(Form::Row).field("element", spec.element);
        writeNodes(json, spec);
        if (!spec.ofValue.empty())
            json.key("onlyWith")
                .beginObject(Form::Row)
                .field("value", spec.ofValue)
                .field("is", spec.ofChoice)
                .endObject();
        json.key("parameters").beginObject(Form::Row);
        for (const auto& [name, parameter] : spec.parameters) {
            json.key(name);
            writeParameter(json, parameter);
        }
        json.endObject();
        writeClosedWhen(json, spec);
        if (!spec.reads.empty()) json.field("reads", spec.reads);
        json.endObject();
    }
    json.endArray();
}

/// Its name; of a family the numbers too.
void writePackage(JsonWriter& json, const PartKind& kind) {
    if (!kind.sizes) {
        json.field("package", kind.package->name);
        return;
    }
    json.key("package").beginObject(Form::Row).field("family", kind.sizes->family->name);
    for (std::size_t i = 0; i < kind.sizes->figures.size(); ++i) {
        json.key(kind.sizes->family->numbers[i].name);
        writeParameter(json, kind.sizes->figures[i]);
    }
    json.endObject();
}

void writeRatings(JsonWriter& json, const PartKind& kind) {
    json.key("ratings").beginArray();
    for (const Rating& rating : kind.ratings) {
        json.beginObject(Form::Row).field("name", rating.name).field("quantity", rating.quantity);
        if (!rating.leads.empty()) {
            json.key("leads").beginArray(Form::Row);
            for (const int lead : rating.leads) json.value(kind.leads[static_cast<std::size_t>(lead)].name);
            json.endArray();
        }
        json.field("label", rating.label).field("maximum", rating.maximum).key("limit");
        writeParameter(json, rating.limit);
        json.endObject();
    }
    json.endArray();
}

void writeHelp(JsonWriter& json, const PartKind& kind) {
    json.key("help").beginObject().field("what", kind.help.what).field("leads", kind.help.leads);
    json.field("ratings", kind.help.ratings).field("caution", kind.help.caution).endObject();
    json.key("sources").beginArray();
    for (const SourceNote& note : kind.sources) {
        json.beginObject(Form::Row).field("figure", note.figure).field("source", note.source);
        json.field("status", note.status).endObject();
    }
    json.endArray();
}

}  // namespace

void writeKind(JsonWriter& json, const PartKind& kind) {
    json.beginObject().field("kind", kind.name).field("label", kind.label).field("family", kind.family);
    writePackage(json, kind);
    writeLeads(json, kind);
    writeSpecs(json, "values", kind.values);
    writeSpecs(json, "state", kind.state);
    writeRatings(json, kind);
    writeModel(json, kind);
    if (kind.emitsLight) {
        json.key("ratedCurrent");
        writeParameter(json, kind.ratedCurrent);
        if (kind.lightExponent != 1) json.field("lightExponent", kind.lightExponent);
    }
    writeHelp(json, kind);
    json.endObject();
}

}  // namespace tiepoint::app
