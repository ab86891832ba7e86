#pragma once
// The slip that a bench hides (core/bench/seal.h): written onto it when a hunt is made, read again to judge, to hint and to mend. Pure; safe
// from any thread.

#include "core/hunt/fault.h"

#include <optional>
#include <string>
#include <vector>

namespace tiepoint {

struct HiddenSlip {
    std::string seen;                 ///< "D1 stays dark while A is pressed."
    std::string kind;                 ///< of the slip, as in core/slips: "broken-jumper"
    const Fault* fault = nullptr;     ///< what is wrong with the things
    std::vector<std::string> things;  ///< to blame; any of them is a right answer
    std::string told;                 ///< "W2 is broken inside: it joins nothing."
    std::string mendWords;            ///< "Take another wire for W2."
    bool hidden = false;              ///< nothing of it is to be seen
    int readings = 0;                 ///< the difficulty, see plants.h
    Edit mend, wrong;                 ///< what undoes it, and what made it: whole parts and jumpers
};

/// Nothing where the bench hides none.
std::optional<HiddenSlip> hiddenSlipOf(const Bench& bench);
/// Seals the slip on the bench that has it.
void hideSlip(Bench& bench, const HiddenSlip& slip);

/// Whether the bench still has it. A thing that was pulled out still counts.
bool isStillThere(const Bench& bench, const HiddenSlip& slip);
/// Whether the bench hides a slip that is still on it.
bool isHunting(const Bench& bench);

/// The bench without the slip; nothing where hands have changed too much to say.
std::optional<Bench> mended(const Bench& bench, const HiddenSlip& slip);

}  // namespace tiepoint
