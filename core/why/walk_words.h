#pragma once
// A potential walk in words, for cards, screen readers and the command line. Pure; safe from any thread.

#include "core/why/potential_walk.h"

#include <string>
#include <vector>

namespace tiepoint {

/// "b14" on a bench with one board; "a socket of PS1", "inside S1" or "the end of a lead" where the place is no hole.
std::string placeInWords(const Layout& layout, int joint);

/// Why there is no walk, in one sentence; empty where there is one.
std::string whyNoWalk(const Snapshot& snapshot, const PotentialWalk& walk, int part);

/// "At a13 the loop follows the largest share: 9.36 mA of 12.53 mA." One sentence for each division.
std::vector<std::string> divisionsInWords(const Snapshot& snapshot, const PotentialWalk& walk);

}  // namespace tiepoint
