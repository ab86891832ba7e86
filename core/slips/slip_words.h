#pragma once
// What the kinds have in common when slips are told: tips, holes and how they lie to each other. Pure.

#include "core/slips/slip.h"

#include <string>

namespace tiepoint {

/// "D1's anode", "R1's leg 1", "PS1's + lead".
std::string tipInWords(const Bench& bench, const PlacedLead& lead);
/// The same beside the part's name: "anode", "leg 1", "+ lead".
std::string ownTipInWords(const Bench& bench, const PlacedLead& lead);
/// "an end of W1".
std::string tipInWords(const PlacedEnd& end);
/// "c14", "socket GND1 of PS1".
std::string placeName(const Bench& bench, const JumperEnd& end);

/// One tip that a slip has put in a wrong place.
struct Misplaced {
    std::string tip;  ///< in words
    JumperEnd wrong, right;
};
/// All tips that a slip has put elsewhere, in their order. Those that hang are left out.
std::vector<Misplaced> misplacedBy(const Bench& bench, const Slip& slip);

/// "D1's anode is in c15, one hole to the right of c14."
std::string misplacedWords(const Bench& bench, const Slip& slip);
/// "put D1's anode into c14", of several "put ... into ... and ... into ..."; with more than three the part's first hole only.
std::string putWords(const Bench& bench, const Slip& slip);

/// The part that a slip's first figure or lead is of.
const Part& partOf(const Bench& bench, const Slip& slip);
/// The setting in words, wrong and right: "3.3 kΩ" and "330 Ω".
struct WrongFigure {
    std::string part, label, wrong, right;
    bool counts = false;  ///< a number of things, without a unit
};
WrongFigure figureOf(const Bench& bench, const Slip& slip);
/// Where a jumper runs: "from top+7 to a8".
std::string runOf(const Bench& bench, const Jumper& jumper);

}  // namespace tiepoint
