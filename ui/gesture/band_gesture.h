#pragma once
// Band: selects everything that a rubber band touches; with Shift or Ctrl it adds to the selection. A click clears the selection.

#include "ui/gesture/gesture.h"

namespace tiepoint::ui {

class BandGesture : public Gesture {
public:
    using Gesture::Gesture;
    void press(const Pointer& pointer) override;
    bool canLeaveSight() const override { return true; }
    void move(const Pointer& pointer) override;
    void release(const Pointer& pointer) override;
    void cancel() override;

private:
    Point from_;
    QStringList before_;
};

}  // namespace tiepoint::ui
