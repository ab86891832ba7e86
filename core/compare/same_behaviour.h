#pragma once
// Whether two benches do the same: in every position of switches and knobs alike lights, and alike readings where the target has some pinned.
// Which switch of the one is which of the other follows from the circuits where they are alike, and else is looked for among few ways.
// Pure; stoppable.

#include "core/compare/account.h"

namespace tiepoint {

/// Which parts of the bench do the work of which of the target, and which nets are which, as far as it is known; by part and net of the bench.
struct KnownPartners {
    std::vector<int> partOf, netOf;
    bool equal = false;  ///< the circuits are one; else these are the best guess
};

struct BehaviourCompared {
    bool same = false;
    bool allPositions = true;
    std::vector<BenchDifference> seen;
};

BehaviourCompared compareBehaviour(const ComparedSide& mine, const ComparedSide& target, const KnownPartners& partners,
                                   const ComparisonBounds& bounds);

}  // namespace tiepoint
