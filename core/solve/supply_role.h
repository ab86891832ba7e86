#pragma once
// When a supply with a limit changes its role. A pure function.

#include <algorithm>
#include <cmath>

namespace tiepoint {

/// Relative: rounding must not make a supply change its mind.
inline constexpr double kLimitSlack = 1e-9;

/// How far a supply is beyond what its role allows, relative; 0 or less if it is content. Roles: 0 holds its voltage, -1 gives its
/// limit, 1 takes it. ampere: from plus to minus through it; volt: from plus to minus.
inline double supplyExcess(int role, double ampere, double volt, double emfVolt, double seriesOhm, double limitAmpere) {
    if (role == 0) return std::abs(ampere) / limitAmpere - 1 - kLimitSlack;
    // Giving its limit, it must stand below the voltage that it would hold; taking it, above.
    constexpr double kLeastVolt = 1e-3;
    const double held = emfVolt + seriesOhm * ampere;
    const double scale = std::max({std::abs(held), std::abs(volt), kLeastVolt});
    return (role < 0 ? volt - held : held - volt) / scale - kLimitSlack;
}

}  // namespace tiepoint
