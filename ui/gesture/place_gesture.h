#pragma once
// Place: a new part on its way from the tray into holes. Begins with the button down (a drag ends where it is let go) or up (a click
// places it); [ and ] turn it on the way. A supply or an instrument stands where it is let go beside the boards, and else finds its place.

#include "ui/gesture/gesture.h"

namespace tiepoint::ui {

class PlaceGesture : public Gesture {
public:
    PlaceGesture(Hand& hand, Part part) : Gesture(hand), part_(std::move(part)) {}

    void press(const Pointer& pointer) override { move(pointer); }
    void move(const Pointer& pointer) override;
    void release(const Pointer& pointer) override;
    void cancel() override;
    bool key(int key, const Pointer& pointer) override;
    Point handleFor(Point hole) const override;

    /// A new part as the tray gives it out: its id, its preset ("resistance=330", "voltage=6;current=0.1"), the next free letter on a cap.
    static Part fresh(const Bench& bench, const PartKind& kind, const QString& preset);

private:
    struct Aim {
        std::optional<Part> part;  ///< with at least one lead in a hole
        std::string refused;
    };
    Aim aim(Point at) const;
    Part standing(Point at) const;

    Part part_;
    int quarterTurns_ = 0;
};

}  // namespace tiepoint::ui
