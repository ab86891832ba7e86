#pragma once
// A board from below: its backing peeled off at one side, the clips of all strips laid open, printing and columns from right to left,
// and the tips of leads in the clips. For pictures whose table is turned. Lengths in mm of the bench.

#include "ui/paint/patch.h"
#include "ui/paint/picture.h"

#include <vector>

namespace tiepoint::ui {

/// Frames of the boards where they are seen.
std::vector<QRectF> seenBoards(const Picture& picture);
/// Where wires count as behind turned boards: also above and below them, so that the arc of one that leaves a board on that side and comes back
/// is drawn in one way.
std::vector<QRectF> hiddenAreas(const Picture& picture);

void addBoardBack(Patches& patches, const Picture& picture, int board);

/// The tips that the clips grip, one in every hole in use; over the metal, under beds and arrows.
void addLeadTips(Patches& patches, const Picture& picture);

/// The words that say what is seen, and how to turn the boards back.
void addTurnSign(Patches& patches, const Picture& picture);

}  // namespace tiepoint::ui
