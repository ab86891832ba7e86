#pragma once
// What a bench does: a table over the positions of its controls, that is of its switches and, where they are asked for, of its knobs, each
// in three places. A row says which lights shine and how bright, what flows through each part, and whether there is a solution at all.
// Findings, truth tables, comparisons and predicates read one; what a meter would show in a row is asked of a MeterProbe.
//
// Controls that can't influence each other are thrown apart: their positions add up instead of multiplying (position_plan.h). A group
// with more than kMostCombinations is thrown one by one, and its controls are named in `untried`.
// Immutable once made; safe from any thread. Making one stops when asked to (core/base/stopping.h).

#include "core/behaviour/position_plan.h"
#include "core/snapshot/snapshot.h"

#include <memory>
#include <string>
#include <vector>

namespace tiepoint {

/// What is known of a light.
enum class Glow {
    Steady,  ///< lit or dark, and it stays so
    Blinks,  ///< lit and dark by turns, slowly enough to be seen
    Open,    ///< the bench still changes: what is said of it may not last
};

struct LightSeen {
    double currentAmpere = 0;
    double brightness = 0;  ///< 0..1
    bool lit = false;       ///< as isLit()
    Glow glow = Glow::Steady;
};

struct BehaviourRow {
    Digits digits;  ///< by control
    Status status = Status::None;
    bool limiting = false;                     ///< a supply is at its current limit
    double periodSecond = 0;                   ///< of a bench that repeats
    std::vector<LightSeen> lights;             ///< by light; all dark where nothing is solved
    std::vector<double> partAmpere;            ///< by part: what flows through it; 0 where nothing is solved
    std::vector<double> elementAmpere;         ///< by element, as in Solution
    std::shared_ptr<const Snapshot> snapshot;  ///< null in a table of figures alone
    /// Of a bench that moves, in positions one throw away: the present position once more, after this one.
    std::shared_ptr<const Snapshot> back;
};

/// Which controls are thrown.
enum class Controls {
    Switches,
    SwitchesAndKnobs,
};

struct Behaviour {
    std::shared_ptr<const Layout> layout;  ///< of the bench in any position
    std::vector<Throw> controls;
    std::vector<int> lights;         ///< parts that emit light
    std::vector<int> partOfElement;  ///< whose current BehaviourRow::elementAmpere is
    std::vector<BehaviourRow> rows;
    std::vector<std::size_t>
        untried;  ///< controls that weren't tried in every combination, by their place among `controls`

    /// Whether every combination of controls that feel each other has a row.
    bool complete() const { return untried.empty(); }
    /// The row of a position; null if it wasn't solved.
    const BehaviourRow* row(const Digits& digits) const;
    /// The ids of the parts whose controls weren't tried in every combination.
    std::vector<std::string> untriedParts() const;
};

/// The present position in the first row, then all of its plan, those the fewest throws away first; with their snapshots. Hands stay as
/// they are in the snapshot but where they press. A bench that moves is followed from what its parts remember in the present position.
Behaviour behaviourAround(std::shared_ptr<const Snapshot> now, Controls controls = Controls::Switches);
/// Every combination of all switches, each from power-up, the first changing slowest; only figures. The caller bounds how many there are.
Behaviour behaviourInFull(std::shared_ptr<const Layout> layout);

}  // namespace tiepoint
