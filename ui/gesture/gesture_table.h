#pragma once
// Which gesture begins: when the button goes down, from what lies under the pointer; or from what was taken out of the tray.

#include "ui/gesture/gesture.h"
#include "ui/scene/under.h"

#include <memory>

namespace tiepoint::ui {

/// The first gesture of the table that suits. `spaceHeld`: the space bar is down, which turns every drag into a pan.
std::unique_ptr<Gesture> gestureFor(Hand& hand, const Under& under, const Pointer& pointer, bool spaceHeld);
/// With a part of a kind, or a jumper (kind "jumper", its colour the preset); null if there is no such kind.
std::unique_ptr<Gesture> gestureFromTray(Hand& hand, const QString& kind, const QString& preset);

}  // namespace tiepoint::ui
