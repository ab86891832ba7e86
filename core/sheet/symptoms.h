#pragma once
// What each single slip on a bench would look like: every slip of the list (core/slips) made, the bench solved in the positions of its switches, and
// said what the eye sees of it, where to look first, and which reading proves it. For the teacher who walks from board to board. Pure; stoppable.

#include "core/slips/slip.h"

#include <functional>
#include <memory>
#include <string>
#include <vector>

namespace tiepoint {

struct SlipSeen {
    Slip slip;
    std::string text;  ///< "D1 is the wrong way round: its anode is in h20."
    std::string seen;  ///< "D1 never lights."
    std::string look;  ///< "Look whether ..."
    std::string
        proof;  ///< "S1 pressed, volts at c9, leg 2 of R1: 5.00 V, where 2.10 V should be."; empty where no reading tells
    std::string mend;  ///< "Turn D1 round."
};

/// One thing that the eye sees, and the slips that look so, the likeliest first.
struct EyeSymptom {
    std::string seen;
    std::vector<SlipSeen> slips;
};

/// Every slip that can be made on a bench, the likeliest first. A slip that changes nothing that is seen is among them.
/// `possible` says which can happen; empty: all.
std::vector<SlipSeen> slipsAsSeen(const std::shared_ptr<const Bench>& sound,
                                  const std::function<bool(const Slip&)>& possible = {});
/// The same by what is seen, the likeliest first; what nobody sees stands last.
std::vector<EyeSymptom> bySymptom(const std::vector<SlipSeen>& slips);

std::string slipsAsCsv(const std::vector<SlipSeen>& slips);  ///< kind,slip,seen,look,proof,mend,weight

}  // namespace tiepoint
