#pragma once
// Pieces of JSON text: strings, numbers and pointers, and text in general. Used wherever the program reads or
// writes JSON, and wherever a message shows a name from a file. Pure functions.

#include <optional>
#include <string>
#include <string_view>

namespace tiepoint {

/// A JSON string with its quotes; escapes what JSON demands and what isn't printable (see core/base/printable.h), so that JSON can be
/// read on a terminal and still says the same text. Bytes that are no UTF-8 become U+FFFD.
std::string jsonString(std::string_view text);
/// The shortest number that reads back as the same double: 220, 0.05, 1e-18. Requires a finite value.
std::string jsonNumber(double value);
/// The same JSON value with the spacing of our files, everything else as it was. Requires valid JSON.
std::string canonicalJson(std::string_view json);
/// A name as a step of a JSON pointer (RFC 6901); cut short if it is very long, since pointers serve messages
/// only.
std::string pointerToken(std::string_view name);

/// A name from a file as a message shows it: in quotes, cut short if it is long.
std::string inQuotes(std::string_view text);
/// Whether the text is valid UTF-8 without NUL.
bool isText(std::string_view text);
/// The one code point that the whole text is; nothing for any other text.
std::optional<char32_t> singleCodePoint(std::string_view text);

}  // namespace tiepoint
