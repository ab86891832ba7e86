#pragma once
// Where to measure on a bench that was built by hand, and what is expected there. A meter's tips don't go into holes: a place is a leg to touch.
// Pure; stoppable.

#include "core/behaviour/behaviour.h"
#include "core/sheet/build_plan.h"

namespace tiepoint {

/// A leg that a tip can touch, one for each net on which at least two things meet.
struct TouchableLeg {
    int net = -1;
    Hole hole;
    std::string where;  ///< "c9, leg 2 of R1"
};
/// In the order in which the eye reads the board; so many that a lesson has time for them.
std::vector<TouchableLeg> touchableLegs(const Layout& layout);

/// "Nothing pressed", "S1 and S2 pressed", "SW1 towards b".
std::string positionInTitle(const Behaviour& behaviour, const Digits& digits);

/// Where the meter's black tip touches: at the minus of the first supply. Empty where no supply's minus is plugged in.
std::string blackTipOf(const Layout& layout);

/// Two positions at most: hands off, and the one in which the most lights shine with the fewest switches thrown.
std::vector<MeasuredPosition> measuredPositions(const std::shared_ptr<const Layout>& layout);

}  // namespace tiepoint
