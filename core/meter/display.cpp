#include "core/meter/display.h"

#include <fmt/format.h>

#include <cmath>

namespace tiepoint {

std::optional<MeterDigits> meterDigits(std::span<const MeterRange> ranges, double figure) {
    constexpr std::string_view kMinus = "\u2212";
    for (const MeterRange& range : ranges) {
        const double stepsPerUnit = std::pow(10.0, range.decimals);
        const double steps = std::round(std::abs(figure) * range.perUnit * stepsPerUnit);
        if (!(steps <= kMeterSteps)) continue;
        const std::string_view sign = figure < 0 && steps > 0 ? kMinus : "";
        return MeterDigits{fmt::format("{}{:.{}f}", sign, steps / stepsPerUnit, range.decimals), range.unit};
    }
    return std::nullopt;
}

}  // namespace tiepoint
