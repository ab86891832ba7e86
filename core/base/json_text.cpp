#include "core/base/json_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cassert>
#include <charconv>
#include <cmath>
#include <cstdint>

namespace tiepoint {
namespace {

constexpr std::size_t kLongestQuote = 60;
constexpr std::size_t kLongestToken = 100;

bool isContinuation(char byte) { return (static_cast<unsigned char>(byte) & 0xC0) == 0x80; }

/// Takes one code point (RFC 3629: no surrogates, nothing overlong) off the front; nothing if there is none.
std::optional<char32_t> takeCodePoint(std::string_view& text) {
    const auto first = static_cast<unsigned char>(text[0]);
    const std::size_t size = first < 0x80   ? 1
                             : first < 0xC2 ? 0
                             : first < 0xE0 ? 2
                             : first < 0xF0 ? 3
                             : first < 0xF5 ? 4
                                            : 0;
    if (size == 0 || text.size() < size) return std::nullopt;
    char32_t code = size == 1 ? first : first & (0xFFu >> (size + 1));
    for (const char byte : text.substr(1, size - 1)) {
        if (!isContinuation(byte)) return std::nullopt;
        code = (code << 6) | (static_cast<unsigned char>(byte) & 0x3Fu);
    }
    constexpr std::array<char32_t, 5> kSmallest = {0, 0, 0x80, 0x800, 0x10000};
    if (code < kSmallest[size] || code > 0x10FFFF || (code >= 0xD800 && code < 0xE000)) return std::nullopt;
    text.remove_prefix(size);
    return code;
}

/// At most `size` bytes of the text, cut between code points, with an ellipsis where something is missing.
std::string shortened(std::string_view text, std::size_t size) {
    if (text.size() <= size) return std::string(text);
    while (size > 0 && isContinuation(text[size])) --size;
    return std::string(text.substr(0, size)) + "…";
}

std::string escaped(char c) {
    switch (c) {
        case '"':
            return "\\\"";
        case '\\':
            return "\\\\";
        case '\n':
            return "\\n";
        case '\r':
            return "\\r";
        case '\t':
            return "\\t";
        default:
            return fmt::format("\\u{:04x}", static_cast<unsigned>(c));
    }
}

/// The end of the JSON string that starts at `begin`.
std::size_t endOfString(std::string_view json, std::size_t begin) {
    std::size_t at = begin + 1;
    while (at < json.size() && json[at] != '"') at += json[at] == '\\' ? 2 : 1;
    return std::min(at + 1, json.size());
}

}  // namespace

std::string jsonString(std::string_view text) {
    std::string json = "\"";
    for (const char c : text) {
        const bool control = static_cast<unsigned char>(c) < 0x20;
        if (control || c == '"' || c == '\\') {
            json += escaped(c);
        } else {
            json += c;
        }
    }
    return json += '"';
}

std::string jsonNumber(double value) {
    assert(std::isfinite(value));
    if (value == 0) return "0";  // never -0
    // Plain digits where people would write them; to_chars alone would turn 100000 into 1e+05.
    const double magnitude = std::abs(value);
    const bool plain = magnitude >= 1e-4 && magnitude < 1e15;
    std::array<char, 40> digits{};
    const auto format = plain ? std::chars_format::fixed : std::chars_format::scientific;
    const auto written = std::to_chars(digits.data(), digits.data() + digits.size(), value, format);
    assert(written.ec == std::errc{});
    return {digits.data(), written.ptr};
}

std::string canonicalJson(std::string_view json) {
    std::string result;
    for (std::size_t at = 0; at < json.size();) {
        const char c = json[at];
        const std::size_t end = c == '"' ? endOfString(json, at) : at + 1;
        if (c != ' ' && c != '\n' && c != '\r' && c != '\t') result += json.substr(at, end - at);
        if (c == ',' || c == ':') result += ' ';
        at = end;
    }
    return result;
}

std::string pointerToken(std::string_view name) {
    std::string token;
    for (const char c : shortened(name, kLongestToken)) {
        if (c == '~') {
            token += "~0";
        } else if (c == '/') {
            token += "~1";
        } else {
            token += c;
        }
    }
    return token;
}

std::string inQuotes(std::string_view text) { return '"' + shortened(text, kLongestQuote) + '"'; }

bool isText(std::string_view text) {
    while (!text.empty()) {
        const auto code = takeCodePoint(text);
        if (!code || *code == 0) return false;
    }
    return true;
}

std::optional<char32_t> singleCodePoint(std::string_view text) {
    if (text.empty()) return std::nullopt;
    const auto code = takeCodePoint(text);
    return text.empty() ? code : std::nullopt;
}

}  // namespace tiepoint
