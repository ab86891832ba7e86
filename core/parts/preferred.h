#pragma once
// Preferred numbers (IEC 60063) and the colour code (IEC 60062).

#include <optional>
#include <span>
#include <string_view>
#include <vector>

namespace tiepoint {

/// The mantissas of a series ("E3", "E6", "E12", "E24": 10..91; "E96": 100..976), ascending; empty for an unknown name.
std::span<const int> preferredNumbers(std::string_view series);
/// The nearest member of the series to a positive value (by ratio).
double nearestPreferred(std::string_view series, double value);
/// The smallest member that is at least / the largest that is at most the value (within 1e-9 of relative rounding).
double preferredAtLeast(std::string_view series, double value);
double preferredAtMost(std::string_view series, double value);
/// The member `steps` places above (or below) the nearest one.
double preferredStep(std::string_view series, double value, int steps);

enum class BandColour { Black, Brown, Red, Orange, Yellow, Green, Blue, Violet, Grey, White, Gold, Silver, Pink };

std::string_view bandName(BandColour colour);
/// The bands of a resistor: four (two digits) where the value has two digits and the tolerance is 2 % or wider; else five.
/// Three bands for 20 %. Nothing where the code can't say the value (needs more than three digits, or out of range).
std::optional<std::vector<BandColour>> colourBands(double ohm, double tolerance);
/// The resistance and tolerance that bands say (3, 4 or 5 bands); nothing if they say none.
struct BandReading {
    double ohm;
    double tolerance;
};
std::optional<BandReading> readBands(std::span<const BandColour> bands);

}  // namespace tiepoint
