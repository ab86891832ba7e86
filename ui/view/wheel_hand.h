#pragma once
// What the wheel does: turns the knob under it, steps through the values of the selected part under it, or zooms; a touchpad's pans.

#include "ui/view/hovering.h"
#include "ui/view/knob_steps.h"
#include "ui/view/value_fields.h"

#include <QWheelEvent>

namespace tiepoint::ui {

class WheelHand {
public:
    /// All must outlive it.
    WheelHand(const Picture& picture, const Hovering& hovering, KnobSteps& knobs, ValueFields& fields, Camera& camera)
        : picture_(picture),
          hovering_(hovering),
          knobs_(knobs),
          fields_(fields),
          camera_(camera) {}
    void turn(const QWheelEvent& event);

private:
    /// Whether it turned or stepped what lies there.
    bool turnThing(QPointF inView, double notches);

    const Picture& picture_;
    const Hovering& hovering_;
    KnobSteps& knobs_;
    ValueFields& fields_;
    Camera& camera_;
};

}  // namespace tiepoint::ui
