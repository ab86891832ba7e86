#include "core/bench/read_objects.h"

#include "core/base/json_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <span>
#include <utility>

namespace tiepoint {
namespace {

using Failure = std::optional<Trouble>;

/// Hands over a member and its pointer; the reader says whether it failed.
template <class Reader>
Failure forEachMember(const JsonValue& object, const std::string& pointer, Reader read) {
    for (const JsonValue& member : object.items) {
        if (auto failure = read(member, pointer + '/' + pointerToken(member.name))) return failure;
    }
    return {};
}

Failure requireObject(const JsonValue& json, const std::string& pointer = {}) {
    if (json.type == JsonType::Object) return {};
    return wrongType(json, pointer, "an object");
}

Failure requireMembers(const JsonValue& object, std::initializer_list<std::string_view> names) {
    for (const std::string_view name : names) {
        if (object.member(name)) continue;
        return Trouble{ErrorKind::Format, fmt::format("the member \"{}\" is missing", name), {}, object.begin};
    }
    return {};
}

/// "red, black, blue", for messages about a name that isn't among them.
template <class Items, class Name>
std::string listed(const Items& items, Name name) {
    std::string text;
    for (const auto& item : items) {
        if (!text.empty()) text += ", ";
        text += name(item);
    }
    return text;
}

/// Text that must be one of a table's names. Fills the index.
template <class Items, class Name>
Failure readNameOf(const JsonValue& value, const std::string& pointer, std::string_view what, const Items& items,
                   Name name, std::size_t& index) {
    std::string text;
    if (auto failure = readText(value, pointer, text)) return failure;
    const auto found =
        std::find_if(std::begin(items), std::end(items), [&](const auto& item) { return name(item) == text; });
    index = static_cast<std::size_t>(found - std::begin(items));
    if (found != std::end(items)) return {};
    return Trouble{ErrorKind::Reference,
                   fmt::format("there is no {} {}; there are: {}", what, inQuotes(text), listed(items, name)), pointer,
                   value.begin};
}

constexpr auto kOwnName = [](const auto& item) { return std::string_view(item.name); };
constexpr auto kItself = [](std::string_view item) { return item; };
constexpr std::array<std::string_view, 2> kRailsNames = {"through", "split"};    // in the order of Rails
constexpr std::array<std::string_view, 2> kLabelsNames = {"a-top", "a-bottom"};  // in the order of Labels

Failure readAt(const JsonValue& value, const std::string& pointer, Point& at) {
    if (value.type != JsonType::List) return wrongType(value, pointer, "a list of two numbers");
    if (value.items.size() != 2) {
        return Trouble{ErrorKind::Format, fmt::format("at has {} numbers; it takes two, x and y", value.items.size()),
                       pointer, value.begin};
    }
    for (std::size_t i = 0; i < 2; ++i) {
        const JsonValue& number = value.items[i];
        if (number.type != JsonType::Number) return wrongType(number, fmt::format("{}/{}", pointer, i), "a number");
        (i == 0 ? at.x : at.y) = number.number;
    }
    return {};
}

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

Failure readHole(const JsonValue& value, const std::string& pointer, Hole& hole) {
    std::string address;
    if (auto failure = readText(value, pointer, address)) return failure;
    if (auto parsed = parseHole(address)) {
        hole = std::move(*parsed);
        return {};
    }
    return Trouble{ErrorKind::Placement,
                   fmt::format("{} is no hole; holes are written like A.e12 or A.top+7", inQuotes(address)), pointer,
                   value.begin};
}

/// Volts at one hole or between two, amperes in "W1" or in the lead "R1.1", watts of "D1".
Failure readMeasurand(const JsonValue& value, const std::string& pointer, Measurand& of) {
    if (value.name == "volts" && value.type == JsonType::List) {
        if (value.items.size() != 2) {
            return Trouble{ErrorKind::Format,
                           fmt::format("volts are measured at one hole or between two, not {}", value.items.size()),
                           pointer, value.begin};
        }
        VoltsBetween& between = of.emplace<VoltsBetween>();
        if (auto failure = readHole(value.items[0], pointer + "/0", between.first)) return failure;
        return readHole(value.items[1], pointer + "/1", between.second);
    }
    if (value.name == "volts") return readHole(value, pointer, of.emplace<VoltsAt>().hole);
    if (value.name == "watts") return readText(value, pointer, of.emplace<WattsOf>().part);
    AmperesIn& in = of.emplace<AmperesIn>();
    if (auto failure = readText(value, pointer, in.id)) return failure;
    const std::size_t dot = in.id.find('.');
    if (dot == std::string::npos) return {};
    in.lead = in.id.substr(dot + 1);
    in.id.resize(dot);
    return {};
}

Failure readFullScale(const JsonValue& value, const std::string& pointer, Views& views) {
    if (value.type != JsonType::Number) return wrongType(value, pointer, "a number");
    if (!(value.number >= kSmallestFullScaleAmpere && value.number <= kLargestFullScaleAmpere)) {
        return Trouble{ErrorKind::Range,
                       fmt::format("fullScale is {}; it may be {} to {} A", jsonNumber(value.number),
                                   jsonNumber(kSmallestFullScaleAmpere), jsonNumber(kLargestFullScaleAmpere)),
                       pointer, value.begin};
    }
    views.lockedFullScaleAmpere = value.number;
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

std::optional<Trouble> readPart(const JsonValue& json, Part& part, UnknownMembers& unknown) {
    if (auto failure = requireObject(json)) return failure;
    if (auto failure = requireMembers(json, {"id", "kind"})) return failure;
    const JsonValue& kindMember = *json.member("kind");
    std::string kindName;
    if (auto failure = readText(kindMember, "/kind", kindName)) return failure;
    const PartKind* kind = findKind(kindName);
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
        if (member.name == "flat") {
            if (member.type != JsonType::Bool) return wrongType(member, pointer, "true or false");
            jumper.jumper.flat = member.number != 0;
            return {};
        }
        unknown.push_back(&member);
        return {};
    });
}

std::optional<Trouble> readNote(const JsonValue& json, Note& note, UnknownMembers& unknown) {
    if (auto failure = requireObject(json)) return failure;
    if (auto failure = requireMembers(json, {"id", "at", "text"})) return failure;
    return forEachMember(json, {}, [&](const JsonValue& member, const std::string& pointer) -> Failure {
        if (member.name == "id") return readText(member, pointer, note.id);
        if (member.name == "text") return readText(member, pointer, note.text);
        if (member.name == "at") return readHole(member, pointer, note.at);
        unknown.push_back(&member);
        return {};
    });
}

std::optional<Trouble> readPinned(const JsonValue& json, PinnedReading& reading, UnknownMembers& unknown) {
    if (auto failure = requireObject(json)) return failure;
    if (auto failure = requireMembers(json, {"id"})) return failure;
    bool measures = false;
    auto failure = forEachMember(json, {}, [&](const JsonValue& member, const std::string& pointer) -> Failure {
        if (member.name == "id") return readText(member, pointer, reading.id);
        if (member.name != "volts" && member.name != "amperes" && member.name != "watts") {
            unknown.push_back(&member);
            return {};
        }
        if (std::exchange(measures, true)) {
            return Trouble{ErrorKind::Format, "a pinned reading measures one thing; this one has a second", pointer,
                           member.nameBegin};
        }
        return readMeasurand(member, pointer, reading.of);
    });
    if (failure || measures) return failure;
    return Trouble{
        ErrorKind::Format, "a pinned reading measures volts, amperes or watts; none of them is here", {}, json.begin};
}

std::optional<Trouble> readViews(const JsonValue& json, SavedViews& views, UnknownMembers& unknown) {
    if (auto failure = requireObject(json, "/views")) return failure;
    Views& shown = views.shown;
    const std::pair<std::string_view, bool*> switches[] = {{"voltage", &shown.voltage},
                                                           {"strips", &shown.strips},
                                                           {"readings", &shown.readings},
                                                           {"turned", &shown.turned}};
    return forEachMember(json, "/views", [&](const JsonValue& member, const std::string& pointer) -> Failure {
        if (member.name == "arrows") {
            std::size_t index = 0;
            auto failure = readNameOf(member, pointer, "way of the arrows", kArrowsNames, kItself, index);
            if (!failure) shown.arrows = static_cast<Arrows>(index);
            return failure;
        }
        if (member.name == "fullScale") return readFullScale(member, pointer, shown);
        for (const auto& [name, view] : switches) {
            if (member.name != name) continue;
            if (member.type != JsonType::Bool) return wrongType(member, pointer, "true or false");
            *view = member.number != 0;
            return {};
        }
        unknown.push_back(&member);
        return {};
    });
}

std::optional<Trouble> readDisclosure(const JsonValue& json, Disclosure& disclosure, UnknownMembers& unknown) {
    if (auto failure = requireObject(json)) return failure;
    if (auto failure = requireMembers(json, {"level"})) return failure;
    return forEachMember(json, {}, [&](const JsonValue& member, const std::string& pointer) -> Failure {
        if (member.name == "lock") return readText(member, pointer, disclosure.lock);
        if (member.name == "level") {
            if (member.type != JsonType::Number) return wrongType(member, pointer, "a number");
            for (const Reveal level : {Reveal::Nothing, Reveal::Place, Reveal::Proof, Reveal::Mend}) {
                if (member.number != static_cast<int>(level)) continue;
                disclosure.level = level;
                return {};
            }
            return Trouble{ErrorKind::Range,
                           fmt::format("there is no level {}; there are 0, 1, 2 and 3", jsonNumber(member.number)),
                           pointer, member.begin};
        }
        unknown.push_back(&member);
        return {};
    });
}

std::optional<Trouble> readSurroundings(const JsonValue& json, SaidSurroundings& surroundings,
                                        UnknownMembers& unknown) {
    if (auto failure = requireObject(json)) return failure;
    return forEachMember(json, {}, [&](const JsonValue& member, const std::string& pointer) -> Failure {
        double* figure = member.name == "light"         ? &surroundings.lightLux
                         : member.name == "temperature" ? &surroundings.temperatureCelsius
                                                        : nullptr;
        if (!figure) {
            unknown.push_back(&member);
            return {};
        }
        if (member.type != JsonType::Number) return wrongType(member, pointer, "a number");
        *figure = member.number;
        return {};
    });
}

}  // namespace tiepoint
