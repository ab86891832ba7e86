#pragma once
// Turning what is selected by a quarter, by a key or from the menu at a part.

#include "ui/gesture/hand.h"

namespace tiepoint::ui {

/// To the right (1) or left (-1), as one change; says why if something can't be turned, and tells what has happened.
void turnSelection(Hand& hand, int direction);

/// Where words about what is selected stand, mm.
Point besideSelection(const Picture& picture);

}  // namespace tiepoint::ui
