#pragma once
// The tag of a pinned reading: a click selects it. It finds its own place beside what it measures, so a drag moves nothing.

#include "ui/gesture/gesture.h"
#include "ui/gesture/selecting.h"

namespace tiepoint::ui {

class TagGesture : public Gesture {
public:
    TagGesture(Hand& hand, std::string reading) : Gesture(hand), reading_(std::move(reading)) {}
    void release(const Pointer& pointer) override {
        if (!pointer.dragged) selectByClick(hand(), reading_, pointer.modifiers);
        finish();
    }

private:
    std::string reading_;
};

}  // namespace tiepoint::ui
