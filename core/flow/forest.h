#pragma once
// A spanning forest over the joints of a layout: one tree for each net, all grown at once, breadth first.
//
// Positions number the joints in that order: first all roots, then level by level, so that parents come before children and
// neighbours in a pass rarely wait for each other. Immutable once grown.

#include "core/nets/layout.h"

#include <vector>

namespace tiepoint {

struct Forest {
    /// The way from a joint to its parent.
    struct Step {
        int parent;   ///< position; -1 for a root
        int piece;    ///< -1 for a root
        double sign;  ///< +1 where the piece runs from the parent to the child, else -1
    };

    std::vector<int> positionOf;  ///< by joint
    std::vector<int> jointAt;     ///< by position
    std::vector<Step> steps;      ///< by position
    int roots = 0;                ///< positions below are roots

    explicit Forest(const Layout& layout);
};

}  // namespace tiepoint
