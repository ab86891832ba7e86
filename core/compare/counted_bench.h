#pragma once
// What of a bench counts when it is compared, and a bench for a circuit that has no places. Pure.

#include "core/bench/bench.h"
#include "core/netlist/netlist.h"

namespace tiepoint {

/// The bench without instruments and the jumpers that lead to them: a meter that was left on the table is no part of the circuit.
Bench withoutInstruments(const Bench& bench);

/// A bench that is the circuit, for solving only: each net has strips of its own on boards of no use for hands, and legs reach anywhere.
Bench benchForSolving(const Netlist& circuit);

}  // namespace tiepoint
