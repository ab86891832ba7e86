#pragma once
// Pinning readings: by a key at what is pointed at, or from the menu there.

#include "ui/view/hole_cursor.h"
#include "ui/view/hovering.h"
#include "ui/view/pointer_hand.h"

#include <optional>
#include <vector>

namespace tiepoint::ui {

class Pinning {
public:
    /// All must outlive it.
    struct Needs {
        QWidget& viewport;
        Hand& hand;
        const Hovering& hovering;
        HoleCursor& cursor;
        PointerHand& pointer;
        const GestureRun& gestures;
        const Camera& camera;
    };
    explicit Pinning(const Needs& needs) : needs_(needs) {}

    /// Pins what the hand is at, or unpins it.
    void pinHere();
    /// Begins a reading between the hole that the hand is at and another.
    void probeHere() { probeFrom(holeHere()); }
    /// The hole under the pointer, or of the cursor while it shows.
    std::optional<Hole> holeHere() const;
    /// What can be measured where the hand is.
    std::vector<Measurand> measurandsHere() const;
    /// What a menu says for a reading, which is pinned already or not.
    QString pinWords(const Measurand& of) const;
    /// Pins it, or unpins it.
    void pin(const Measurand& of);
    /// Begins a reading between a hole and another.
    void probeFrom(const std::optional<Hole>& hole);

private:
    bool pointsByMouse() const;
    Point wordsAt() const { return needs_.camera.toMm(needs_.pointer.at()); }

    Needs needs_;
};

}  // namespace tiepoint::ui
