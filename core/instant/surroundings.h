#pragma once
// What surrounds a bench and no part of it makes: the light that falls on it and the warmth of the room, and what a person holds over one place
// of it, a torch or a warm hand. A plain value.
//
// A torch is a small light at some height: its light falls off with the square of the distance and with the cosine of the angle at which it meets
// the boards (textbook), (1 + (d/h)^2)^(-3/2) at d from the place below it. A hand warms a place about as wide as itself; how its
// warmth falls off is made up, smooth, with the same length.

#include "core/base/geometry.h"

#include <cmath>
#include <optional>

namespace tiepoint {

/// A torch or a hand, over one place of the bench.
struct HeldOver {
    Point at;          ///< on the table, in pitches
    double there = 0;  ///< lux that a torch adds right below it; degrees Celsius of what a hand touches

    bool operator==(const HeldOver&) const = default;
};

struct Surroundings {
    double lightLux = 300;           ///< illuminance of a desk in a classroom (common practice)
    double temperatureCelsius = 25;  ///< the temperature at which the parts' figures hold
    std::optional<HeldOver> torch{}, hand{};

    bool operator==(const Surroundings&) const = default;
};

/// Bright sun at noon comes to about 100,000 lux (common practice); nothing on a table is lit more than twice as much.
inline constexpr double kMostLightLux = 200e3;
/// The range of industrial parts (common practice of data sheets).
inline constexpr double kColdestCelsius = -40, kWarmestCelsius = 85;

/// Height of a torch over the boards, and about half the breadth of a hand.
inline constexpr double kTorchHeightMm = 40, kHandMm = 20;

/// What a place of the bench (mm) has: light and warmth alone, with torch and hand in them.
inline Surroundings surroundingsAt(const Surroundings& all, Point at) {
    Surroundings here{all.lightLux, all.temperatureCelsius, {}, {}};
    const auto share = [at](const HeldOver& held, double reachMm) {
        const double away = distance(at, held.at * kPitchMm) / reachMm;
        return std::pow(1 + away * away, -1.5);
    };
    if (all.torch) here.lightLux += all.torch->there * share(*all.torch, kTorchHeightMm);
    if (all.hand) here.temperatureCelsius += (all.hand->there - all.temperatureCelsius) * share(*all.hand, kHandMm);
    return here;
}

/// Where neither torch nor hand has a place.
inline Surroundings surroundingsAside(const Surroundings& all) {
    return {all.lightLux, all.temperatureCelsius, {}, {}};
}

}  // namespace tiepoint
