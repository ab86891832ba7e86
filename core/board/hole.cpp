#include "core/board/hole.h"

#include <charconv>

namespace tiepoint {
namespace {

constexpr int kLastLine = static_cast<int>(Line::BottomMinus);
constexpr std::size_t kMaxDigits = 4;

/// A number without sign and leading zero, to the end of the text.
std::optional<int> parseNumber(std::string_view digits) {
    if (digits.empty() || digits.size() > kMaxDigits || digits[0] < '1' || digits[0] > '9') return std::nullopt;
    int number = 0;
    const auto [end, status] = std::from_chars(digits.data(), digits.data() + digits.size(), number);
    if (status != std::errc{} || end != digits.data() + digits.size()) return std::nullopt;
    return number;
}

}  // namespace

std::string toString(const Hole& hole) { return hole.board + "." + shortName(hole); }

std::string shortName(const Hole& hole) { return std::string(lineName(hole.line)) + std::to_string(hole.number); }

std::optional<Hole> parseHole(std::string_view text) {
    const std::size_t dot = text.find('.');
    if (dot == std::string_view::npos || dot == 0) return std::nullopt;
    const std::string_view place = text.substr(dot + 1);
    const std::size_t digits = place.find_first_of("0123456789");
    if (digits == std::string_view::npos) return std::nullopt;
    const auto number = parseNumber(place.substr(digits));
    if (!number) return std::nullopt;
    for (int line = 0; line <= kLastLine; ++line) {
        if (place.substr(0, digits) != lineName(static_cast<Line>(line))) continue;
        return Hole{std::string(text.substr(0, dot)), static_cast<Line>(line), *number};
    }
    return std::nullopt;
}

}  // namespace tiepoint
