// Operations are written one after the other: a jumper may end in the socket of a part that an earlier one adds.

#include "core/base/json_text.h"
#include "core/bench/bench_file.h"
#include "core/bench/jumper_ends.h"
#include "core/edit/edit_file.h"

#include <fmt/format.h>

namespace tiepoint {
namespace {

std::string line(std::string_view operation, std::string_view member, const std::string& json, int place = -1) {
    const std::string behind = place < 0 ? std::string() : fmt::format(", \"place\": {}", place);
    return fmt::format("{{\"operation\": \"{}\", \"{}\": {}{}}}", operation, member, json, behind);
}

/// Writes one operation; a new kind of operation doesn't compile until it is told here.
struct OperationLine {
    PartKinds& kinds;

    std::string operator()(const AddBoard& add) const { return line("add", "board", boardLine(add.board), add.at); }
    std::string operator()(const AddPart& add) const {
        kinds[add.part.id] = add.part.kind;
        return line("add", "part", partLine(add.part), add.at);
    }
    std::string operator()(const AddJumper& add) const {
        return line("add", "jumper", jumperLine(add.jumper, kinds), add.at);
    }
    std::string operator()(const AddNote& add) const { return line("add", "note", noteLine(add.note), add.at); }
    std::string operator()(const AddPinned& add) const {
        return line("add", "pinned", pinnedLine(add.reading), add.at);
    }
    std::string operator()(const Remove& remove) const { return line("remove", "id", jsonString(remove.id)); }
    std::string operator()(const ReplaceBoard& replace) const {
        return line("replace", "board", boardLine(replace.board));
    }
    std::string operator()(const ReplacePart& replace) const {
        kinds[replace.part.id] = replace.part.kind;
        return line("replace", "part", partLine(replace.part));
    }
    std::string operator()(const ReplaceJumper& replace) const {
        return line("replace", "jumper", jumperLine(replace.jumper, kinds));
    }
    std::string operator()(const ReplaceNote& replace) const { return line("replace", "note", noteLine(replace.note)); }
    std::string operator()(const SetTitle& set) const { return line("title", "title", jsonString(set.title)); }
    std::string operator()(const SetDisclosure& set) const {
        return line("reveal", "reveal", set.disclosure ? disclosureLine(*set.disclosure) : "null");
    }
    std::string operator()(const SetSurroundings& set) const {
        return line("surroundings", "surroundings", set.surroundings ? surroundingsLine(*set.surroundings) : "null");
    }
};

}  // namespace

std::vector<std::string> operationLines(const Edit& edit, const Bench& bench) {
    PartKinds kinds = kindsOf(bench);
    std::vector<std::string> lines;
    for (const Operation& operation : edit.operations) lines.push_back(std::visit(OperationLine{kinds}, operation));
    return lines;
}

}  // namespace tiepoint
