#pragma once
// What lies under the pointer, from the top down: of each kind of thing the uppermost.

#include "core/bench/bench.h"

#include <optional>
#include <string>

namespace tiepoint::ui {

/// One end of something: a lead of a part, or an end of a jumper.
struct End {
    std::string id;
    int index = 0;
    bool jumper = false;
};

/// About the middle of a hole: who presses there means the hole, not a wire that passes over it.
inline constexpr double kOpeningMm = 0.7;

struct Under {
    std::string note;         ///< lies over everything else
    std::string pinned;       ///< tag of a pinned reading; only notes lie over it
    std::string control;      ///< part whose cap, lever, blade or knob it is
    std::optional<End> grip;  ///< the end that a drag moves: a pin, a leg at its hole, the cable of a supply
    std::optional<Socket> socket;
    std::string body;         ///< part whose body it is
    std::string wire;         ///< jumper
    std::optional<End> lead;  ///< bare lead of a part
    std::optional<Hole> hole;
    std::string board;  ///< whose edge or empty face it is: no hole is near
    int net =
        -1;  ///< of the uppermost metal that is meant there: a wire's, a socket's, or that of a hole which nothing covers
    Point netAt;  ///< where its name stands

    /// The part, jumper, note or pinned reading that a click selects, or empty.
    std::string thing() const;
};

}  // namespace tiepoint::ui
