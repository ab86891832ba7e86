#pragma once
// Lead: moves one end, of a bending part, of a jumper, or the cable of a supply or meter. Ends of jumpers and cables that are led to
// something taken go to the nearest free hole of the same metal and say so. Let go where it can't be, it goes back.

#include "ui/gesture/gesture.h"
#include "ui/scene/under.h"

namespace tiepoint::ui {

class LeadGesture : public Gesture {
public:
    LeadGesture(Hand& hand, End end) : Gesture(hand), end_(std::move(end)) {}

    void move(const Pointer& pointer) override;
    bool canLeaveSight() const override { return true; }
    void release(const Pointer& pointer) override;
    void cancel() override { hand().clearMarks(); }

private:
    struct Aim {
        std::optional<Operation> operation;  ///< nothing: it goes back
        std::string words;                   ///< why, or what else it does
    };
    Aim aimPart(const Pointer& pointer);
    Aim aimJumperEnd(const Pointer& pointer);
    Aim aim(const Pointer& pointer) { return end_.jumper ? aimJumperEnd(pointer) : aimPart(pointer); }
    void showCable(const Part& part, Point to);

    End end_;
};

}  // namespace tiepoint::ui
