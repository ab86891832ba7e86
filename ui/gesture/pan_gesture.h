#pragma once
// Pan: the bench follows the pointer.

#include "ui/gesture/gesture.h"

namespace tiepoint::ui {

class PanGesture : public Gesture {
public:
    using Gesture::Gesture;
    void press(const Pointer& pointer) override { last_ = pointer.inView; }
    void move(const Pointer& pointer) override {
        hand().panBy(pointer.inView - last_);
        last_ = pointer.inView;
    }

private:
    QPointF last_;
};

}  // namespace tiepoint::ui
