#pragma once
// What can be wrong with a thing, as a learner names it: a few words that cover all kinds of slips that can be pinned on one thing. Constant
// data; pure functions.

#include "core/slips/slip.h"

#include <span>
#include <string>
#include <string_view>

namespace tiepoint {

/// One way of being wrong. Instances live as long as the program; compare by address.
struct Fault {
    std::string_view name;    ///< stable, as in JSON: "broken-inside"
    std::string_view label;   ///< on a key: "broken inside"
    std::string_view clause;  ///< after the thing's id: "is broken inside."
};

/// All of them, in the order of the keys.
std::span<const Fault> faults();
const Fault* findFault(std::string_view name);
/// What a slip of that kind is called; null where no single thing is to blame (a jumper that is missing, rails that aren't tied), or where
/// looking at a setting is all there is to it.
const Fault* faultOf(const SlipKind& kind);

/// Whether the eye sees nothing of it.
bool isUnseen(const Fault& fault);

/// "W2 is broken inside."
std::string causeInWords(std::string_view thing, const Fault& fault);

/// The parts and jumpers of a bench of which a slip may be said to be the fault: those that it touches and that are there before and after.
std::vector<std::string> thingsToBlame(const Bench& bench, const Slip& slip);

}  // namespace tiepoint
