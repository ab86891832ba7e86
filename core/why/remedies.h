#pragma once
// What makes a part work: the fewest switches to throw, and the mends of findings, each tried by solving. Pure; any thread.

#include "core/findings/finding.h"
#include "core/snapshot/position_solver.h"

#include <functional>
#include <memory>
#include <optional>
#include <vector>

namespace tiepoint {

/// Whether a solved bench is as wished.
using Wish = std::function<bool(const Snapshot&)>;

struct Reached {
    Digits digits;
    std::shared_ptr<const Snapshot> snapshot;
};

/// Positions as wished that are the fewest throws away, at most a handful; none where the search finds none.
std::vector<Reached> nearestPositions(PositionSolver& solver, const Digits& now, const Wish& wish);

struct Mended {
    std::vector<Finding> steps;  ///< those whose mends are needed, in order
    Edit edit;                   ///< all of them
    std::shared_ptr<const Bench> bench;
    Reached reached;  ///< on the mended bench, with the fewest throws that are still needed
};

/// Mends one finding after the other until the bench is as wished, then leaves out what wasn't needed.
std::optional<Mended> mendUntil(const Snapshot& snapshot, const Wish& wish, const ResistorDrawer& drawer);

}  // namespace tiepoint
