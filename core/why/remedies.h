#pragma once
// What makes a part work: the fewest switches to throw, and the mends of findings, each tried by solving. Pure; any thread.

#include "core/behaviour/position_solver.h"
#include "core/findings/finding.h"

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

/// What a search of positions found, and how far it looked.
struct Nearest {
    std::vector<Reached> found;   ///< the fewest throws away, at most a handful
    bool complete = true;         ///< false: there are positions that weren't tried
    std::size_t throwsTried = 0;  ///< every position up to so many throws away was
};
inline constexpr int kUsualSolves = 1200;
Nearest nearestPositions(PositionSolver& solver, const Digits& now, const Wish& wish, int mostSolves = kUsualSolves);

struct Mended {
    std::vector<Finding> steps;  ///< those whose mends are needed, in order
    Edit edit;                   ///< all of them
    std::shared_ptr<const Bench> bench;
    Reached reached;  ///< on the mended bench, with the fewest throws that are still needed
};

/// Mends one finding after the other until the bench is as wished, then leaves out what wasn't needed. Nothing where the search finds no way.
std::optional<Mended> mendUntil(const Snapshot& snapshot, const Wish& wish, const ResistorDrawer& drawer);

}  // namespace tiepoint
