#pragma once
// Whether a lesson says what is so: each claim of each step is solved, and must fail one step earlier or in its opposite, so that no claim
// is thin: one that would hold whatever was done. Pure; safe from any thread.

#include "core/course/lesson.h"

#include <string>
#include <vector>

namespace tiepoint {

struct CheckedClaim {
    Predicate claim;
    ClaimVerdict here;  ///< in its step
    bool thin = false;  ///< holds one step earlier and in every opposite too
    bool good() const { return here.holds && !thin; }
};

struct CheckedStep {
    std::vector<CheckedClaim> claims;
    bool good() const;
};

struct CheckedLesson {
    std::vector<CheckedStep> steps;
    bool good() const;
};

/// The opposite of a step is what it names itself; and where hands hold something, hands off.
CheckedLesson checkLesson(const Lesson& lesson);

/// Why a claim is no good, in one sentence: "D1 is lit doesn't hold: D1 is dark: 0 A"; empty where it is.
std::string complaintAbout(const CheckedClaim& claim);

}  // namespace tiepoint
