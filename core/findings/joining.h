#pragma once
// Mends that join metal: one more jumper between two strips. Pure functions; safe from any thread.

#include "core/findings/examination.h"
#include "core/findings/finding.h"
#include "core/findings/rules.h"

#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace tiepoint {

/// A jumper between the free holes nearest to two holes, in a colour that suits the rail it reaches; nothing if a strip is full.
std::optional<Mend> jumperMend(const Bench& bench, const Hole& a, const Hole& b);
/// The same where many are tried on one bench.
std::optional<Mend> jumperMend(const Occupancy& around, const Hole& a, const Hole& b);

/// Jumpers from the strips of some occupied holes to the nearest metal of nets that suit, the shortest first.
std::vector<Mend> bridgeMends(const Examination& examination, const std::vector<Hole>& from,
                              const std::function<bool(int net)>& suits);

/// For each dark light a suspicion that two strips aren't joined, for inspect() to prove; none where both are one net already,
/// where nothing is plugged into one of them, or where neither has to do with the light.
void suspectGap(const Examination& examination, const Hole& a, const Hole& b, const std::string& text,
                Suspicions& found);

}  // namespace tiepoint
