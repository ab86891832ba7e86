#include "app/edit_json.h"

#include "core/bench/bench_file.h"

namespace tiepoint::app {
namespace {

/// Writes one operation; a new kind of operation doesn't compile until it is told here.
struct OperationJson {
    JsonWriter& json;
    const Bench& bench;

    void operator()(const AddBoard& add) const { object("add", "board", boardLine(add.board)); }
    void operator()(const AddPart& add) const { object("add", "part", partLine(add.part)); }
    void operator()(const AddJumper& add) const { object("add", "jumper", jumperLine(add.jumper, bench)); }
    void operator()(const AddNote& add) const { object("add", "note", noteLine(add.note)); }
    void operator()(const AddPinned& add) const { object("add", "pinned", pinnedLine(add.reading)); }
    void operator()(const Remove& remove) const { text("remove", "id", remove.id); }
    void operator()(const ReplaceBoard& replace) const { object("replace", "board", boardLine(replace.board)); }
    void operator()(const ReplacePart& replace) const { object("replace", "part", partLine(replace.part)); }
    void operator()(const ReplaceJumper& replace) const {
        object("replace", "jumper", jumperLine(replace.jumper, bench));
    }
    void operator()(const ReplaceNote& replace) const { object("replace", "note", noteLine(replace.note)); }
    void operator()(const SetTitle& set) const { text("title", "title", set.title); }

    void operator()(const SetDisclosure& set) const {
        object("reveal", "reveal", set.disclosure ? disclosureLine(*set.disclosure) : "null");
    }

    void object(std::string_view operation, std::string_view what, std::string_view line) const {
        json.beginObject(JsonWriter::Form::Row).field("operation", operation).key(what).raw(line).endObject();
    }
    void text(std::string_view operation, std::string_view what, std::string_view content) const {
        json.beginObject(JsonWriter::Form::Row).field("operation", operation).field(what, content).endObject();
    }
};

}  // namespace

void writeEdit(JsonWriter& json, const Bench& bench, const Edit& edit) {
    json.key("edits").beginArray();
    for (const Operation& operation : edit.operations) std::visit(OperationJson{json, bench}, operation);
    json.endArray();
}

}  // namespace tiepoint::app
