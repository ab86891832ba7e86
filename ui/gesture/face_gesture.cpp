#include "ui/gesture/face_gesture.h"

#include "ui/paint/bench_painter.h"
#include "ui/paint/packages/package_painter.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace tiepoint::ui {
namespace {

constexpr double kStepDegrees = 15;

double degreesAbout(Point middle, Point at) {
    return std::atan2(at.y - middle.y, at.x - middle.x) * 180 / std::numbers::pi;
}

/// The next of 1, 1.5, 2, 3, 5, 7 times a power of ten.
double nextRound(double value, int way) {
    constexpr std::array kSteps{1.0, 1.5, 2.0, 3.0, 5.0, 7.0, 10.0};
    constexpr double kSame = 1e-9;
    const double decade = std::pow(10, std::floor(std::log10(value) + kSame));
    if (way > 0) {
        for (const double step : kSteps)
            if (step * decade > value * (1 + kSame)) return step * decade;
        return 10 * decade;
    }
    for (auto step = kSteps.rbegin(); step != kSteps.rend(); ++step)
        if (*step * decade < value * (1 - kSame)) return *step * decade;
    return kSteps[kSteps.size() - 2] * decade / 10;
}

double oneStep(const ValueSpec& spec, double value, int way) {
    if (spec.type != ValueType::Number) return value + way;
    if (!spec.allowed.empty()) {
        constexpr double kSame = 1e-9;
        double next = value;
        for (const double offered : spec.allowed) {
            if (way > 0 && offered > value * (1 + kSame) && (next <= value || offered < next)) next = offered;
            if (way < 0 && offered < value * (1 - kSame) && (next >= value || offered > next)) next = offered;
        }
        return next;
    }
    if (spec.minimum > 0 && spec.maximum / spec.minimum > 100) return nextRound(value, way);
    constexpr double kTenth = 0.1;
    return std::round(value / kTenth + way) * kTenth;
}

}  // namespace

FaceGesture::FaceGesture(Hand& hand, std::string part)
    : Gesture(hand),
      part_(std::move(part)),
      gesture_(hand.document().newGesture()) {}

std::optional<std::string> FaceGesture::valueAt(const Picture& picture, const std::string& part, Point at) {
    const int index = picture.bench().partIndex(part);
    if (index < 0) return std::nullopt;
    for (const FaceKnob& knob : faceKnobsOf(picture, index)) {
        constexpr double kReach = 1.15;
        if (distance(fromQt(knob.at), at) <= kReach * knob.radiusMm) return std::string(knob.value);
    }
    return std::nullopt;
}

double FaceGesture::stepped(const ValueSpec& spec, double value, int steps) {
    for (int i = 0; i < std::abs(steps); ++i) value = oneStep(spec, value, steps > 0 ? 1 : -1);
    return std::clamp(value, spec.minimum, spec.maximum);
}

bool FaceGesture::turnBy(Hand& hand, const std::string& id, const std::string& value, int steps, int gesture) {
    const Bench& bench = hand.picture().bench();
    const Part* part = bench.findPart(id);
    const int index = part ? part->kind->valueIndex(value) : -1;
    if (index < 0) return false;
    const double now = part->value(index);
    const double next = stepped(part->kind->values[static_cast<std::size_t>(index)], now, steps);
    if (next == now) return true;
    if (const auto why = hand.document().push(setValueEdit(bench, id, value, next), gesture))
        Q_EMIT hand.document().refused(*why);
    return true;
}

void FaceGesture::press(const Pointer& pointer) {
    value_ = valueAt(hand().picture(), part_, pointer.at).value_or("");
    for (const FaceKnob& knob : faceKnobsOf(hand().picture(), bench().partIndex(part_)))
        if (value_ == knob.value) middle_ = fromQt(knob.at);
    lastDegrees_ = degreesAbout(middle_, pointer.at);
}

void FaceGesture::move(const Pointer& pointer) {
    const double degrees = degreesAbout(middle_, pointer.at);
    turned_ += std::remainder(degrees - lastDegrees_, 360.0);
    lastDegrees_ = degrees;
    const int steps = static_cast<int>(turned_ / kStepDegrees);
    if (steps == 0) return;
    turned_ -= steps * kStepDegrees;
    changed_ = turnBy(hand(), part_, value_, steps, gesture_) || changed_;
}

void FaceGesture::release(const Pointer& pointer) {
    if (!pointer.dragged) turnBy(hand(), part_, value_, pointer.at.x >= middle_.x ? 1 : -1, gesture_);
    finish();
}

void FaceGesture::cancel() {
    if (changed_) hand().document().undoStack().undo();
}

}  // namespace tiepoint::ui
