#include "ui/view/knob_steps.h"

#include "ui/gesture/knob_gesture.h"

namespace tiepoint::ui {

bool KnobSteps::turn(const std::string& part, double share) {
    constexpr qint64 kPauseMs = 600;
    if (!sinceLast_.isValid() || sinceLast_.elapsed() > kPauseMs) gesture_ = hand_.document().newGesture();
    sinceLast_.start();
    return KnobGesture::turnBy(hand_, part, share, gesture_);
}

}  // namespace tiepoint::ui
