#pragma once
// Slips of settings: a value or a state that isn't what it should be. Pure.

#include "core/slips/search.h"

namespace tiepoint {

/// Offers another value (or state) of a part, where its range allows it.
void offerFigure(SlipSearch& search, int part, bool state, int index, double to, int away, double share = 1);
/// "R1 is 3.3 kΩ and not 330 Ω."
std::string figureWords(const Bench& bench, const Slip& slip);
/// "The voltage of PS1 is set to 12 V in place of 9 V.", "CE1 has 2 cells in place of 3."
std::string settingWords(const Bench& bench, const Slip& slip);
/// "take 330 Ω for R1"
std::string takeWords(const Bench& bench, const Slip& slip);
/// "set the voltage of PS1 to 5 V", "put 3 cells into CE1"
std::string setWords(const Bench& bench, const Slip& slip);

}  // namespace tiepoint
