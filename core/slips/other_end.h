#pragma once
// Tips at the wrong end of a part: a jumper or a leg that should meet one of its leads and meets another. Pure.

#include "core/slips/search.h"

namespace tiepoint {

/// Offers each tip of another thing in the strip of one lead, put into the strip of the other lead; and the other way round.
void offerOtherEnd(SlipSearch& search, int part, int lead, int other, int away);
/// "An end of W1 is at the wrong end of R1: it is in d8 and not in d14."
std::string wrongEndWords(const Bench& bench, const Slip& slip);

}  // namespace tiepoint
