#pragma once
// Why a part does what it does: "why is D1 dark, so dim, R1 so hot?" The answer is a chain of causes read off the solution and the
// findings, the first missing link where current can't get through, and what would close it. Whatever is offered was solved before:
// the bench with that edit and those presses, and the part does what was asked for.
// Pure; safe from any thread. May take some ten milliseconds: keep it off the thread of a window.

#include "core/findings/finding.h"
#include "core/snapshot/snapshot.h"

#include <optional>
#include <set>
#include <string>
#include <utility>
#include <vector>

namespace tiepoint {

struct Cause {
    std::string text;  ///< one plain sentence
    std::vector<std::string> parts;
    std::vector<Hole> holes;
    bool missingLink = false;  ///< the first place where current can't go on
};

struct Remedy {
    std::string text;     ///< "Press S1"; "Put the anode of D1 into h16, then press S1"
    std::string outcome;  ///< what the solve showed: "9.37 mA flows through D1 and it is lit at 74 %"
    Edit edit;            ///< without operations where pressing is enough
    std::set<std::string, std::less<>> held;  ///< everything that is held in the end
};

struct Answer {
    std::string part;
    std::string question;  ///< "Why is D1 dark?"
    std::vector<Cause> chain;
    std::vector<Remedy> remedies;  ///< the easiest first; empty where nothing is wrong, or nothing tried helped
    std::vector<std::pair<std::string, double>> figures;  ///< the proof, SI, by name
};

/// The answer about a part (by index) of a solved bench. Remedies take resistors from the drawer only.
Answer explain(const Snapshot& snapshot, int part, const ResistorDrawer& drawer = {});

}  // namespace tiepoint
