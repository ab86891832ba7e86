#pragma once
// How the leads of supplies and instruments lie: from the box on the table over the boards into their holes, round what stands tall there,
// and never over another box, nor over the display of their own. Derived from where things are, never saved. Pure functions.

#include "core/bench/bodies.h"

namespace tiepoint {

/// Lays the leads of a part as they lie where nothing is in the way. Parts that don't stand on the table have none.
void layCables(const Table& table, const Part& part, PartPlace& place);

/// Lays all leads: each takes the first of a few ways that runs through nothing tall, or else the usual one.
void routeCables(const Bench& bench, const InOrder<Body>& bodies, Table& table);

/// Towards which side a box's leads leave it: 1 to the right, -1 to the left.
double outwardOf(const Package& package, const PartPlace& place);
/// Where such a box stands.
Rect frameOf(const PartPlace& box);

/// From where to where a lead runs.
struct CableRun {
    Point exit, tip;
    double outward = 1;
    double middleY = 0;    ///< of the boards
    bool isProbe = false;  ///< of an instrument: it leans at its hole
};
CableRun cableRun(const Table& table, const Part& part, const PartPlace& place, std::size_t lead);

/// Whether a lead gets from its exit to a hole through what stands tall on the boards.
bool cableGetsTo(const CableRun& run, const InOrder<Body>& bodies);
/// The bodies that its usual way runs through.
std::vector<Body> inWayOfCable(const CableRun& run, const InOrder<Body>& bodies);

}  // namespace tiepoint
