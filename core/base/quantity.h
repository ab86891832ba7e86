#pragma once
// Numbers as people read and type them: engineering notation with three digits, and the letter code of IEC 60062.

#include "core/base/unit.h"

#include <optional>
#include <string>
#include <string_view>

namespace tiepoint {

/// A quantity in engineering notation with three significant digits: (0.00943, "A") -> "9.43 mA", (330, "ohm") -> "330 Ω",
/// (-1.5, "V") -> "−1.50 V" with U+2212, never a hyphen. Of the prefixes p n µ m (none) k M G those that are written before the unit;
/// rounding carries into the next prefix.
/// Zero and magnitudes under 1e-15 give "0 V". NaN gives "no value". `digits` is 1..6.
std::string formatQuantity(double value, std::string_view unit, int digits = 3);

/// The prefix of a unit that is ten to this power of its SI unit, a multiple of three from -12 to 9: -3 -> "m".
std::string_view unitPrefix(int exponent);

/// A set value rather than a measured one: as short as it is exact, "330 Ω", "4.7 kΩ", "5 V", "0.25 W".
std::string formatSetting(double value, std::string_view unit);

/// The letter code of IEC 60062 for a resistance: 4.7 -> "4R7", 220 -> "220R", 4700 -> "4k7", 1e6 -> "1M"; and for a capacitance:
/// 4.7e-6 -> "4µ7", 100e-9 -> "100n", 3.3e-12 -> "3p3".
std::string formatLetterCode(double value, std::string_view unit = "ohm");

/// A temperature as people read it: 298.15 -> "25 °C", to the nearest tenth of a degree.
std::string formatTemperature(double kelvin);

/// Reads what a person types for a value: "220", "4k7", "4R7", "1M", "0.5", "2,2k", "500m", "20mA", "5 V"; the unit's own letters
/// may follow. Capacitances also as "n33" (IEC 60062); kelvins also in degrees Celsius, and the other way round. Prefixes that nobody
/// writes before the unit are refused. Nothing if it isn't one. `unit` as in the catalogue (core/base/unit.h).
std::optional<double> parseQuantity(std::string_view text, std::string_view unit);

}  // namespace tiepoint
