#pragma once
// A plan: what follows from the structure of a circuit in one state of its contacts and supplies, before any number is solved.
//
// 1. Nodes that conductors tie together form a component. Each has one node at 0 V: the reference, or else a node of its own.
//    (A leak of 1e-12 S from that node would carry no current, since nothing returns it; taking its limit spares the matrix a
//    pivot of 1e-12.) A component that nothing feeds (a supply, or a law that may) is dead: all zero.
// 2. Ideal supplies with one known end make the other known; known nodes cut what is left into islands.
// 3. A supply at its limit is a current source: no tie, no known node.
// Thread rule: built once, then its islands are run by one thread.

#include "core/solve/island.h"

#include <span>
#include <vector>

namespace tiepoint {

/// A node whose voltage is known before solving, parents before children.
struct KnownNode {
    int node;
    int parent = -1;  ///< known node at the supply's other end; -1: 0 V
    int supply = -1;  ///< the ideal supply between them
};

struct CircuitPlan {
    std::vector<KnownNode> known;
    std::vector<Island> islands;
    std::vector<int> idle;  ///< paths of elements that carry nothing: absent, shorted by metal or in a dead component
    std::vector<char> floating;  ///< by node: nothing ties it to the reference
};

/// The same before islands are built from their members. In time charges tie nodes together, what stores something may feed, and a
/// supply with a limit keeps its island together whatever its role.
struct PlanOutline {
    std::vector<KnownNode> known;
    std::vector<IslandMembers> members;  ///< by island
    std::vector<int> localOfNode;        ///< by node: the place in its island's members, or -1
    std::vector<int> idle;
    std::vector<char> floating;
};
PlanOutline outlinePlan(const Circuit& circuit, std::span<const char> present, std::span<const signed char> limited,
                        int reference, bool inTime = false);

/// present: by element, whether it is there at all (closed contacts, supplies that are on). limited: by supply.
CircuitPlan makePlan(const Circuit& circuit, std::span<const char> present, std::span<const signed char> limited,
                     int reference);

/// Indices of ideal supplies that stand in one loop of ideal supplies, the first such loop; empty if there is none.
std::vector<int> idealLoop(const Circuit& circuit, std::span<const char> present);

}  // namespace tiepoint
