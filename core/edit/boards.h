#pragma once
// Boards on the table: docked to those that stand there, moved, removed, their rails broken or whole, printed the other way round. Pure
// functions that return edits. Parts and jumpers are in holes of a board, so that they go where it goes.

#include "core/edit/edit.h"

#include <array>

namespace tiepoint {

/// The sides of a board, in the order in which a new one looks for room.
enum class Side { Below, Right, Above, Left };
inline constexpr std::array kSides{Side::Below, Side::Right, Side::Above, Side::Left};

/// Where a board of a kind has its corner, in pitches, edge to edge with a side of another, so that columns (below and above) or rows
/// (right and left) line up.
Point dockedAt(const Board& other, Side side, const BoardKind& kind);

/// Adds a board of that kind on the first free side of the newest board, or else of an older one. On an empty table it stands at the corner.
Edit dockBoardEdit(const Bench& bench, const BoardKind& kind);

/// Moves a board to a corner in pitches. Fails, saying what is in the way, where it would lie on another board or on a box that a hand has put
/// somewhere. Other boxes make room by themselves.
Result<Edit> moveBoardEdit(const Bench& bench, const std::string& id, Point at);
/// Moves a board to a side of another.
Result<Edit> moveBoardBesideEdit(const Bench& bench, const std::string& id, const std::string& other, Side side);
/// Where a board comes to lie that is let go with its corner at a place (mm): docked to another that it is near to, where it was if it hardly
/// moved, or else at whole pitches. In pitches.
Point boardLandsAt(const Bench& bench, const std::string& id, Point cornerMm);
/// "to the right of board A", "below board A" for a board docked so, or empty.
std::string dockedWords(const Bench& bench, const std::string& id, Point at);

/// Removes a board and the notes pinned to it. Fails, naming what is in the way, while anything is plugged into it, and for the last board.
Result<Edit> removeBoardEdit(const Bench& bench, const std::string& id);

/// Breaks each rail of a board in its middle, or makes them run through. Fails for a board without rails.
Result<Edit> turnRailsEdit(const Bench& bench, const std::string& id);
/// What a bench loses by breaking the rails of a board: the rails on both halves of which something is plugged in that is no longer joined.
/// "top+ and bottom- are parted between holes 12 and 13", or empty.
std::string partedByRails(const Bench& whole, const Bench& broken, const std::string& board);

/// Prints the row letters from the other edge. Addresses don't change.
Edit turnLabelsEdit(const Bench& bench, const std::string& id);

}  // namespace tiepoint
