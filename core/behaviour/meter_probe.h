#pragma once
// What a meter shows when its tips are held to a bench, in any position of its controls: volts as the catalogue's meter has them, whose ten
// megohms load what they measure and bring floating metal to its black tip's potential.
//
// Such a meter is put into the bench as one more part, with its tips at metal that is there, and the bench is solved again. Solved circuits
// are kept for the places asked about last.
// Belongs to one thread.

#include "core/behaviour/position_solver.h"
#include "core/meter/meter.h"

#include <map>
#include <memory>
#include <utility>
#include <vector>

namespace tiepoint {

class MeterProbe {
public:
    /// `layout` is that of the bench in any position.
    MeterProbe(std::shared_ptr<const Layout> layout, std::vector<Throw> controls);

    /// The display with the red tip in one net and the black one in another; digits by control.
    MeterReading volts(const Digits& digits, int redNet, int blackNet);

private:
    PositionSolver& solverFor(int redNet, int blackNet);
    std::shared_ptr<const Layout> withMeter(int redNet, int blackNet) const;

    std::shared_ptr<const Layout> layout_;
    std::vector<Throw> controls_;
    std::map<std::pair<int, int>, std::unique_ptr<PositionSolver>> solvers_;  ///< by the nets of the tips
};

}  // namespace tiepoint
