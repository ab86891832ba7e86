#pragma once
// Makes a snapshot from a solution and the flow of its metal.

#include "core/flow/flow.h"
#include "core/snapshot/snapshot.h"

namespace tiepoint {

/// Fills every array of a snapshot of `layout`; revision, input sequence and inputs are the caller's.
std::shared_ptr<Snapshot> makeSnapshot(std::shared_ptr<const Layout> layout, const Solution& solution, Flow& flow);

}  // namespace tiepoint
