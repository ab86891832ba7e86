#pragma once
// Secret slips for real boards: one learner of a pair makes one on the board, the other finds it. Only what hands do and undo in a minute, and
// only what can't hurt: no slip touches a supply, its leads or a rail, and in every position of the switches the bench with the slip has a
// solution, no supply is at its limit, and no part gets more than nine tenths of what it bears, or than it got before.
// Pure; safe from any thread; stoppable.

#include "core/base/result.h"
#include "core/hunt/ground.h"
#include "core/slips/slip.h"

#include <cstdint>
#include <memory>
#include <string>
#include <vector>

namespace tiepoint {

struct CardSlip {
    Slip slip;
    std::string doWords;    ///< "Move D1's anode from c14 to c15."
    std::string seenWords;  ///< "D1 stays dark while A is pressed."
    std::string undoWords;  ///< "Put D1's anode into c14."
};

/// So many cards, drawn from a number; kinds take turns, and where there are too few they come again. Fails where the bench allows none.
Result<std::vector<CardSlip>> cardSlips(std::shared_ptr<const Bench> target, int count, std::uint64_t seed);

/// Whether a slip made on a real board could hurt a part or a person.
bool isHarmless(const HuntGround& ground, const Bench& slipped);

}  // namespace tiepoint
