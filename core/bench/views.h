#pragma once
// The views of the invisible: what is shown of a bench besides its parts. Saved with the bench, so that it opens as it was left, but no
// part of the circuit: switching one is never an edit. Plain values.

#include "core/bench/extras.h"

#include <cstdint>
#include <optional>

namespace tiepoint {

enum class Arrows : std::uint8_t { Off, Conventional, Electrons };

/// Each is a row of the legend and a digit key; all can be combined.
struct Views {
    Arrows arrows = Arrows::Conventional;
    bool voltage = false;
    bool strips = false;
    bool readings = true;
    bool turned = false;                          ///< the boards are seen from below
    std::optional<double> lockedFullScaleAmpere;  ///< of the arrows; else it follows the largest current
    friend bool operator==(const Views&, const Views&) = default;
};

/// As a file holds them.
struct SavedViews {
    Views shown;
    Extras extras;
    friend bool operator==(const SavedViews&, const SavedViews&) = default;
};

/// The range of a locked full scale, A.
inline constexpr double kSmallestFullScaleAmpere = 1e-9, kLargestFullScaleAmpere = 1e6;

}  // namespace tiepoint
