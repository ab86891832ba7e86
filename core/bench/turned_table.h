#pragma once
// The table with its boards turned over: columns run from right to left, and what stands in the holes is seen from below. Supplies
// and loose parts stay where they are; only the ends of their leads move with the holes. Pure functions; safe from any thread.

#include "core/bench/table.h"

namespace tiepoint {

/// The same table with its boards turned. Requires a table that isn't turned.
Table turnedOver(const Bench& bench, Table table);

/// Whether a part stands in holes, with its body on a board.
bool standsOnBoard(const Part& part);

}  // namespace tiepoint
