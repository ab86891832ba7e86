#pragma once
// Ink: from the button going down until it comes up, one stroke.

#include "ui/gesture/gesture.h"
#include "ui/paint/ink.h"

namespace tiepoint::ui {

class InkGesture : public Gesture {
public:
    InkGesture(Hand& hand, Ink& ink) : Gesture(hand), ink_(ink) {}
    void press(const Pointer& pointer) override {
        ink_.begin(onBoards(pointer));
        hand().showMarks();
    }
    void move(const Pointer& pointer) override {
        ink_.extend(onBoards(pointer));
        hand().showMarks();
    }
    void release(const Pointer&) override {
        ink_.end();
        hand().showMarks();
        finish();
    }
    void cancel() override {
        ink_.drop();
        hand().showMarks();
    }

private:
    Point onBoards(const Pointer& pointer) const { return hand().picture().table->seen(pointer.at); }

    Ink& ink_;
};

}  // namespace tiepoint::ui
