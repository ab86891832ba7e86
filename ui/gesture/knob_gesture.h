#pragma once
// Knob: what a hand leaves as it is. A click on a lever or blade switches it to its next position; a drag turns a knob about its
// middle, and the bench runs along. A dial goes to the position that is clicked, or follows the drag. One undo step for each gesture.

#include "ui/gesture/gesture.h"

namespace tiepoint::ui {

class KnobGesture : public Gesture {
public:
    KnobGesture(Hand& hand, std::string part);
    void press(const Pointer& pointer) override;
    void move(const Pointer& pointer) override;
    void release(const Pointer& pointer) override;
    void cancel() override;

    /// Switches to the next position, as a click does. False if the part has nothing to switch.
    static bool flip(Hand& hand, const std::string& part);
    /// Turns by a share of the whole range, a dial by one position, as one step of the gesture. False if the part has nothing that turns.
    static bool turnBy(Hand& hand, const std::string& part, double share, int gesture);

private:
    bool turns() const;
    void set(double value);

    std::string part_;
    int gesture_;
    double startValue_ = 0, turned_ = 0;  ///< degrees since the press
    double lastAngle_ = 0;
    bool changed_ = false;
};

}  // namespace tiepoint::ui
