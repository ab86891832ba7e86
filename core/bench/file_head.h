#pragma once
// What every file of the program has in common: its head, which says what it is, and places in its text. Internal to reading.

#include "core/base/json_scan.h"
#include "core/bench/read_objects.h"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace tiepoint {

/// The members "format" and "version", which may stand anywhere in a file: one of another format or of a newer version must be called that,
/// whatever else is wrong with it.
class FileHead {
public:
    /// Takes the member if it belongs to the head; says whether it did.
    bool take(JsonValue& member);
    /// What is wrong with it for a reader of that format, version 1. `what` is how a person calls such a file: "bench".
    std::optional<Trouble> judge(std::string_view format, std::string_view what) const;
    /// The format that the file says it has, or nothing.
    std::optional<std::string_view> format() const;

private:
    std::optional<JsonValue> format_, version_;
};

/// The text without the byte order mark with which some editors begin a UTF-8 file.
std::string_view withoutMark(std::string_view text);

/// A trouble as an error with its line and column.
Error located(std::string_view text, Trouble trouble);

/// Takes the first step off a JSON pointer; empty if there is none.
std::string takeStep(std::string_view& pointer);
/// The offset of what a pointer names below the value that stands at a stretch of the text, or of the last step on the way that exists.
std::size_t offsetBelow(std::string_view text, std::size_t begin, std::size_t end, std::string_view pointer);

}  // namespace tiepoint
