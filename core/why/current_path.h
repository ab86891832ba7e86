#pragma once
// The way of the current through a part: from a supply through one part after the other and back, following the most current where it
// divides (solved_loop.h), with the figures that are told of it. Pure; safe from any thread.

#include "core/snapshot/snapshot.h"

#include <vector>

namespace tiepoint {

/// A part on the way and what lies across it.
struct PathLink {
    int part = 0;
    double ampere = 0;  ///< through it on this way
    double volt = 0;    ///< by how much the potential falls; NaN where floating
    Figure fall;        ///< the same as it is shown
    Figure current;     ///< all that runs through the part, as it is shown
};

struct CurrentPath {
    std::vector<PathLink> sources;  ///< supplies that lift the potential, in the direction of the current
    std::vector<PathLink> links;    ///< everything else, likewise; the falls add up to what the sources lift
    double sourceVolt() const;      ///< what the sources lift together
};

/// The way through a part, which may be a supply; empty where it carries no current or nothing drives it.
CurrentPath pathThrough(const Snapshot& snapshot, int part);

/// By net: whether conductors, closed contacts and junctions lead from it to plus, or to minus, of a supply, without going through
/// one part.
struct SupplyReach {
    bool plus = false, minus = false;
};
std::vector<SupplyReach> reachWithout(const Snapshot& snapshot, int part);

}  // namespace tiepoint
