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

double nextPosition(const ValueSpec& spec, double value) {
    const double positions = spec.type == ValueType::Choice ? static_cast<double>(spec.choices.size()) : 2;
    return std::fmod(value + 1, positions);
}

}  // namespace

KnobGesture::KnobGesture(Hand& hand, std::string part) : Gesture(hand), part_(std::move(part)), gesture_(hand.document().newGesture()) {}

bool KnobGesture::turns() const {
    const Part* part = bench().findPart(part_);
    return part && specOf(*part).type == ValueType::Number;
}

void KnobGesture::press(const Pointer& pointer) {
    startValue_ = bench().findPart(part_)->stateValue(0);
    lastAngle_ = angleAbout(hand().picture(), part_, pointer.at);
}

void KnobGesture::move(const Pointer& pointer) {
    if (!turns()) return;
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

void KnobGesture::release(const Pointer&) {
    flip(hand(), part_);
    finish();
}

bool KnobGesture::flip(Hand& hand, const std::string& id) {
    const Part* part = hand.picture().bench().findPart(id);
    if (!part || part->kind->state.empty() || specOf(*part).type == ValueType::Number) return false;
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
    if (!part || part->kind->state.empty() || specOf(*part).type != ValueType::Number) return false;
    const ValueSpec& spec = specOf(*part);
    const double value = rounded(spec, part->stateValue(0) + share * (spec.maximum - spec.minimum));
    if (value != part->stateValue(0)) {
        if (const auto why = hand.document().push(setStateEdit(hand.picture().bench(), id, spec.name, value), gesture)) {
            Q_EMIT hand.document().refused(*why);
        }
    }
    return true;
}

}  // namespace tiepoint::ui
