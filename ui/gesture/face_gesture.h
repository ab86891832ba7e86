#pragma once
// Face: a knob of an instrument that turns one value of its part. A click at its right turns it up by a step, one at its left down; a drag
// turns it about its middle, step by step. One undo step for each gesture.

#include "ui/gesture/gesture.h"

#include <optional>

namespace tiepoint::ui {

class FaceGesture : public Gesture {
public:
    FaceGesture(Hand& hand, std::string part);
    void press(const Pointer& pointer) override;
    void move(const Pointer& pointer) override;
    void release(const Pointer& pointer) override;
    void cancel() override;

    /// The name of the value that the knob there turns; nothing where there is no knob.
    static std::optional<std::string> valueAt(const Picture& picture, const std::string& part, Point at);
    /// Turns a value by so many steps, as part of an undo step.
    static bool turnBy(Hand& hand, const std::string& part, const std::string& value, int steps, int gesture);
    /// The value so many steps further: of those offered, of its choices, or in round steps.
    static double stepped(const ValueSpec& spec, double value, int steps);

private:
    std::string part_, value_;
    Point middle_;
    int gesture_;
    double lastDegrees_ = 0, turned_ = 0;
    bool changed_ = false;
};

}  // namespace tiepoint::ui
