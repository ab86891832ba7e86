#pragma once
// Which terminals of a part may be exchanged for each other without changing what the part does.

#include "core/netlist/likeness.h"
#include "core/netlist/netlist.h"

#include <vector>

namespace tiepoint {

/// Parts of more terminals are taken as they are: nobody turns a chip round for its symmetry.
inline constexpr int kMostExchangedTerminals = 4;

/// By terminal of the part: the terminal that takes its place. Each permutation that the model allows; the first leaves all where they are.
std::vector<std::vector<int>> exchangesOf(const Part& part, const Likeness& likeness);

}  // namespace tiepoint
