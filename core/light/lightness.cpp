#include "core/light/lightness.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace tiepoint {

double lightness(double relativeLuminance) {
    constexpr double kDelta = 6.0 / 29.0;
    const double f = relativeLuminance > kDelta * kDelta * kDelta
                         ? std::cbrt(relativeLuminance)
                         : relativeLuminance / (3 * kDelta * kDelta) + 4.0 / 29.0;
    return 116 * f - 16;
}

// NaN in gives NaN out, here and below: std::clamp and std::min hand on what compares with nothing.
double relativeLight(double currentAmpere, double ratedCurrentAmpere, double exponent) {
    const double share = std::clamp(currentAmpere / ratedCurrentAmpere, 0.0, std::numeric_limits<double>::infinity());
    return exponent == 1 ? share : std::pow(share, exponent);
}

double brightnessOfLight(double meanRelativeLight) {
    constexpr double kFullLightness = 100;
    return std::clamp(lightness(std::min(meanRelativeLight, 1.0)) / kFullLightness, 0.0, 1.0);
}

double brightness(double currentAmpere, double ratedCurrentAmpere, double exponent) {
    return brightnessOfLight(relativeLight(currentAmpere, ratedCurrentAmpere, exponent));
}

}  // namespace tiepoint
