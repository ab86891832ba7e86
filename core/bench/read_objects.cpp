#include "core/bench/read_objects.h"

#include "core/bench/read_helpers.h"

#include <span>

namespace tiepoint {

using namespace reading;

namespace {

constexpr std::array<std::string_view, 2> kRailsNames = {"through", "split"};    // in the order of Rails
constexpr std::array<std::string_view, 2> kLabelsNames = {"a-top", "a-bottom"};  // in the order of Labels

Failure readLead(const JsonValue& value, const std::string& pointer, Part& part) {
    const PartKind& kind = *part.kind;
    const int lead = kind.leadIndex(value.name);
    if (lead < 0) {
        return Trouble{ErrorKind::Reference,
                       fmt::format("a {} has no lead {}; it has: {}", kind.name, inQuotes(value.name),
                                   listed(kind.leads, kOwnName)),
                       pointer, value.nameBegin};
    }
    if (value.type == JsonType::Null) return {};  // hangs free
    if (value.type != JsonType::String) return wrongType(value, pointer, "text or null");
    part.leads[lead] = parseHole(value.text);
    if (part.leads[lead]) return {};
    return Trouble{ErrorKind::Placement,
                   fmt::format("{} is no hole; holes are written like A.e12 or A.top+7", inQuotes(value.text)), pointer,
                   value.begin};
}

Failure readSetting(const JsonValue& value, const std::string& pointer, const ValueSpec& spec, Setting& setting) {
    switch (spec.type) {
        case ValueType::Number:
            if (value.type != JsonType::Number) return wrongType(value, pointer, "a number");
            setting = value.number;
            return {};
        case ValueType::Switch:
            if (value.type != JsonType::Bool) return wrongType(value, pointer, "true or false");
            setting = value.number;
            return {};
        case ValueType::Choice: {
            std::size_t choice = 0;
            if (auto failure = readNameOf(value, pointer, spec.name, spec.choices, kOwnName, choice)) return failure;
            setting = static_cast<double>(choice);
            return {};
        }
    }
    return {};
}

Failure readSettings(const JsonValue& object, const std::string& pointer, const Part& part,
                     std::span<const ValueSpec> specs, std::vector<Setting>& settings) {
    if (auto failure = requireObject(object, pointer)) return failure;
    return forEachMember(object, pointer, [&](const JsonValue& member, const std::string& path) -> Failure {
        const auto spec =
            std::find_if(specs.begin(), specs.end(), [&](const auto& s) { return s.name == member.name; });
        if (spec != specs.end()) return readSetting(member, path, *spec, settings[spec - specs.begin()]);
        const std::string known = specs.empty() ? "nothing here" : listed(specs, kOwnName);
        return Trouble{ErrorKind::Reference,
                       fmt::format("a {} has no {} {}; it has: {}", part.kind->name,
                                   object.name == "state" ? "state" : "value", inQuotes(member.name), known),
                       path, member.nameBegin};
    });
}

Failure readCap(const JsonValue& value, const std::string& pointer, Part& part) {
    if (auto failure = readText(value, pointer, part.cap)) return failure;
    if (!part.cap.empty()) return {};
    return Trouble{ErrorKind::Format, "the cap is empty; it takes one letter or digit", pointer, value.begin};
}

Failure readCondition(const JsonValue& value, const std::string& pointer, Condition& condition) {
    std::size_t index = 0;
    auto failure = readNameOf(value, pointer, "condition", kConditionNames, kItself, index);
    if (!failure) condition = static_cast<Condition>(index);
    return failure;
}

Failure readEnds(const JsonValue& value, const std::string& pointer, UnresolvedJumper& jumper) {
    if (value.type != JsonType::List) return wrongType(value, pointer, "a list of two holes or sockets");
    if (value.items.size() != 2) {
        return Trouble{ErrorKind::Format, fmt::format("a jumper has two ends, not {}", value.items.size()), pointer,
                       value.begin};
    }
    for (std::size_t i = 0; i < 2; ++i) {
        if (auto failure = readText(value.items[i], fmt::format("{}/{}", pointer, i), jumper.ends[i])) return failure;
        jumper.offsets[i] = value.items[i].begin;
    }
    return {};
}

}  // namespace

Trouble wrongType(const JsonValue& value, const std::string& pointer, std::string_view expected) {
    return {ErrorKind::Format, fmt::format("{} stands where {} belongs", typeName(value.type), expected), pointer,
            value.begin};
}

std::optional<Trouble> readText(const JsonValue& member, const std::string& pointer, std::string& text) {
    if (member.type != JsonType::String) return wrongType(member, pointer, "text");
    text = member.text;
    return {};
}

std::optional<Trouble> readBoard(const JsonValue& json, Board& board, UnknownMembers& unknown) {
    if (auto failure = requireObject(json)) return failure;
    if (auto failure = requireMembers(json, {"id", "kind"})) return failure;
    return forEachMember(json, {}, [&](const JsonValue& member, const std::string& pointer) -> Failure {
        std::size_t index = 0;
        Failure failure;
        if (member.name == "id") {
            failure = readText(member, pointer, board.id);
        } else if (member.name == "kind") {
            failure = readNameOf(member, pointer, "board kind", boardKinds(), kOwnName, index);
            if (!failure) board.kind = &boardKinds()[index];
        } else if (member.name == "at") {
            Point at;
            failure = readAt(member, pointer, at);
            board.atX = at.x;
            board.atY = at.y;
        } else if (member.name == "rails") {
            failure = readNameOf(member, pointer, "kind of rails", kRailsNames, kItself, index);
            board.rails = static_cast<Rails>(index);
        } else if (member.name == "labels") {
            failure = readNameOf(member, pointer, "way of labels", kLabelsNames, kItself, index);
            board.labels = static_cast<Labels>(index);
        } else {
            unknown.push_back(&member);
        }
        return failure;
    });
}

std::optional<Trouble> readPart(const JsonValue& json, Part& part, UnknownMembers& unknown, const Catalogue& kinds) {
    if (auto failure = requireObject(json)) return failure;
    if (auto failure = requireMembers(json, {"id", "kind"})) return failure;
    const JsonValue& kindMember = *json.member("kind");
    std::string kindName;
    if (auto failure = readText(kindMember, "/kind", kindName)) return failure;
    const PartKind* kind = kinds.find(kindName);
    if (!kind) {
        return Trouble{ErrorKind::Reference, fmt::format("there is no kind of part {}", inQuotes(kindName)), "/kind",
                       kindMember.begin};
    }
    part = makePart(*kind, {});
    return forEachMember(json, {}, [&](const JsonValue& member, const std::string& pointer) -> Failure {
        if (member.name == "kind") return {};
        if (member.name == "id") return readText(member, pointer, part.id);
        if (member.name == "values") return readSettings(member, pointer, part, kind->values, part.values);
        if (member.name == "state") return readSettings(member, pointer, part, kind->state, part.state);
        if (member.name == "condition") return readCondition(member, pointer, part.condition);
        if (member.name == "at" && standsOnTable(part)) return readAt(member, pointer, part.at.emplace());
        if (member.name == "cap" && kind->hasCap) return readCap(member, pointer, part);
        if (member.name == "leads") {
            if (auto failure = requireObject(member, pointer)) return failure;
            return forEachMember(member, pointer, [&](const JsonValue& lead, const std::string& path) {
                return readLead(lead, path, part);
            });
        }
        unknown.push_back(&member);
        return {};
    });
}

std::optional<Trouble> readJumper(const JsonValue& json, UnresolvedJumper& jumper, UnknownMembers& unknown) {
    if (auto failure = requireObject(json)) return failure;
    if (auto failure = requireMembers(json, {"id", "ends"})) return failure;
    return forEachMember(json, {}, [&](const JsonValue& member, const std::string& pointer) -> Failure {
        if (member.name == "id") return readText(member, pointer, jumper.jumper.id);
        if (member.name == "ends") return readEnds(member, pointer, jumper);
        if (member.name == "colour") {
            std::size_t index = 0;
            auto failure = readNameOf(member, pointer, "colour", jumperColours(), kOwnName, index);
            jumper.jumper.colour = static_cast<int>(index);
            return failure;
        }
        if (member.name == "condition") return readCondition(member, pointer, jumper.jumper.condition);
        if (member.name == "flat") {
            if (member.type != JsonType::Bool) return wrongType(member, pointer, "true or false");
            jumper.jumper.flat = member.number != 0;
            return {};
        }
        unknown.push_back(&member);
        return {};
    });
}

}  // namespace tiepoint
