#include "ui/gesture/knob_gesture.h"

#include "ui/paint/bench_painter.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace tiepoint::ui {
namespace {

constexpr double kWholeTurnDegrees = 270;  ///< from one stop of a knob to the other
constexpr double kRoundTo = 1000;          ///< thousandths of the range: finer than a hand turns

const ValueSpec& specOf(const Part& part) { return part.kind->state.front(); }

double angleAbout(const Picture& picture, const std::string& id, Point at) {
    const QPointF centre = controlShape(picture, picture.bench().partIndex(id)).boundingRect().center();
    return std::atan2(at.y - centre.y(), at.x - centre.x()) * 180 / std::numbers::pi;
}

double rounded(const ValueSpec& spec, double value) {
    const double share = std::clamp((value - spec.minimum) / (spec.maximum - spec.minimum), 0.0, 1.0);
    return spec.minimum + std::round(share * kRoundTo) / kRoundTo * (spec.maximum - spec.minimum);
}

double positionsOf(const ValueSpec& spec) {
    return spec.type == ValueType::Choice ? static_cast<double>(spec.choices.size()) : 2;
}

double nextPosition(const ValueSpec& spec, double value) { return std::fmod(value + 1, positionsOf(spec)); }

/// A dial has more positions than a switch, and a wheel turns it.
bool isDial(const ValueSpec& spec) { return spec.type == ValueType::Choice && spec.choices.size() > 2; }

}  // namespace

KnobGesture::KnobGesture(Hand& hand, std::string part)
    : Gesture(hand),
      part_(std::move(part)),
      gesture_(hand.document().newGesture()) {}

bool KnobGesture::turns() const {
    const Part* part = bench().findPart(part_);
    return part && specOf(*part).type == ValueType::Number;
}

void KnobGesture::press(const Pointer& pointer) {
    startValue_ = bench().findPart(part_)->stateValue(0);
    lastAngle_ = angleAbout(hand().picture(), part_, pointer.at);
}

void KnobGesture::move(const Pointer& pointer) {
    if (!turns()) {
        if (const auto position = dialPositionAt(hand().picture(), bench().partIndex(part_), pointer.at))
            set(*position);
        return;
    }
    const double angle = angleAbout(hand().picture(), part_, pointer.at);
    turned_ += std::remainder(angle - lastAngle_, 360.0);
    lastAngle_ = angle;
    const ValueSpec& spec = specOf(*bench().findPart(part_));
    set(rounded(spec, startValue_ + turned_ / kWholeTurnDegrees * (spec.maximum - spec.minimum)));
}

void KnobGesture::set(double value) {
    const Part* part = bench().findPart(part_);
    if (!part || part->stateValue(0) == value) return;
    changed_ = true;
    if (const auto why = hand().document().push(setStateEdit(bench(), part_, specOf(*part).name, value), gesture_)) {
        Q_EMIT hand().document().refused(*why);
    }
}

void KnobGesture::release(const Pointer& pointer) {
    const bool dial = bench().findPart(part_) && isDial(specOf(*bench().findPart(part_)));
    if (dial && !pointer.dragged) move(pointer);
    // A drag has turned the dial already; a click on its hub goes on to the next position, as on a switch.
    const bool meant =
        dial && (pointer.dragged || dialPositionAt(hand().picture(), bench().partIndex(part_), pointer.at));
    if (!meant) flip(hand(), part_);
    finish();
}

bool KnobGesture::flip(Hand& hand, const std::string& id) {
    const Part* part = hand.picture().bench().findPart(id);
    if (!part || !part->kind->hasControl() || specOf(*part).type == ValueType::Number) return false;
    const ValueSpec& spec = specOf(*part);
    const Edit edit = setStateEdit(hand.picture().bench(), id, spec.name, nextPosition(spec, part->stateValue(0)));
    if (const auto why = hand.document().push(edit)) Q_EMIT hand.document().refused(*why);
    return true;
}

void KnobGesture::cancel() {
    if (changed_) hand().document().undoStack().undo();
}

bool KnobGesture::turnBy(Hand& hand, const std::string& id, double share, int gesture) {
    const Part* part = hand.picture().bench().findPart(id);
    if (!part || !part->kind->hasControl()) return false;
    const ValueSpec& spec = specOf(*part);
    if (spec.type != ValueType::Number && !isDial(spec)) return false;
    const double value = isDial(spec)
                             ? std::clamp(part->stateValue(0) + std::copysign(1.0, share), 0.0, positionsOf(spec) - 1)
                             : rounded(spec, part->stateValue(0) + share * (spec.maximum - spec.minimum));
    if (value != part->stateValue(0)) {
        if (const auto why =
                hand.document().push(setStateEdit(hand.picture().bench(), id, spec.name, value), gesture)) {
            Q_EMIT hand.document().refused(*why);
        }
    }
    return true;
}

}  // namespace tiepoint::ui
