#include "core/base/result.h"

#include <fmt/format.h>

#include <cstddef>
#include <string_view>

namespace tiepoint {
namespace {

/// Length of the UTF-8 sequence that starts with this byte (1 for anything that starts none).
std::size_t sequenceLength(unsigned char first) {
    if (first >= 0xF0) return 4;
    if (first >= 0xE0) return 3;
    if (first >= 0xC2) return 2;
    return 1;
}

/// Controls, line and paragraph separators, and the marks that turn the direction of writing: each could
/// break the line or disguise it.
bool mustBeEscaped(char32_t c) {
    return c < 0x20 || (c >= 0x7F && c <= 0x9F) || (c >= 0x2028 && c <= 0x202E) || (c >= 0x2066 && c <= 0x2069);
}

char32_t decode(std::string_view sequence) {
    const auto first = static_cast<unsigned char>(sequence[0]);
    if (sequence.size() == 1) return first;
    char32_t code = first & (0xFFu >> (sequence.size() + 1));
    for (const char byte : sequence.substr(1)) code = (code << 6) | (static_cast<unsigned char>(byte) & 0x3Fu);
    return code;
}

/// Text that can't break out of its line.
std::string singleLine(std::string_view text) {
    std::string line;
    line.reserve(text.size());
    for (std::size_t at = 0; at < text.size();) {
        const auto sequence = text.substr(at, sequenceLength(static_cast<unsigned char>(text[at])));
        const char32_t code = decode(sequence);
        if (mustBeEscaped(code)) {
            line += fmt::format("\\u{:04x}", static_cast<unsigned>(code));
        } else {
            line += sequence;
        }
        at += sequence.size();
    }
    return line;
}

}  // namespace

std::string Error::oneLine() const {
    std::string text = file;
    if (place.line > 0) text += fmt::format("{}{}:{}", text.empty() ? "" : ":", place.line, place.column);
    if (!place.pointer.empty()) text += fmt::format("{}{}", text.empty() ? "" : ": ", place.pointer);
    text += fmt::format("{}{}", text.empty() ? "" : ": ", message);
    return singleLine(text);
}

}  // namespace tiepoint
