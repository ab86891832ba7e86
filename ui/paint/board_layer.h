#pragma once
// The boards of the picture: body, print, holes, or all of their metal; from above, or turned over.

#include "ui/paint/patch.h"
#include "ui/paint/picture.h"

#include <string>

namespace tiepoint::ui {

/// All that is drawn of a board.
struct BoardSeen {
    const BoardKind* kind = nullptr;
    Rails rails = Rails::Through;
    Labels labels = Labels::ATop;
    Point corner;         ///< where it is seen
    bool strips = false;  ///< metal instead of holes
    bool turned = false;
    std::string letter = {};  ///< its id, where there are several boards
    double freeAtLeftMm =
        0;  ///< turned over: how far from the left edge the backing may lie without hiding a hole in use
    friend bool operator==(const BoardSeen&, const BoardSeen&) = default;
};

BoardSeen boardSeen(const Picture& picture, int board);
void addBoard(Patches& patches, const BoardSeen& board);

}  // namespace tiepoint::ui
