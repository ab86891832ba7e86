#pragma once
// The digits of a meter's display: three and a half of them, and the range that shows most of them. Pure functions.

#include <array>
#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace tiepoint {

/// One range of a display: the figure times `perUnit`, with so many decimals, as long as that is at most 1999 steps.
struct MeterRange {
    std::string_view unit;
    double perUnit = 1;
    int decimals = 0;
};

struct MeterDigits {
    std::string digits;  ///< with U+2212 in front of a negative number
    std::string_view unit;
};

inline constexpr int kMeterSteps = 1999;

inline constexpr std::array kVoltRanges = {MeterRange{"mV", 1e3, 1}, MeterRange{"V", 1, 3}, MeterRange{"V", 1, 2},
                                           MeterRange{"V", 1, 1}};
inline constexpr std::array kAmpereRanges = {MeterRange{"mA", 1e3, 2}, MeterRange{"mA", 1e3, 1}};

/// The figure in the first range that holds it; nothing if it is over the last one.
std::optional<MeterDigits> meterDigits(std::span<const MeterRange> ranges, double figure);
/// The last digit in that range, as the power of ten of the SI unit.
std::optional<int> lastDigit(std::span<const MeterRange> ranges, double figure);

}  // namespace tiepoint
