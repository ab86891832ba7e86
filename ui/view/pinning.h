#pragma once
// Pinning readings: by a key at what is pointed at, or by the menu of the right button.

#include "ui/view/hole_cursor.h"
#include "ui/view/hovering.h"
#include "ui/view/pointer_hand.h"

#include <QContextMenuEvent>

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
    void openMenu(const QContextMenuEvent& event);

private:
    bool pointsByMouse() const;
    std::vector<Measurand> measurandsHere() const;
    std::optional<Hole> holeHere() const;
    void pin(const Measurand& of);
    void probeFrom(const std::optional<Hole>& hole);
    QPoint menuPlace(const QContextMenuEvent& event) const;
    Point wordsAt() const { return needs_.camera.toMm(needs_.pointer.at()); }

    Needs needs_;
};

}  // namespace tiepoint::ui
