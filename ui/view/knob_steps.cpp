#include "ui/view/knob_steps.h"

#include "ui/gesture/face_gesture.h"
#include "ui/gesture/knob_gesture.h"

namespace tiepoint::ui {

void KnobSteps::begin() {
    constexpr qint64 kPauseMs = 600;
    if (!sinceLast_.isValid() || sinceLast_.elapsed() > kPauseMs) gesture_ = hand_.document().newGesture();
    sinceLast_.start();
}

bool KnobSteps::turnFace(const std::string& part, Point at, int steps) {
    const auto value = FaceGesture::valueAt(hand_.picture(), part, at);
    if (!value) return false;
    begin();
    return FaceGesture::turnBy(hand_, part, *value, steps, gesture_);
}

bool KnobSteps::turn(const std::string& part, double share) {
    begin();
    return KnobGesture::turnBy(hand_, part, share, gesture_);
}

}  // namespace tiepoint::ui
