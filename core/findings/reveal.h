#pragma once
// How much of the findings is told: nothing, a place to look at, place and proof, or the mend too. A bench says it for whoever works at
// it; a lock keeps hands from asking for more. It keeps honest learners from peeking and is no security: the file can be edited.
// Pure; safe from any thread.

#include "core/findings/finding.h"

namespace tiepoint {

/// The level that a bench asks for; place and proof where it doesn't say, nothing while it hides a slip that is to be found.
Reveal revealOf(const Bench& bench);
bool isLocked(const Bench& bench);
/// Whether one may ask for a level: a locked bench shows no more than it says.
bool mayReveal(const Bench& bench, Reveal wanted);
/// Whether the question "why?" is answered at a level.
bool answersWhy(Reveal level);

/// The level in words: "place and proof".
std::string revealWords(Reveal level);

/// What a level leaves of findings. At Reveal::Place each is a place to look at: one hole or part and a sentence, without rule and
/// figures, the same place once.
std::vector<Finding> revealed(const Bench& bench, const std::vector<Finding>& findings, Reveal level);
/// Whether a finding is no more than a place to look at.
inline bool isPlaceOnly(const Finding& finding) { return finding.rule.empty(); }

}  // namespace tiepoint
