#pragma once
// The units of the catalogue: how each is written, and which prefixes people write before it. Constant data; a new unit is one line in
// the table of unit.cpp.

#include <span>
#include <string_view>

namespace tiepoint {

struct Unit {
    std::string_view name;      ///< in the catalogue and in JSON: "ohm", "V", "F", "°C"; "" is a plain number
    std::string_view symbol;    ///< on the screen and on paper
    int least = 0, most = 0;    ///< powers of ten of the prefixes that are written before it, multiples of three
    bool wholeTenths = false;   ///< 0.25 W and 0.5 A read better than 250 mW and 500 mA; 100 mH doesn't
    std::string_view examples;  ///< of what can be typed for it
};

std::span<const Unit> units();
/// The unit of that name; a unit that isn't known is written as it is called, without prefixes.
Unit unitOf(std::string_view name);

/// What zero degrees Celsius are in kelvin (SI brochure, 9th edition, 2.3.4: exact).
inline constexpr double kZeroCelsiusKelvin = 273.15;

}  // namespace tiepoint
