#include "core/light/lightness.h"

#include <algorithm>
#include <cmath>

namespace tiepoint {

double lightness(double relativeLuminance) {
    constexpr double kDelta = 6.0 / 29.0;
    const double f = relativeLuminance > kDelta * kDelta * kDelta
                         ? std::cbrt(relativeLuminance)
                         : relativeLuminance / (3 * kDelta * kDelta) + 4.0 / 29.0;
    return 116 * f - 16;
}

double brightness(double meanCurrentAmpere, double ratedCurrentAmpere, double exponent) {
    constexpr double kFullLightness = 100;
    const double share = std::clamp(meanCurrentAmpere / ratedCurrentAmpere, 0.0, 1.0);
    const double light = exponent == 1 ? share : std::pow(share, exponent);
    return std::clamp(lightness(light) / kFullLightness, 0.0, 1.0);
}

}  // namespace tiepoint
