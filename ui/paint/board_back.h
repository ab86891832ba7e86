#pragma once
// A board from below: its backing peeled off at one side, the clips of all strips laid open, printing and columns from right to left,
// and the tips of leads in the clips. For pictures whose table is turned. Lengths in mm of the bench.

#include "ui/paint/board_layer.h"
#include "ui/paint/patch.h"
#include "ui/paint/picture.h"

#include <vector>

namespace tiepoint::ui {

/// Frames of the boards where they are seen.
std::vector<QRectF> seenBoards(const Picture& picture);
/// Where wires count as behind turned boards: also above and below them, so that the arc of one that leaves a board on that side and comes back
/// is drawn in one way.
std::vector<QRectF> hiddenAreas(const Picture& picture);
/// The same for marks; none where nothing is turned.
std::vector<Rect> hiddenFrames(const Picture& picture);

/// How far from the left edge of a turned board its backing may lie without hiding a hole in use.
double freeAtLeftMm(const Picture& picture, int board);
void addBoardBack(Patches& patches, const BoardSeen& board);

/// The tips that the clips grip, one in every hole in use; over the metal, under beds and arrows.
void addLeadTips(Patches& patches, const Picture& picture);

/// A sign that says so, below the boards and the tags there; and how much room it takes.
void addTurnSign(Patches& patches, const Rect& boards, const WordSizes& sizes);
double turnSignMm(const WordSizes& sizes);

}  // namespace tiepoint::ui
