#pragma once
// What counts of one bench when behaviour is compared, and what it does in positions asked for. Belongs to one thread.

#include "core/behaviour/position_plan.h"
#include "core/behaviour/position_solver.h"
#include "core/compare/account.h"

#include <map>

namespace tiepoint {

class Doing {
public:
    explicit Doing(const ComparedSide& side);

    const ComparedSide& side() const { return side_; }
    /// Switches and knobs of parts that current can pass: a loose button does nothing.
    const std::vector<Throw>& controls() const { return controls_; }
    /// Parts that emit light and that current can pass.
    const std::vector<int>& lights() const { return lights_; }
    /// Whether every combination of controls that feel each other is among the positions.
    bool complete() const { return plan_.complete(); }
    /// The present position first.
    std::vector<Digits> positions() const;
    const Snapshot& at(const Digits& digits);

private:
    Digits present() const;

    const ComparedSide& side_;
    std::vector<Throw> controls_;
    std::vector<int> lights_;
    PositionSolver solver_;
    PositionPlan plan_;
    std::map<Digits, std::shared_ptr<const Snapshot>> rows_;
};

}  // namespace tiepoint
