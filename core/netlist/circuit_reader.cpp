// A part of a circuit is read by the reader of benches, but for its leads, which are names of nets here. A place on the table ("at")
// means nothing without a table and is kept like any member that isn't known.

#include "core/base/json_scan.h"
#include "core/base/json_text.h"
#include "core/base/line_counter.h"
#include "core/bench/bench_file.h"
#include "core/bench/file_head.h"
#include "core/bench/kept_members.h"
#include "core/bench/read_objects.h"
#include "core/netlist/circuit_file.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <new>
#include <optional>
#include <unordered_map>

namespace tiepoint {
namespace {

constexpr std::string_view kCircuitFormat = "tiepoint-circuit";
constexpr std::array<std::string_view, 1> kCircuitLists = {"parts"};

/// Takes the member of that name out of an object.
std::optional<JsonValue> takeOut(JsonValue& object, std::string_view name) {
    if (object.type != JsonType::Object) return std::nullopt;
    const auto found = std::ranges::find(object.items, name, &JsonValue::name);
    if (found == object.items.end()) return std::nullopt;
    JsonValue member = std::move(*found);
    object.items.erase(found);
    return member;
}

std::string knownLeads(const PartKind& kind) {
    std::string text;
    for (const LeadSpec& lead : kind.leads) text += (text.empty() ? "" : ", ") + lead.name;
    return text;
}

class NetlistReader {
public:
    explicit NetlistReader(std::string_view text) : text_(text), kept_(text) {}

    Result<ReadNetlist> read() {
        const auto takePiece = [this](JsonPiece&& piece) { take(std::move(piece)); };
        if (auto error = scanJson(text_, kCircuitLists, takePiece)) return std::move(*error);
        if (auto trouble = head_.judge(kCircuitFormat, "circuit")) return located(text_, std::move(*trouble));
        if (trouble_) return located(text_, std::move(*trouble_));
        if (auto valid = validate(read_.netlist); !valid) return placed(valid.error());
        read_.warnings = kept_.takeWarnings();
        return std::move(read_);
    }

private:
    void take(JsonPiece&& piece) {
        if (piece.list < 0) return takeMember(std::move(piece.value));
        elements_.emplace_back(piece.value.begin, piece.value.end);
        if (!trouble_) takePart(piece.value, fmt::format("/parts/{}", piece.index));
    }

    void takeMember(JsonValue&& member) {
        if (head_.take(member)) return;
        if (member.name == "title") {
            titleBegin_ = member.begin;
            if (auto trouble = readText(member, "/title", read_.netlist.title)) hold(std::move(*trouble));
        } else if (member.name == kCircuitLists[0]) {
            hold(wrongType(member, "/parts", "a list"));
        } else {
            keep(member, {}, read_.netlist.extras);
        }
    }

    void takePart(JsonValue& json, const std::string& pointer) {
        const auto leads = takeOut(json, "leads"), at = takeOut(json, "at");
        Part part;
        UnknownMembers unknown;
        if (auto trouble = readPart(json, part, unknown, Catalogue::shipped()))
            return hold(std::move(*trouble), pointer);
        if (at) unknown.push_back(&*at);
        std::ranges::sort(unknown, {}, &JsonValue::begin);
        for (const JsonValue* member : unknown) keep(*member, pointer, part.extras);
        const int index = addPart(read_.netlist, std::move(part));
        if (!leads) return;
        if (auto trouble = takeLeads(*leads, index)) hold(std::move(*trouble), pointer);
    }

    std::optional<Trouble> takeLeads(const JsonValue& json, int part) {
        if (json.type != JsonType::Object) return wrongType(json, "/leads", "an object");
        const PartKind& kind = *read_.netlist.parts[part].kind;
        std::vector<const std::string*> names(kind.leads.size(), nullptr);
        for (const JsonValue& member : json.items) {
            const std::string pointer = "/leads/" + pointerToken(member.name);
            const int lead = kind.leadIndex(member.name);
            if (lead < 0) {
                return Trouble{
                    ErrorKind::Reference,
                    fmt::format("a {} has no lead {}; it has: {}", kind.name, inQuotes(member.name), knownLeads(kind)),
                    pointer, member.nameBegin};
            }
            if (member.type == JsonType::Null) continue;  // hangs free
            if (member.type != JsonType::String) return wrongType(member, pointer, "text or null");
            names[lead] = &member.text;
        }
        for (std::size_t lead = 0; lead < names.size(); ++lead) {
            if (names[lead]) read_.netlist.leads[part][lead] = netOf(*names[lead]);
        }
        return {};
    }

    int netOf(const std::string& name) {
        const auto [known, isNew] = netOfName_.try_emplace(name, static_cast<int>(read_.netlist.nets.size()));
        if (isNew) read_.netlist.nets.push_back(name);
        return known->second;
    }

    void hold(Trouble trouble, const std::string& pointer = {}) {
        if (trouble_) return;
        trouble.pointer = pointer + trouble.pointer;
        trouble_ = std::move(trouble);
    }

    void keep(const JsonValue& member, const std::string& pointer, Extras& extras) {
        kept_.keep(member, pointer, extras);
    }

    /// Finds the place of an error that knows only its pointer.
    Error placed(Error error) const {
        std::string_view pointer = error.place.pointer;
        std::size_t offset = 0;
        if (pointer == "/title") offset = titleBegin_;
        if (takeStep(pointer) == kCircuitLists[0]) {
            const std::string step = takeStep(pointer);
            std::size_t index = 0;
            std::from_chars(step.data(), step.data() + step.size(), index);
            offset = offsetBelow(text_, elements_.at(index).first, elements_.at(index).second, pointer);
        }
        LineCounter(text_).locate(offset, error.place);
        return error;
    }

    std::string_view text_;
    KeptMembers kept_;
    ReadNetlist read_;
    FileHead head_;
    std::size_t titleBegin_ = 0;
    std::unordered_map<std::string, int> netOfName_;
    std::vector<std::pair<std::size_t, std::size_t>> elements_;  ///< begin and end of each part
    std::optional<Trouble> trouble_;                             ///< the first
};

}  // namespace

Result<ReadNetlist> readNetlist(std::string_view text) try {
    if (text.size() > kLargestBenchBytes) return Error{ErrorKind::Format, "the file is larger than 128 MB", {}, {}};
    text = withoutMark(text);
    return NetlistReader(text).read();
} catch (const std::bad_alloc&) {
    return Error{ErrorKind::Io, "the file needs more memory than there is", {}, {}};
}

}  // namespace tiepoint
