#pragma once
// What a hand and the world do to a bench at one instant; never saved, and no change to the document. A plain value. What the parts
// themselves remember is their State (state.h).
//
// Times are seconds of the bench's own clock, which begins at 0 and runs at `timeScale` beside that on the wall.

#include "core/instant/surroundings.h"

#include <cstdint>
#include <limits>
#include <set>
#include <string>
#include <string_view>
#include <vector>

namespace tiepoint {

/// One press of a part: from when to when a hand is on it. It is held at the first of the two and no longer at the last.
struct Press {
    std::string part;
    double fromSecond = 0;
    double untilSecond = std::numeric_limits<double>::infinity();

    bool holdsAt(double second) const { return fromSecond <= second && second < untilSecond; }
    bool operator==(const Press&) const = default;
};

struct Inputs {
    std::uint64_t sequence = 0;               ///< counts changes, so that a view knows which press an answer belongs to
    std::set<std::string, std::less<>> held;  ///< ids of the parts that are pressed
    double timeScale = 1;                     ///< seconds of the bench for each second of the wall's clock
    Surroundings surroundings;
    /// When hands press and let go. They alone count for the parts that they name, so that a press too short for a frame isn't lost to
    /// who steps through time; any other part is pressed while it is among `held`.
    std::vector<Press> presses;

    bool isHeldAt(std::string_view part, double second) const;
    /// The first instant after this one at which a press begins or ends; infinity without one.
    double nextPressAfter(double second) const;
    /// The same at one instant: `held` says what is pressed then, and there are no presses.
    Inputs at(double second) const;
};

}  // namespace tiepoint
