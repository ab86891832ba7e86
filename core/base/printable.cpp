#include "core/base/printable.h"

#include "core/base/utf8.h"

#include <fmt/format.h>

namespace tiepoint {
namespace {

std::string shown(std::string_view text, bool keepsLines) {
    std::string result;
    result.reserve(text.size());
    while (!text.empty()) {
        const std::string_view before = text;
        const auto code = takeCodePoint(text);
        if (!code) {
            result += fmt::format("\\x{:02x}", static_cast<unsigned char>(text.front()));
            text.remove_prefix(1);
        } else if (isPrintable(*code) || (keepsLines && *code == U'\n')) {
            result += before.substr(0, before.size() - text.size());
        } else if (*code <= 0xFFFF) {
            result += fmt::format("\\u{:04x}", static_cast<unsigned>(*code));
        } else {
            result += fmt::format("\\U{:08x}", static_cast<unsigned>(*code));
        }
    }
    return result;
}

}  // namespace

bool isPrintable(char32_t code) {
    const bool control = code < 0x20 || (code >= 0x7F && code <= 0x9F);
    const bool separator = code == 0x2028 || code == 0x2029;
    const bool turnsDirection = (code >= 0x202A && code <= 0x202E) || (code >= 0x2066 && code <= 0x2069);
    const bool noCharacter = (code & 0xFFFE) == 0xFFFE || (code >= 0xFDD0 && code <= 0xFDEF) || code > 0x10FFFF ||
                             (code >= 0xD800 && code < 0xE000);
    return !control && !separator && !turnsDirection && !noCharacter;
}

std::string printable(std::string_view text) { return shown(text, false); }

std::string printableLines(std::string_view text) { return shown(text, true); }

}  // namespace tiepoint
