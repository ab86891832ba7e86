#pragma once
// Which resistor a light needs where it stands: the supplies of its own loop drive it, other lights of the loop take their voltage, other
// resistances hold back too. Read off the loop as it is solved; a dark light is looked at with its supplies on and its switches thrown so
// that current runs through it.
// Pure; safe from any thread. Solves the bench up to a hundred times: some milliseconds.

#include "core/sizing/series_resistor.h"
#include "core/snapshot/snapshot.h"

namespace tiepoint {

/// The question about a part, a light or the resistor before one; -1 for none. `usual` gives what the bench doesn't say: the wanted current
/// and the drawer.
ResistorQuestion questionAbout(const Snapshot& snapshot, int part, const ResistorQuestion& usual);

}  // namespace tiepoint
