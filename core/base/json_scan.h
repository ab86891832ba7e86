#pragma once
// Reading JSON that may come from anywhere: strictly, once through, in linear time, with the place of every
// value.
//
// The scanner never builds a tree of the whole text. It hands out one piece at a time: each element of the
// lists that the caller names, and each other member of the root object. Refused are, beside bad syntax: NUL
// bytes, invalid UTF-8, duplicate names, numbers beyond a double, nesting over 64, anything after the root.
// Pure functions; safe from any thread.

#include "core/base/result.h"

#include <cstddef>
#include <functional>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace tiepoint {

enum class JsonType { Null, Bool, Number, String, List, Object };

/// "a number", "text", ... for messages.
std::string_view typeName(JsonType type);

/// A value and where it stands, as offsets in bytes. Deep or very long lists keep their text, not all of
/// their items.
struct JsonValue {
    JsonType type = JsonType::Null;
    std::string name;                ///< its name, if it is a member of an object
    std::size_t nameBegin = 0;       ///< where the name starts
    std::size_t begin = 0, end = 0;  ///< the value's text
    double number = 0;               ///< numbers; booleans as 0 and 1
    std::string text;                ///< strings
    std::vector<JsonValue> items;    ///< elements, or members in the order of the text

    /// The member of that name, or null.
    const JsonValue* member(std::string_view wanted) const;
};

/// A piece of the document: an element of one of the lists, or a whole member of the root.
struct JsonPiece {
    int list = -1;    ///< index among the caller's lists, or -1
    int index = -1;   ///< element of that list
    JsonValue value;  ///< its name is the member's where it is a whole member
};

/// Scans a text whose root is an object and hands out its pieces in order. Returns the first error, with
/// pointer, line and column.
std::optional<Error> scanJson(std::string_view text, std::span<const std::string_view> lists,
                              const std::function<void(JsonPiece&&)>& take);

/// A single value, such as a piece cut out of a text that was scanned before.
Result<JsonValue> parseJson(std::string_view text);

}  // namespace tiepoint
