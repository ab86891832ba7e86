#pragma once
// Which gesture begins when the button goes down, from what lies under the pointer.

#include "ui/gesture/gesture.h"
#include "ui/gesture/under.h"

#include <memory>

namespace tiepoint::ui {

/// The first gesture of the table that suits. `spaceHeld`: the space bar is down, which turns every drag into a pan.
std::unique_ptr<Gesture> gestureFor(Hand& hand, const Under& under, const Pointer& pointer, bool spaceHeld);

}  // namespace tiepoint::ui
