#include "ui/view/wheel_hand.h"

#include <cmath>

namespace tiepoint::ui {
namespace {

constexpr double kUnitsPerNotch = 120;  ///< Qt's eighths of a degree
constexpr double kZoomPerNotch = 1.25;
constexpr double kTurnPerNotch = 0.02;  ///< of a knob's range

}  // namespace

void WheelHand::turn(const QWheelEvent& event) {
    const QPoint angle = event.angleDelta();
    const double notches = (angle.y() != 0 ? angle.y() : angle.x()) / kUnitsPerNotch;
    if (!(event.modifiers() & Qt::ControlModifier)) {
        if (!event.pixelDelta().isNull() && event.phase() != Qt::NoScrollPhase)
            return camera_.panBy(event.pixelDelta());
        if (turnThing(event.position(), notches)) return;
    }
    camera_.zoomAt(event.position(), std::pow(kZoomPerNotch, notches));
}

bool WheelHand::turnThing(QPointF inView, double notches) {
    const Under under = hovering_.under(inView);
    if (!under.control.empty() && knobs_.turnFace(under.control, camera_.toMm(inView), notches > 0 ? 1 : -1))
        return true;
    if (!under.control.empty() && knobs_.turn(under.control, notches * kTurnPerNotch)) return true;
    if (under.body.empty() || picture_.marks.selected != std::vector{under.body} || !fields_.hasLadder()) return false;
    fields_.turnWheel(notches);
    return true;
}

}  // namespace tiepoint::ui
