#pragma once
// A diagram between two layouts: what stands on both is on its way from the one place to the other. Pure.

#include "core/diagram/bench_diagram.h"

#include <vector>

namespace tiepoint::ui {

struct SheetBetween {
    std::shared_ptr<const BenchDiagram> sheet;
    std::vector<char> isNew;  ///< by wire: it has no like on the sheet before, and comes up where it will stand
};

/// `share` 0: parts stand where they were before; 1: where they are now. The wires of a net glide along where it is drawn with as many, each as
/// level or plumb as before.
SheetBetween betweenSheets(const BenchDiagram& before, const BenchDiagram& now, double share);

}  // namespace tiepoint::ui
