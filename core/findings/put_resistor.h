#pragma once
// Where a resistor that was chosen goes: into one that is there, or in place of a jumper. Pure; safe from any thread.

#include "core/findings/finding.h"

#include <optional>

namespace tiepoint {

/// The resistor in series with a part as its neighbours tell, whatever the switches: from each lead on, through nets that join two parts
/// only and through switches. Index of the part, or -1.
int resistorInSeries(const Layout& layout, int part);
/// The part itself if it is a resistor, else the one in series with it, or -1.
int resistorOf(const Layout& layout, int part);

/// The edit that puts a resistance in: into the part itself if it is a resistor, else into the one in series with it, else a new one in place of a
/// jumper that carries the part's current. Nothing where there is no such place, or where that resistor has this value
/// already.
std::optional<Mend> putResistor(const Snapshot& snapshot, int part, double ohm);

}  // namespace tiepoint
