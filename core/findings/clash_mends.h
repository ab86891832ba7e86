#pragma once
// What rules about clashes share: how things are named, and moves that might put them right. Pure.

#include "core/findings/rules.h"

namespace tiepoint {

/// "the anode of D1", "leg 1 of R1", "the + lead of PS1", "one end of W2".
std::string plugInWords(const Bench& bench, const std::string& id, int lead);
/// A finding of a clash: a risk, at the holes of both things.
Suspicion clashSuspicion(const Bench& bench, const Clash& clash);
/// Each part a row or two up or down.
void proposeShifts(const Bench& bench, const std::vector<std::string>& ids, std::vector<Mend>& proposals);
/// The lead or end into the nearest free hole of its strip.
void proposeNextHole(const Bench& bench, const std::string& id, int lead, const Hole& from,
                     std::vector<Mend>& proposals);
/// A flat jumper as an arc.
void proposeArc(const Bench& bench, const std::string& jumper, std::vector<Mend>& proposals);
/// An end of a wire into each other free hole of its strip.
void proposeOtherHoles(const Bench& bench, const std::string& id, int lead, std::vector<Mend>& proposals);

}  // namespace tiepoint
