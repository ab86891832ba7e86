#pragma once
// Solves one bench in many positions of its switches and knobs. Positions that differ only in what is held share one prepared circuit; those
// that differ in a state share the layout, since no state moves metal. Belongs to one thread; the snapshots are immutable.

#include "core/snapshot/settled_snapshot.h"
#include "core/snapshot/throws.h"

#include <map>
#include <memory>
#include <vector>

namespace tiepoint {

class PositionSolver {
public:
    /// `layout` is that of the bench in any position; all of its switches are thrown.
    explicit PositionSolver(std::shared_ptr<const Layout> layout);
    /// Only these are thrown.
    PositionSolver(std::shared_ptr<const Layout> layout, std::vector<Throw> throws);

    const std::vector<Throw>& throws() const { return throws_; }
    /// The bench with its throws so; revision and input sequence are not set.
    std::shared_ptr<const Snapshot> solve(const Digits& digits) { return solve(digits, {}); }
    /// The same, where its parts remember something.
    std::shared_ptr<const Snapshot> solve(const Digits& digits, const State& state);

private:
    /// A circuit ready to be solved for what is held.
    struct Desk {
        explicit Desk(std::shared_ptr<const Layout> made) : layout(std::move(made)), solver(layout) {}
        std::shared_ptr<const Layout> layout;
        SettledSolver solver;
    };

    std::shared_ptr<const Layout> layoutFor(const Digits& digits) const;

    std::shared_ptr<const Layout> layout_;
    std::vector<Throw> throws_;
    std::map<Digits, std::unique_ptr<Desk>> desks_;  ///< by the states among the digits
};

}  // namespace tiepoint
