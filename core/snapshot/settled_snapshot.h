#pragma once
// Benches solved for whoever asks what they do, not what they do at an instant: the one way to it, whether a bench rests or moves. A bench
// that time doesn't change is solved at rest, at the cost of that. Any other is followed until it is steady, repeats, or has been followed
// long enough (core/time/settle.h): its snapshot shows what lasts, and Snapshot::settled says how it came about.

#include "core/snapshot/snapshot.h"
#include "core/snapshot/snapshot_maker.h"
#include "core/time/settled.h"

#include <memory>
#include <vector>

namespace tiepoint {

class BenchRun;

/// Solves one layout for changing inputs. Belongs to one thread.
class SettledSolver {
public:
    explicit SettledSolver(std::shared_ptr<const Layout> layout);
    ~SettledSolver();

    /// The bench under these inputs, which say what is held at one instant; its parts begin with what they remember in `state`.
    /// Revision and inputs of the snapshot are the caller's.
    std::shared_ptr<Snapshot> solve(const Inputs& inputs, const State& state = {});

private:
    std::shared_ptr<const Layout> layout_;
    OperatingPoint point_;           ///< of one that rests
    std::unique_ptr<BenchRun> run_;  ///< of one that moves; else null
    SnapshotMaker maker_;
};

/// The snapshot itself if it shows what lasts, as one of a bench at rest does; of an instant of a moving bench, what becomes of that bench
/// under its inputs from power-up.
std::shared_ptr<const Snapshot> settledOf(std::shared_ptr<const Snapshot> snapshot);

/// Whether a bench was followed and still changed at the end: nobody may say "never" of it.
bool isUndecided(const Snapshot& snapshot);
bool isRepeating(const Snapshot& snapshot);

/// An instant that passes, of a bench that was followed.
struct PassingInstant {
    double second = 0;     ///< from the beginning
    bool returns = false;  ///< in each period
    std::shared_ptr<const Snapshot> snapshot;
};
/// The few that together show each figure at its most; none of a bench at rest.
std::vector<PassingInstant> passingInstants(const Snapshot& snapshot);

}  // namespace tiepoint
