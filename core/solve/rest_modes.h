#pragma once
// Whether a state of rest is one that a circuit could stay in.
//
// A search for a state of rest may end on a saddle: currents that balance, but that the smallest disturbance leaves for good, as between the
// two states of a bistable pair. To see it, every node where a law may feed back gets a small capacitance, C dv/dt = -J v; the other
// unknowns follow at once and are eliminated (Schur's complement). A real mode that grows says that the state isn't one of rest. Modes
// that oscillate are left out: whether they grow depends on the capacitances, which a circuit at rest doesn't know. Whether
// the number of growing real modes is odd doesn't depend on the capacitances either (it is the sign of the determinant); that it is
// even and not zero may. So there must be one with equal capacitances and with such as are in proportion to the conductance at each
// node, which makes no node slower than another.
// Source of the criterion: L. O. Chua, C. A. Desoer, E. S. Kuh, Linear and Nonlinear Circuits (1987), ch. 7 (from memory).
// Pure functions; safe from any thread.

#include <span>
#include <vector>

namespace tiepoint {

/// An entry of the linearised equations: what leaves each node by the unknowns.
struct ModeEntry {
    int row, column;
    double value;
};

/// How much each of the nodes moves in the mode that grows fastest without oscillating (the largest: 1); empty if none grows.
/// equations, unknowns: of each node that may feed back. Empty too where the others can't be eliminated (an ideal source between two of them).
std::vector<double> growingMode(int size, std::span<const ModeEntry> entries, std::span<const int> equations,
                                std::span<const int> unknowns);

}  // namespace tiepoint
