#pragma once
// What surrounds a bench and no part of it makes: the light that falls on it and the warmth of the room. A plain value.

namespace tiepoint {

struct Surroundings {
    double lightLux = 300;           ///< illuminance of a desk in a classroom (common practice)
    double temperatureCelsius = 25;  ///< the temperature at which the parts' figures hold

    bool operator==(const Surroundings&) const = default;
};

/// Bright sun at noon comes to about 100,000 lux (common practice); nothing on a table is lit more than twice as much.
inline constexpr double kMostLightLux = 200e3;
/// The range of industrial parts (common practice of data sheets).
inline constexpr double kColdestCelsius = -40, kWarmestCelsius = 85;

}  // namespace tiepoint
