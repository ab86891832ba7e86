#pragma once
// The way of the current through a part: from a supply through one part after the other and back, following the most current where it
// divides. Pure; safe from any thread.

#include "core/snapshot/snapshot.h"

#include <vector>

namespace tiepoint {

/// A part on the way and what lies across it.
struct PathLink {
    int part = 0;
    double ampere = 0;                ///< through it on this way
    double fromVolt = 0, toVolt = 0;  ///< above the reference; NaN where floating
    double volt() const { return fromVolt - toVolt; }
};

struct CurrentPath {
    int supply = -1;              ///< part, or -1 where the way ends without one
    double supplyVolt = 0;        ///< between the ends of the way at the supply
    std::vector<PathLink> links;  ///< in the direction of the current, without the supply
};

/// The way through a part, which may be a supply; no links where it carries no current.
CurrentPath pathThrough(const Snapshot& snapshot, int part);

/// By net: whether conductors, closed contacts and junctions lead from it to plus, or to minus, of a supply, without going through
/// one part.
struct SupplyReach {
    bool plus = false, minus = false;
};
std::vector<SupplyReach> reachWithout(const Snapshot& snapshot, int part);

}  // namespace tiepoint
