#pragma once
// How the leads of supplies and instruments lie: from the box on the table over the boards into their holes, round what stands tall there.
// Derived from where things are, never saved. Pure functions.

#include "core/bench/bodies.h"

namespace tiepoint {

/// Lays the leads of a part as they lie where nothing is in the way. Parts that don't stand on the table have none.
void layCables(const Table& table, const Part& part, PartPlace& place);

/// Lays all leads: each takes the first of a few ways that runs through nothing tall, or else the usual one.
void routeCables(const Bench& bench, const InOrder<Body>& bodies, Table& table);

/// Whether a lead of a part that stands on the table gets from its exit to a hole.
bool cableGetsTo(const Package& package, const InOrder<Body>& bodies, Point exit, Point tip, double middleY);
/// The bodies that its usual way runs through.
std::vector<Body> inWayOfCable(const Package& package, const InOrder<Body>& bodies, Point exit, Point tip,
                               double middleY);

}  // namespace tiepoint
