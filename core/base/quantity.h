#pragma once
// Numbers as people read and type them: engineering notation with three digits, and the letter code of IEC 60062.

#include <optional>
#include <string>
#include <string_view>

namespace tiepoint {

/// A quantity in engineering notation with three significant digits: (0.00943, "A") -> "9.43 mA", (330, "ohm") -> "330 Ω",
/// (-1.5, "V") -> "−1.50 V" with U+2212, never a hyphen. Prefixes p n µ m (none) k M G; rounding carries into the next prefix.
/// Zero and magnitudes under 1e-15 give "0 V". NaN gives "no value". `digits` is 1..6.
std::string formatQuantity(double value, std::string_view unit, int digits = 3);

/// The prefix of a unit that is ten to this power of its SI unit, a multiple of three from -12 to 9: -3 -> "m".
std::string_view unitPrefix(int exponent);

/// A set value rather than a measured one: as short as it is exact, "330 Ω", "4.7 kΩ", "5 V", "0.25 W".
std::string formatSetting(double value, std::string_view unit);

/// The letter code of IEC 60062 for a resistance: 4.7 -> "4R7", 220 -> "220R", 4700 -> "4k7", 1e6 -> "1M".
std::string formatLetterCode(double ohm);

/// Reads what a person types for a value: "220", "4k7", "4R7", "1M", "0.5", "2,2k", "500m", "20mA", "5 V"; the unit's own letters
/// may follow. Nothing if it isn't one. `unit` as in the catalogue ("ohm", "V", "A", "W", "").
std::optional<double> parseQuantity(std::string_view text, std::string_view unit);

}  // namespace tiepoint
