// Writing quantities. Digits are shifted as text, so that a written value is exactly the value that is held.

#include "core/base/quantity.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

namespace tiepoint {
namespace {

constexpr std::string_view kMinus = "\u2212";
constexpr double kNothing = 1e-15;  ///< magnitudes below are noise

struct Prefix {
    std::string_view symbol;
    int exponent;
};
constexpr std::array kPrefixes = {Prefix{"p", -12}, Prefix{"n", -9}, Prefix{"\u00b5", -6}, Prefix{"m", -3},
                                  Prefix{"", 0},    Prefix{"k", 3},  Prefix{"M", 6},       Prefix{"G", 9}};
constexpr int kLeastExponent = kPrefixes.front().exponent, kMostExponent = kPrefixes.back().exponent;

/// The prefix for a number whose first digit has that exponent.
const Prefix& prefixFor(int exponent, int least = kLeastExponent, int most = kMostExponent) {
    const int group = std::clamp(3 * static_cast<int>(std::floor(exponent / 3.0)), least, most);
    return kPrefixes[(group - kLeastExponent) / 3];
}

/// A positive number as its digits and the exponent of the first one: 4700 is "47" and 3.
struct Decimal {
    std::string digits;
    int exponent = 0;
};

Decimal fromScientific(std::string_view text) {
    const std::size_t mark = text.find('e');
    Decimal decimal;
    for (const char c : text.substr(0, mark)) {
        if (c != '.') decimal.digits += c;
    }
    std::string_view exponent = text.substr(mark + 1);
    if (exponent.starts_with('+')) exponent.remove_prefix(1);
    std::from_chars(exponent.data(), exponent.data() + exponent.size(), decimal.exponent);
    return decimal;
}

/// The fewest digits that give back the same double.
Decimal shortest(double magnitude) {
    std::array<char, 32> buffer{};
    const auto end =
        std::to_chars(buffer.data(), buffer.data() + buffer.size(), magnitude, std::chars_format::scientific);
    return fromScientific({buffer.data(), end.ptr});
}

/// Exactly so many digits, rounded.
Decimal rounded(double magnitude, int digits) {
    return fromScientific(fmt::format("{:.{}e}", magnitude, std::clamp(digits, 1, 6) - 1));
}

/// Digits with a point (or another mark) after the place of the unit that `exponent` counts from.
std::string withPoint(const Decimal& decimal, int exponent, std::string_view point = ".") {
    const int whole = decimal.exponent - exponent + 1;
    const int count = static_cast<int>(decimal.digits.size());
    if (whole <= 0) return fmt::format("0{}{}{}", point, std::string(-whole, '0'), decimal.digits);
    if (whole >= count) return decimal.digits + std::string(whole - count, '0');
    return fmt::format("{}{}{}", decimal.digits.substr(0, whole), point, decimal.digits.substr(whole));
}

std::string withUnit(std::string number, std::string_view prefix, std::string_view unit) {
    if (unit.empty()) return number;
    return fmt::format("{} {}{}", number, prefix, unitOf(unit).symbol);
}

std::string signOf(double value) { return value < 0 ? std::string(kMinus) : std::string(); }

bool staysWhole(const Decimal& decimal) { return decimal.exponent == -1 && decimal.digits.size() <= 3; }

}  // namespace

std::string formatQuantity(double value, std::string_view unit, int digits) {
    if (!std::isfinite(value)) return "no value";
    if (std::abs(value) < kNothing) return withUnit("0", "", unit);
    const Decimal decimal = rounded(std::abs(value), digits);
    const Unit written = unitOf(unit);
    const Prefix& prefix = prefixFor(decimal.exponent, written.least, written.most);
    return signOf(value) + withUnit(withPoint(decimal, prefix.exponent), prefix.symbol, unit);
}

std::string_view unitPrefix(int exponent) { return prefixFor(exponent).symbol; }

std::string formatSetting(double value, std::string_view unit) {
    if (!std::isfinite(value)) return "no value";
    if (value == 0) return withUnit("0", "", unit);
    const Decimal decimal = shortest(std::abs(value));
    const Unit written = unitOf(unit);
    constexpr int kMostZeros = 6;
    constexpr int kLeastPlain = -5;  // without a prefix, "4e−7" is read more easily than seven zeros
    const int least = std::max(kLeastExponent, unit.empty() ? kLeastPlain : written.least - kMostZeros);
    const bool tiny = decimal.exponent < least;
    if (tiny) {
        const std::string number =
            fmt::format("{}e{}{}", withPoint(decimal, decimal.exponent), kMinus, -decimal.exponent);
        return signOf(value) + withUnit(number, "", unit);
    }
    const bool plain = written.wholeTenths && staysWhole(decimal);
    const Prefix& prefix = plain ? prefixFor(0) : prefixFor(decimal.exponent, written.least, written.most);
    return signOf(value) + withUnit(withPoint(decimal, prefix.exponent), prefix.symbol, unit);
}

std::string formatLetterCode(double value, std::string_view unit) {
    const Unit written = unitOf(unit);
    const bool ohm = unit == "ohm";
    if (!(value > 0) || !std::isfinite(value)) return ohm ? "0R" : fmt::format("0{}", written.symbol);
    const Decimal decimal = shortest(value);
    const Prefix& prefix = prefixFor(decimal.exponent, ohm ? 0 : written.least, written.most);
    const std::string_view letter = prefix.exponent == 0 ? (ohm ? "R" : written.symbol) : prefix.symbol;
    std::string text = withPoint(decimal, prefix.exponent, letter);
    if (text.find(letter) == std::string::npos) text += letter;
    return text.starts_with('0') ? text.substr(1) : text;
}

std::string formatTemperature(double kelvin) {
    constexpr double kTenth = 10;
    return formatSetting(std::round((kelvin - kZeroCelsiusKelvin) * kTenth) / kTenth, "\u00b0C");
}

}  // namespace tiepoint
