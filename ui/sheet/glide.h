#pragma once
// A diagram between two layouts: what stands on both is on its way from the one place to the other. Pure.

#include "core/diagram/bench_diagram.h"

namespace tiepoint::ui {

/// `share` 0: parts stand where they were before; 1: where they are now.
std::shared_ptr<const BenchDiagram> betweenSheets(const BenchDiagram& before, const BenchDiagram& now, double share);

}  // namespace tiepoint::ui
