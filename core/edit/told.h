#pragma once
// Where things lie, in words: what who hears the bench is told after a change. Plain English, one clause each; for the whole see core/bench/describe.h.

#include "core/bench/bench.h"

#include <string>
#include <vector>

namespace tiepoint {

/// "R1: 1 in c8, 2 in c14"; "W1: from top+7 to a8"; "N1: at c20"; empty for a thing that the bench doesn't have.
std::string placeInWords(const Bench& bench, const std::string& id);

/// "R1 turned: 1 in c8, 2 in g8"; of several "3 things turned", with the places of the first few.
std::string toldOf(const Bench& bench, const std::vector<std::string>& ids, const std::string& what);

}  // namespace tiepoint
