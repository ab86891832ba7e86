#pragma once
// Which slips can be planted on a bench for a hunt, and how hard each is to find.
//
// A slip can be planted if one thing is to blame for it (fault.h), if it changes what the lights do in some position of the switches, if
// some reading of volts differs from the sound bench's, and if readings lead to that thing and no other: of all that could be broken
// without being seen (every part and jumper open inside, or without contact) nothing fits them that would blame another thing.
//
// The difficulty is the number of readings to that point for who always takes the one that parts the remaining candidates best, after
// having looked at the lights. Readings are worth taking where candidates fall into groups; best is the least expected size of what remains.
// Pure; safe from any thread; stoppable.

#include "core/hunt/fault.h"
#include "core/hunt/ground.h"

#include <cstdint>
#include <string>
#include <vector>

namespace tiepoint {

struct Plant {
    Slip slip;
    std::vector<std::string> things;  ///< to blame; any of them is a right answer
    const Fault* fault = nullptr;
    Bench bench;          ///< with the slip on it
    bool hidden = false;  ///< nothing of it is to be seen: a condition
    int readings = 0;     ///< the difficulty
    std::string seen;     ///< "D1 stays dark while A is pressed."
};

/// Every plant of a sound bench, the commonest slips first.
std::vector<Plant> plantsOf(const HuntGround& ground);

/// What of the lights is wrong, in the first position where something is: "D1 stays dark while A is pressed."
std::string seenInLights(const HuntGround& ground, const Signs& sound, const Signs& signs);

}  // namespace tiepoint
