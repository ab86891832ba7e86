#pragma once
// What the readers of a bench file's objects share. Internal to core/bench.

#include "core/base/json_text.h"
#include "core/bench/read_objects.h"

#include <fmt/format.h>

#include <algorithm>
#include <initializer_list>
#include <iterator>
#include <optional>
#include <string>
#include <string_view>

namespace tiepoint::reading {

using Failure = std::optional<Trouble>;

/// Hands over a member and its pointer; the reader says whether it failed.
template <class Reader>
Failure forEachMember(const JsonValue& object, const std::string& pointer, Reader read) {
    for (const JsonValue& member : object.items) {
        if (auto failure = read(member, pointer + '/' + pointerToken(member.name))) return failure;
    }
    return {};
}

inline Failure requireObject(const JsonValue& json, const std::string& pointer = {}) {
    if (json.type == JsonType::Object) return {};
    return wrongType(json, pointer, "an object");
}

inline Failure requireMembers(const JsonValue& object, std::initializer_list<std::string_view> names) {
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

inline constexpr auto kOwnName = [](const auto& item) { return std::string_view(item.name); };
inline constexpr auto kItself = [](std::string_view item) { return item; };

/// An address of a hole.
Failure readHole(const JsonValue& value, const std::string& pointer, Hole& hole);
/// A place as [x, y].
Failure readAt(const JsonValue& value, const std::string& pointer, Point& at);

}  // namespace tiepoint::reading
