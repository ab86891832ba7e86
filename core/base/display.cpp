#include "core/base/display.h"

#include <fmt/format.h>

#include <cmath>

namespace tiepoint {

namespace {

/// How many steps of a range a figure makes.
double stepsIn(const MeterRange& range, double figure) {
    return std::round(std::abs(figure) * range.perUnit * std::pow(10.0, range.decimals));
}

const MeterRange* rangeFor(std::span<const MeterRange> ranges, double figure) {
    for (const MeterRange& range : ranges)
        if (stepsIn(range, figure) <= kMeterSteps) return &range;
    return nullptr;
}

}  // namespace

std::optional<MeterDigits> meterDigits(std::span<const MeterRange> ranges, double figure) {
    constexpr std::string_view kMinus = "\u2212";
    const MeterRange* range = rangeFor(ranges, figure);
    if (range == nullptr) return std::nullopt;
    const double steps = stepsIn(*range, figure);
    const std::string_view sign = figure < 0 && steps > 0 ? kMinus : "";
    return MeterDigits{fmt::format("{}{:.{}f}", sign, steps / std::pow(10.0, range->decimals), range->decimals),
                       range->unit};
}

std::optional<int> lastDigit(std::span<const MeterRange> ranges, double figure) {
    const MeterRange* range = rangeFor(ranges, figure);
    if (range == nullptr) return std::nullopt;
    return -static_cast<int>(std::lround(std::log10(range->perUnit))) - range->decimals;
}

}  // namespace tiepoint
