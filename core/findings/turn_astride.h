#pragma once
// Mends for a push button that was turned by a quarter on one side of the gap. Pure functions; safe from any thread.

#include "core/findings/finding.h"
#include "core/nets/layout.h"

#include <vector>

namespace tiepoint {

/// The leads that a part's metal joins to one of its leads, that lead included.
std::vector<int> joinedTo(const PartKind& kind, int lead);

/// The button put astride the gap so that its sides meet the two strips that its legs are in now, each its own, with jumpers to those
/// that its legs don't reach; the fewest jumpers first, then the shortest. None where a strip holds nothing else (then nobody can say what
/// that side was to meet), or if no such place is free.
std::vector<Mend> astrideMends(const Layout& layout, int part);

}  // namespace tiepoint
