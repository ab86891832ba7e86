#pragma once
// A hand at a board that is turned over: a click selects, a drag moves nothing and says why.

#include "ui/gesture/gesture.h"

namespace tiepoint::ui {

class BelowGesture : public Gesture {
public:
    /// `thing`: the part or jumper under the pointer, or empty.
    BelowGesture(Hand& hand, std::string thing) : Gesture(hand), thing_(std::move(thing)) {}
    void move(const Pointer& pointer) override {
        hand().flash("nothing moves on the underside: key 5 turns the board back", pointer.at);
    }
    void release(const Pointer& pointer) override {
        if (!pointer.dragged)
            hand().setSelection(thing_.empty() ? QStringList() : QStringList(QString::fromStdString(thing_)));
        finish();
    }

private:
    std::string thing_;
};

}  // namespace tiepoint::ui
