#include "core/base/json_text.h"

#include "core/base/printable.h"
#include "core/base/utf8.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cassert>
#include <charconv>
#include <cmath>

namespace tiepoint {
namespace {

constexpr std::size_t kLongestQuote = 60;
constexpr std::size_t kLongestToken = 100;
constexpr std::string_view kReplacement = "\uFFFD";  ///< for bytes that are no UTF-8

/// At most `size` bytes of the text, cut between code points, with an ellipsis where something is missing.
std::string shortened(std::string_view text, std::size_t size) {
    if (text.size() <= size) return std::string(text);
    while (size > 0 && isContinuation(text[size])) --size;
    return std::string(text.substr(0, size)) + "…";
}

/// A code point as JSON escapes it (RFC 8259, section 7): those beyond the first plane as a surrogate pair.
std::string escaped(char32_t code) {
    switch (code) {
        case U'"':
            return "\\\"";
        case U'\\':
            return "\\\\";
        case U'\n':
            return "\\n";
        case U'\r':
            return "\\r";
        case U'\t':
            return "\\t";
        default:
            break;
    }
    if (code <= 0xFFFF) return fmt::format("\\u{:04x}", static_cast<unsigned>(code));
    const auto above = static_cast<unsigned>(code) - 0x10000u;
    return fmt::format("\\u{:04x}\\u{:04x}", 0xD800u + (above >> 10), 0xDC00u + (above & 0x3FFu));
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
    while (!text.empty()) {
        const std::string_view before = text;
        const auto code = takeCodePoint(text);
        if (!code) {
            json += kReplacement;
            text.remove_prefix(1);
        } else if (!isPrintable(*code) || *code == U'"' || *code == U'\\') {
            json += escaped(*code);
        } else {
            json += before.substr(0, before.size() - text.size());
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
