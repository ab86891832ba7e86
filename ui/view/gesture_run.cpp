#include "ui/view/gesture_run.h"

namespace tiepoint::ui {

template <class Call>
void GestureRun::with(Call call) {
    isCalled_ = true;
    call(*gesture_);
    isCalled_ = false;
    if (gesture_->isFinished()) end();
}

void GestureRun::begin(std::unique_ptr<Gesture> gesture, const Pointer& pointer) {
    gesture_ = std::move(gesture);
    Q_EMIT begun();
    with([&](Gesture& g) { g.press(pointer); });
}

void GestureRun::move(const Pointer& pointer) {
    with([&](Gesture& g) { g.move(pointer); });
}

void GestureRun::release(const Pointer& pointer) {
    with([&](Gesture& g) { g.release(pointer); });
}

bool GestureRun::key(int key, const Pointer& pointer) {
    bool taken = false;
    with([&](Gesture& g) { taken = g.key(key, pointer); });
    return taken;
}

void GestureRun::cancel() {
    if (!gesture_) return;
    isCalled_ = true;
    gesture_->cancel();
    isCalled_ = false;
    end();
}

bool GestureRun::followBench() {
    if (!gesture_ || isCalled_) return false;
    isCalled_ = true;
    gesture_->giveUp();
    isCalled_ = false;
    end();
    return true;
}

void GestureRun::end() {
    gesture_.reset();
    Q_EMIT ended();
}

}  // namespace tiepoint::ui
