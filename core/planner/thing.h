#pragma once
// What the planner moves: a part with its legs, or one lead of a box on the table, and where it may lie.

#include "core/bench/resolve.h"
#include "core/planner/ground.h"

#include <optional>
#include <random>
#include <vector>

namespace tiepoint {

/// Something that lies on the board.
struct PlanThing {
    int part = 0;
    const Package* package = nullptr;  ///< null: the lead of a box, which takes a hole and no room
    std::vector<int> leads;            ///< of the part
    std::vector<int> nets;             ///< by lead in `leads`; every one has a net, its own where it joins nothing
    std::vector<int> metal;            ///< by lead in `leads`: the same number where they are joined inside the part
    bool fixed = false;
};

/// One way in which it may lie.
struct PlanPlace {
    std::vector<int> holes;    ///< by lead of the thing
    std::vector<int> covered;  ///< other holes that nothing can go into
    Outline body, legs;
    bool hasBody = false, hasLegs = false;
};

/// Completes a place from the holes of the leads; nothing if the package doesn't fit so.
std::optional<PlanPlace> lieIn(const PlanGround& ground, const PlanThing& thing, std::vector<int> holes);

using PlanRandom = std::mt19937;
/// From 0 up to, not including, the limit; the same everywhere.
inline int below(PlanRandom& random, int limit) {
    return static_cast<int>(static_cast<std::uint64_t>(random()) * static_cast<std::uint64_t>(limit) >> 32);
}

/// The thing with one lead in a hole, the rest by chance, or of two legs the other in `second`.
std::optional<PlanPlace> lieAt(const PlanGround& ground, const PlanThing& thing, int lead, int hole, PlanRandom& random,
                               int second = -1);

}  // namespace tiepoint
