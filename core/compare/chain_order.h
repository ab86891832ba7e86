#pragma once
// Circuits whose series chains stand in an order of their own, so that an order that a hand chose doesn't count where differences are looked for.

#include "core/netlist/netlist.h"

namespace tiepoint {

/// Whether chains of the two circuits hold the same kinds of parts in other orders, so that sorting may bring them nearer. Pure.
bool chainsDifferInOrder(const Netlist& one, const Netlist& other);

/// The circuit with the parts of each series chain sorted by what they are: same parts, same ends, each the same way round along the chain.
/// Who is joined to whom inside a chain is no longer as it was. Pure.
Netlist withChainsSorted(const Netlist& circuit);

}  // namespace tiepoint
