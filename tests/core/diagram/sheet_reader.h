#pragma once
// Reads nets back from what is drawn: from lines, their ends and dots alone, as an eye does.

#include "core/diagram/diagram.h"

#include <string>
#include <utility>
#include <vector>

namespace tiepoint::test {

/// By part and lead (the first of joined ones), in the order of the sheet: the net that the lines make of it.
struct ReadSheet {
    std::vector<std::pair<int, int>> leads;
    std::vector<int> net;
};
ReadSheet readSheet(const Diagram& diagram);

/// Why the lines don't say what the circuit is; empty if they do.
std::string misread(const Netlist& netlist, const Diagram& diagram);
/// What lies over something else; empty if nothing does.
std::string overlap(const Diagram& diagram);
/// Crossings of lines that don't join, counted anew.
int countedCrossings(const Diagram& diagram);

}  // namespace tiepoint::test
