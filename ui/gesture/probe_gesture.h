#pragma once
// Probe: volts between two holes, measured as with the two leads of a meter. The red end stands in the first hole; the black one follows
// the pointer, and the reading with it. A click (or Enter) pins it there.

#include "ui/gesture/gesture.h"

namespace tiepoint::ui {

class ProbeGesture : public Gesture {
public:
    ProbeGesture(Hand& hand, Hole first) : Gesture(hand), first_(std::move(first)) {}

    void move(const Pointer& pointer) override;
    void release(const Pointer& pointer) override;
    void cancel() override { hand().clearMarks(); }

private:
    /// The other hole under the pointer, or nothing.
    std::optional<Hole> second(const Pointer& pointer) const;

    Hole first_;
};

}  // namespace tiepoint::ui
