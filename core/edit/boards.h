#pragma once
// Boards on the table: docked to those that stand there, removed, printed the other way round. Pure functions that return edits.

#include "core/edit/edit.h"

namespace tiepoint {

/// Adds a board of that kind, edge to edge with one that stands there, so that columns (below and above) or rows (beside) line up: the
/// first free side in the order below, right, above, left, of the newest board first. On an empty table it stands at the corner.
Edit dockBoardEdit(const Bench& bench, const BoardKind& kind);

/// Removes a board and the notes pinned to it. Fails, naming what is in the way, while anything is plugged into it, and for the last board.
Result<Edit> removeBoardEdit(const Bench& bench, const std::string& id);

/// Prints the row letters from the other edge. Addresses don't change.
Edit turnLabelsEdit(const Bench& bench, const std::string& id);

}  // namespace tiepoint
