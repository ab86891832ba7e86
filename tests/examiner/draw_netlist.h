#pragma once
// Circuits by chance, as people build them on such boards: channels from a supply's plus to its minus, each a row of switches, lights and
// what protects or measures them, in any order. Values come from hand calculation (Ohm's law with the LED's stated forward voltage), so
// most circuits are sound; sound_bench.h tries them all and throws away the others.

#include "examiner/chance.h"
#include "examiner/netlist.h"

namespace tiepoint::examiner {

/// A circuit of about so many parts, supplies counted.
Netlist drawNetlist(Chance& chance, int parts);

}  // namespace tiepoint::examiner
