#pragma once
// What surrounds a bench and no part of it makes: the light that falls on it and the warmth of the room. A plain value.

namespace tiepoint {

struct Ambient {
    double lightLux = 300;           ///< illuminance of a desk in a classroom (common practice)
    double temperatureCelsius = 25;  ///< the temperature at which the parts' figures hold

    bool operator==(const Ambient&) const = default;
};

}  // namespace tiepoint
