#pragma once
// Whether an observation fits a suspect, within the tolerances of meter, eye and parts. Belongs to the thread of its foresight.
//
// Volts: 3 % and 0.05 V of the meter, and what resistors off by their tolerance may add up to, found from the slope of each. Light: a tenth
// about each threshold, since eyes differ, and the same for resistors. Continuity: meters beep below 20 to 50 ohm (common practice).
// What isn't solved excludes nobody.

#include "core/doctor/foresight.h"

namespace tiepoint {

/// How far a reading may be from what is foreseen with every part as printed.
double meterAllowance(double oneVolt, double otherVolt);
Shine shineOf(double brightness);

bool fits(Foresight& foresight, const SuspectList& suspects, const Suspect& suspect, const Observation& observation);

/// In which positions of the plan's switches somebody may look: at rest, then those the fewest throws away; at most `most`.
std::vector<Digits> positionsToLookAt(const Layout& plan, std::size_t most);

/// Below this a meter surely beeps, above the second surely not.
inline constexpr double kSurelyBeepsOhm = 20, kSurelySilentOhm = 50;

}  // namespace tiepoint
