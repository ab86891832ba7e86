#pragma once
// Throws: what hands can bring into several positions. A push button's cap is one throw, a slide another; a part with several
// contacts that move on their own would have several. A knob that turns without steps is one with three places: its ends and its middle.
// Found from the kind's model and states, so that a new kind of switch or knob needs nothing here. Pure functions; safe from any thread.

#include "core/bench/bench.h"
#include "core/instant/inputs.h"

#include <string>
#include <vector>

namespace tiepoint {

struct Throw {
    static constexpr int kHeld = -1;

    int part = 0;    ///< index of the part
    int state = 0;   ///< index of the kind's state, or kHeld: its cap
    int values = 2;  ///< how many positions it has
    bool isKnob = false;
    double least = 0, most = 1;  ///< knobs: what the state is at both ends

    bool isCap() const { return state == kHeld; }
    /// The value of its state at a digit; of a knob that stands elsewhere, which the digit after the last says, what it is now.
    double stateAt(int digit, double now) const;
};

/// One position of each throw of a bench, in the order of throwsOf().
using Digits = std::vector<int>;

/// Whether a part is a switch: a contact of its model opens or closes.
bool isSwitch(const PartKind& kind);
/// Every throw of the bench's switches, in the order of its parts.
std::vector<Throw> throwsOf(const Bench& bench);
/// Every knob of the bench, in the order of its parts.
std::vector<Throw> knobsOf(const Bench& bench);
/// How the throws stand.
Digits digitsOf(const std::vector<Throw>& throws, const Bench& bench, const Inputs& inputs);

/// "pressed", "released", "towards b", "closed", "turned to 50 %": one position of a throw in words.
std::string positionInWords(const Throw& each, const Bench& bench, int digit);

}  // namespace tiepoint
