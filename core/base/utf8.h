#pragma once
// UTF-8 one code point at a time, and what a byte of it is, whatever the locale. Pure functions.

#include <optional>
#include <string_view>

namespace tiepoint {

/// Takes one code point (RFC 3629: no surrogates, nothing overlong) off the front; nothing, and the text as it was, if there is none.
std::optional<char32_t> takeCodePoint(std::string_view& text);

/// Of the ten digits of ASCII.
inline bool isDigit(char byte) { return byte >= '0' && byte <= '9'; }

/// Whether a byte goes on with a code point that an earlier byte began.
inline bool isContinuation(char byte) { return (static_cast<unsigned char>(byte) & 0xC0) == 0x80; }

}  // namespace tiepoint
