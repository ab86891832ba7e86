#pragma once
// Turning a knob by steps, of the wheel or of a key: those that follow each other at once are one undo step.

#include "ui/gesture/hand.h"

#include <QElapsedTimer>

#include <string>

namespace tiepoint::ui {

class KnobSteps {
public:
    /// The hand must outlive it.
    explicit KnobSteps(Hand& hand) : hand_(hand) {}
    /// By a share of the knob's range, a dial by one position. False if the part has nothing that turns.
    bool turn(const std::string& part, double share);
    /// A knob on the face of an instrument, there, by whole steps. False if there is none.
    bool turnFace(const std::string& part, Point at, int steps);

private:
    void begin();

    Hand& hand_;
    int gesture_ = -1;
    QElapsedTimer sinceLast_;
};

}  // namespace tiepoint::ui
