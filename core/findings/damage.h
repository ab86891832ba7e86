#pragma once
// Damage that stays: a choice of the bench, off by default. Usually nothing on a bench is ever ruined; where it is chosen, a part that has got
// more than three times what it bears lets nothing through any more, until it is swapped for a new one. In the file the choice is a member of
// the surroundings, and a ruined part has the condition "dead".
// Parts that only close a contact, supplies and instruments are spared. Pure; safe from any thread.

#include "core/edit/edit.h"
#include "core/snapshot/snapshot.h"

#include <string>
#include <vector>

namespace tiepoint {

/// From this share of its limit on a part is ruined (common practice: well beyond what a maximum rating leaves in reserve).
inline constexpr double kRuinousShare = 3;

bool damageStays(const Bench& bench);
/// Chooses it, or chooses it no more.
Edit damageStaysEdit(const Bench& bench, bool stays);

/// The parts that this instant ruins, by index; none of them is broken yet.
std::vector<int> ruinedBy(const Snapshot& snapshot);
/// Makes them so: "D1 is ruined".
Edit ruinEdit(const Bench& bench, const std::vector<int>& parts);

/// What is said of a part that was ruined: "D1 is ruined and lets nothing through. Swap it for a new one."; empty of any other.
std::string ruinWords(const Bench& bench, int part);

}  // namespace tiepoint
