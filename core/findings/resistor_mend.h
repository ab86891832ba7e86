#pragma once
// Mends by resistance: a preferred value for a resistor that is there, or a resistor in place of a jumper. Pure.

#include "core/findings/examination.h"
#include "core/findings/finding.h"

#include <vector>

namespace tiepoint {

/// Resistances for the resistors in a part's chain that bring its current down (or up) to about a target: the value
/// reckoned from the supply and the lights, and the next ones of the drawer on the safe side.
std::vector<Mend> resistanceMends(const Snapshot& snapshot, int part, double targetAmpere,
                                  const ResistorDrawer& drawer);
/// A resistor in place of a jumper that carries the part's whole current; for chains that have none.
std::vector<Mend> insertionMends(const Snapshot& snapshot, int part, double targetAmpere, const ResistorDrawer& drawer);

}  // namespace tiepoint
