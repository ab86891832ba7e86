#include "core/parts/ladder.h"

#include "core/parts/preferred.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace tiepoint {
namespace {

constexpr double kStepsOfRange = 100;
constexpr double kSame = 1e-9;  ///< relative
constexpr std::array kUsualVolts{1.5, 3.0, 3.3, 4.5, 5.0, 6.0, 7.5, 9.0, 12.0, 15.0, 18.0, 24.0, 30.0};

bool isSame(double a, double b) { return std::abs(a - b) <= kSame * std::max(std::abs(a), std::abs(b)); }

/// Steps through an ascending list. From a number between two rungs the first step goes to the next rung in that direction.
double stepThrough(std::span<const double> rungs, double from, int steps) {
    const auto size = static_cast<std::ptrdiff_t>(rungs.size());
    std::ptrdiff_t index =
        std::count_if(rungs.begin(), rungs.end(), [&](double rung) { return rung < from && !isSame(rung, from); });
    const bool on = index < size && isSame(rungs[static_cast<std::size_t>(index)], from);
    if (!on && steps > 0) --index;
    return rungs[static_cast<std::size_t>(std::clamp<std::ptrdiff_t>(index + steps, 0, size - 1))];
}

double stepInSeries(const std::string& series, double from, int steps) {
    const double on = steps > 0 ? preferredAtMost(series, from) : preferredAtLeast(series, from);
    return preferredStep(series, on, steps);
}

}  // namespace

std::span<const double> usualVolts() { return kUsualVolts; }

double ladderStep(const ValueSpec& spec, double from, int steps) {
    if (steps == 0) return from;
    if (!spec.allowed.empty()) return stepThrough(spec.allowed, from, steps);
    double to = from + steps * (spec.integer ? 1 : (spec.maximum - spec.minimum) / kStepsOfRange);
    if (!spec.series.empty() && from > 0)
        to = stepInSeries(spec.series, from, steps);
    else if (spec.unit == "V" && !spec.integer)
        to = stepThrough(usualVolts(), from, steps);
    return std::clamp(to, spec.minimum, spec.maximum);
}

std::vector<double> ladderAbout(const ValueSpec& spec, double value, int each) {
    std::vector<double> rungs{value};
    for (int i = 0; i < each; ++i) {
        const double below = ladderStep(spec, rungs.front(), -1);
        if (below < rungs.front() && !isSame(below, rungs.front())) rungs.insert(rungs.begin(), below);
        const double above = ladderStep(spec, rungs.back(), 1);
        if (above > rungs.back() && !isSame(above, rungs.back())) rungs.push_back(above);
    }
    return rungs;
}

}  // namespace tiepoint
