#pragma once
// The potential walk: once round the loop that the current of a part takes, from a supply's minus up through the supply, along the metal
// from hole to hole, down through one part after the other, and back to where it began. Flat in the metal, a step at each part; the steps
// add up to nothing, which is Kirchhoff's voltage law. Where the current divides the walk follows the largest share and notes it.
// A pure function of a snapshot; safe from any thread.

#include "core/snapshot/snapshot.h"

#include <vector>

namespace tiepoint {

/// A place on the walk.
struct WalkPoint {
    int joint = 0;    ///< of the layout
    double volt = 0;  ///< above the reference
    Figure shown;     ///< the same as it is shown
};

/// From a point to the next: through a part, or along a piece of metal.
struct WalkStep {
    int part = -1;      ///< -1: along metal
    int piece = -1;     ///< -1: through a part
    double ampere = 0;  ///< through the part on this way, or in the piece; positive along the walk
    double volt = 0;    ///< by how much the potential rises
    Figure shown;       ///< the same as it is shown; unknown along metal, which is flat
};

/// Where only a share of the current goes on with the walk.
struct WalkDivision {
    int point = 0;      ///< index into the points; inside a part: where it is entered
    int part = -1;      ///< inside this part; -1: in the metal
    double ampere = 0;  ///< goes on with the walk
    double wholeAmpere = 0;
    bool largest = true;  ///< no other way takes more
    Figure shown, wholeShown;
    double share() const { return ampere / wholeAmpere; }
};

enum class WalkEnd {
    Closed,  ///< there and back
    Off,     ///< no supply is switched on
    NoSolution,
    NoCurrent,  ///< the part carries none
    Floating,   ///< somewhere no potential can be told
};

struct PotentialWalk {
    WalkEnd end = WalkEnd::NoSolution;
    int supply = -1;                      ///< the part at which it begins
    std::vector<WalkPoint> points;        ///< the last is the first again; empty unless closed
    std::vector<WalkStep> steps;          ///< one fewer than points
    std::vector<WalkDivision> divisions;  ///< in the order of the walk
};

/// The walk round the loop through a part, which may be a supply.
PotentialWalk walkPotential(const Snapshot& snapshot, int part);

/// The walk that says most where no part is named: round the loop of the supply that gives most. -1 on a bench without supplies.
int partToWalk(const Snapshot& snapshot);

}  // namespace tiepoint
