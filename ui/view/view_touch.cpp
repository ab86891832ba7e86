// Fingers: each one on a cap presses it, several at a time. A first finger anywhere else is left to the system, which makes a mouse of it.

#include "ui/gesture/press_gesture.h"
#include "ui/view/bench_view_body.h"

#include <QTouchEvent>

#include <algorithm>

namespace tiepoint::ui {

bool BenchView::Body::touch(const QTouchEvent& event) {
    const bool ends = event.type() == QEvent::TouchEnd || event.type() == QEvent::TouchCancel;
    for (const QEventPoint& finger : event.points()) {
        if (finger.state() == QEventPoint::Pressed) {
            const std::string part = whatLiesAt(picture_, view_.toMm(finger.position())).control;
            const Part* pressed = picture_.bench().findPart(part);
            if (!pressed || !pressed->kind->hasCap) continue;
            fingers_[finger.id()] = part;
            PressGesture::pressPart(*this, part, {});
        } else if (finger.state() == QEventPoint::Released || ends) {
            liftFinger(finger.id());
        }
    }
    const bool ours = !fingers_.empty() || ends;
    if (ends) liftFingers();
    return ours;
}

void BenchView::Body::liftFinger(int finger) {
    const auto found = fingers_.find(finger);
    if (found == fingers_.end()) return;
    const std::string part = std::exchange(found->second, {});
    fingers_.erase(found);
    // Two fingers on one cap hold it until both are lifted.
    const bool stillHeld =
        std::any_of(fingers_.begin(), fingers_.end(), [&](const auto& other) { return other.second == part; });
    if (!stillHeld) PressGesture::releasePart(*this, part);
}

void BenchView::Body::liftFingers() {
    while (!fingers_.empty()) liftFinger(fingers_.begin()->first);
}

}  // namespace tiepoint::ui
