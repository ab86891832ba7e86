#pragma once
// Press: a button conducts while its cap is held down. With Shift it stays down until it is pressed again, so that two can be down at once.

#include "ui/gesture/gesture.h"

namespace tiepoint::ui {

class PressGesture : public Gesture {
public:
    PressGesture(Hand& hand, std::string part) : Gesture(hand), part_(std::move(part)) {}
    void press(const Pointer& pointer) override { pressPart(hand(), part_, pointer.modifiers); }
    void release(const Pointer&) override {
        releasePart(hand(), part_);
        finish();
    }
    void cancel() override { releasePart(hand(), part_); }
    void giveUp() override { releasePart(hand(), part_); }

    // The keys on the caps do the same.
    static void pressPart(Hand& hand, const std::string& part, Qt::KeyboardModifiers modifiers);
    static void releasePart(Hand& hand, const std::string& part);

private:
    std::string part_;
};

}  // namespace tiepoint::ui
