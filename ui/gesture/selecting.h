#pragma once
// Selecting by a click, which several gestures turn out to be.

#include "ui/gesture/hand.h"

namespace tiepoint::ui {

/// Selects the thing of that id alone; with Shift or Ctrl adds it or takes it out. An empty id clears, unless a modifier is down.
void selectByClick(Hand& hand, const std::string& id, Qt::KeyboardModifiers modifiers);

/// The nets of holes, for lighting them.
std::vector<int> netsOf(const Picture& picture, const std::vector<Hole>& holes);

}  // namespace tiepoint::ui
