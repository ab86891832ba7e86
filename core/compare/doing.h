#pragma once
// What counts of one bench when behaviour is compared, and what it does in positions asked for. Belongs to one thread.

#include "core/behaviour/position_plan.h"
#include "core/behaviour/position_solver.h"
#include "core/compare/account.h"

#include <map>

namespace tiepoint {

class Doing {
public:
    /// Of the parts that current can pass, or of all.
    Doing(const ComparedSide& side, bool onlyUsed);

    const ComparedSide& side() const { return side_; }
    /// Switches and knobs.
    const std::vector<Throw>& controls() const { return controls_; }
    /// Parts that emit light.
    const std::vector<int>& lights() const { return lights_; }
    /// Whether every combination of controls that feel each other is among the positions.
    bool complete() const { return plan_.complete(); }
    /// The present position first.
    std::vector<Digits> positions() const;
    const Snapshot& at(const Digits& digits) { return *rowAt(digits).snapshot; }

    /// How one light looks.
    struct Look {
        bool lit = false;
        double brightness = 0;
    };
    /// By light, in a position.
    const std::vector<Look>& looksAt(const Digits& digits) { return rowAt(digits).looks; }

private:
    struct Row {
        std::shared_ptr<const Snapshot> snapshot;
        std::vector<Look> looks;
    };
    const Row& rowAt(const Digits& digits);
    Digits present() const;

    const ComparedSide& side_;
    std::vector<Throw> controls_;
    std::vector<int> lights_;
    PositionSolver solver_;
    PositionPlan plan_;
    std::map<Digits, Row> rows_;
};

}  // namespace tiepoint
