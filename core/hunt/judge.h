#pragma once
// Judging a guess: the thing and what is wrong with it, and whether the readings that are given as evidence prove it.
//
// A reading is what a meter showed on the bench as it stood, hands and pulled parts included. Readings prove a thing if they don't fit the
// sound bench, and fit no bench on which another thing is broken without being seen. For that each such bench is solved with the meter
// where it was. How long it took counts for nothing.
// Pure; safe from any thread; stoppable.

#include "core/hunt/hidden_slip.h"
#include "core/snapshot/snapshot.h"

#include <memory>
#include <string>
#include <vector>

namespace tiepoint {

/// What a meter showed.
struct HuntReading {
    std::shared_ptr<const Snapshot> at;  ///< the solved bench
    std::string meter;                   ///< id
};

/// A guess, and the readings that are to prove it.
struct HuntGuess {
    std::string thing;
    const Fault* fault = nullptr;
    std::vector<HuntReading> evidence;
};

struct HuntVerdict {
    bool thing = false;               ///< it is this thing
    bool fault = false;               ///< and this is wrong with it
    bool proved = false;              ///< the evidence leaves no other thing
    std::vector<std::string> others;  ///< things that would explain the evidence as well, the guess not among them
    std::string
        text;  ///< what the bench answers: one or two sentences, without the solution while the guess isn't right
    bool solved() const { return thing && fault && proved; }
};

HuntVerdict judge(const Bench& bench, const HiddenSlip& slip, const HuntGuess& guess);

}  // namespace tiepoint
