#include "ui/view/fingers.h"

#include "ui/gesture/press_gesture.h"

#include <algorithm>

namespace tiepoint::ui {

bool Fingers::touch(const QTouchEvent& event) {
    const bool ends = event.type() == QEvent::TouchEnd || event.type() == QEvent::TouchCancel;
    for (const QEventPoint& finger : event.points()) {
        if (finger.state() == QEventPoint::Pressed) {
            put(finger.id(), finger.position());
        } else if (finger.state() == QEventPoint::Released || ends) {
            lift(finger.id());
        }
    }
    const bool ours = !pressed_.empty() || ends;
    while (ends && !pressed_.empty()) lift(pressed_.begin()->first);
    return ours;
}

void Fingers::put(int finger, QPointF inView) {
    const std::string part = hovering_.under(inView).control;
    const Part* found = hand_.picture().bench().findPart(part);
    if (!found || !found->kind->hasCap) return;
    pressed_[finger] = part;
    PressGesture::pressPart(hand_, part, {});
}

void Fingers::lift(int finger) {
    const auto found = pressed_.find(finger);
    if (found == pressed_.end()) return;
    const std::string part = std::move(found->second);
    pressed_.erase(found);
    // Two fingers on one cap hold it until both are lifted.
    const bool stillHeld =
        std::any_of(pressed_.begin(), pressed_.end(), [&](const auto& other) { return other.second == part; });
    if (!stillHeld) PressGesture::releasePart(hand_, part);
}

}  // namespace tiepoint::ui
