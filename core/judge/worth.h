#pragma once
// What a change of a bench is worth: how much likelier it is that its maker wanted the changed bench than the bench as it stands. Pure.
//
// Method: conditional logit. The worth of a bench after a change is a weighed sum of what its traits gain and lose, and of how common the slip
// is that the change undoes; the probability that a change is the one wanted is proportional to exp(worth). The weights were fitted to
// benches drawn by chance (tests/examiner, work seeds only) and rounded to tenths. Source of the method: D. McFadden, "Conditional logit
// analysis of qualitative choice behavior", in Frontiers in Econometrics, 1974 (from memory).

#include "core/judge/traits.h"

namespace tiepoint {

/// Of what is gained and lost; 0 for no difference.
double worthOf(const Traits& before, const Traits& after);
/// Of undoing a slip with such a weight (SlipKind::weight, lessened), if so many slips of its kind might have been made: the more there
/// are, the rarer is each.
double worthOfSlip(double weight, double ways);

/// Whether the change lowers something that no mend may lower.
bool lowersAGain(const Traits& before, const Traits& after);

/// Whether the change makes something work or keeps a law that was broken; that another part carries current is none of it.
bool bringsWork(const Traits& before, const Traits& after);

/// Whether the change only makes brighter or darker what shines already: lights may be unlike each other on purpose.
bool onlyDims(const Traits& before, const Traits& after);

/// A mend that is worth more is told. A light that never shines is surely amiss, so little is asked of what lights it; much of what only
/// makes lights brighter or darker, unless they are alike then.
double toldFrom(const Traits& before, const Traits& after);

/// A mend that is worth more is told, and is an alarm from the second figure on. Set on sound benches of the work seeds.
inline constexpr double kToldWorth = 0.9, kAlarmWorth = 2.5, kDimWorth = 3.3;

}  // namespace tiepoint
