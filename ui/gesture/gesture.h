#pragma once
// A gesture: everything from the button going down (or a part leaving the tray) until the bench has changed or the hand let go.
// One class for each, one file for each; the table in gesture_table.cpp says which begins over what.
// A finished gesture pushes at most one undo step; a cancelled one leaves no trace.

#include "ui/gesture/hand.h"

#include <QKeyEvent>

namespace tiepoint::ui {

class Gesture {
public:
    explicit Gesture(Hand& hand) : hand_(hand) {}
    virtual ~Gesture() = default;
    Gesture(const Gesture&) = delete;
    Gesture& operator=(const Gesture&) = delete;

    /// The button goes down where the gesture begins.
    virtual void press(const Pointer&) {}
    /// The pointer moves, from the first move that counts as a drag.
    virtual void move(const Pointer&) {}
    /// The button goes up. `pointer.dragged` is false for a click.
    virtual void release(const Pointer&) { finish(); }
    /// Takes everything back.
    virtual void cancel() {}
    /// The bench was changed by another hand, such as a key that undoes: lets go of what is held and changes nothing more. What the
    /// gesture points at is cleared for it.
    virtual void giveUp() {}
    /// Where the pointer must be for the carried thing's first lead to go into a hole: how the keyboard leads a gesture.
    virtual Point handleFor(Point hole) const { return hole; }
    /// Whether the gesture took the key.
    virtual bool key(int, const Pointer&) { return false; }

    /// Whether what is dragged may go where nothing is seen yet: then the view follows it over its edge.
    virtual bool canLeaveSight() const { return false; }

    bool isFinished() const { return finished_; }

protected:
    void finish() { finished_ = true; }
    Hand& hand() const { return hand_; }
    const Bench& bench() const { return hand_.picture().bench(); }

private:
    Hand& hand_;
    bool finished_ = false;
};

}  // namespace tiepoint::ui
