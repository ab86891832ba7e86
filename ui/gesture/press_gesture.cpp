#include "ui/gesture/press_gesture.h"

namespace tiepoint::ui {

void PressGesture::pressPart(Hand& hand, const std::string& part, Qt::KeyboardModifiers modifiers) {
    const bool wasLatched = hand.latched().erase(part) > 0;
    if (modifiers & Qt::ShiftModifier && !wasLatched) hand.latched().insert(part);
    hand.live().setHeld(part, true);
}

void PressGesture::releasePart(Hand& hand, const std::string& part) {
    if (!hand.latched().contains(part)) hand.live().setHeld(part, false);
}

}  // namespace tiepoint::ui
