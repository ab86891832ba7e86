// The pointer's part of the view: one gesture at a time, hovering, the wheel.

#include "ui/gesture/gesture_table.h"
#include "ui/gesture/ink_gesture.h"
#include "ui/gesture/jumper_gesture.h"
#include "ui/gesture/knob_gesture.h"
#include "ui/gesture/place_gesture.h"
#include "ui/view/bench_view_body.h"

#include <QApplication>
#include <QMouseEvent>

#include <cmath>
#include <utility>

namespace tiepoint::ui {
namespace {

constexpr double kDragPixels = 4;
constexpr double kWheelNotch = 120;  ///< Qt's eighths of a degree for one notch
constexpr double kZoomPerNotch = 1.25;
constexpr double kTurnPerNotch = 0.02;  ///< of a knob's range

}  // namespace

Pointer BenchView::Body::pointerAt(QPointF inView, Qt::MouseButton button, Qt::KeyboardModifiers modifiers) const {
    return {view_.toMm(inView), inView, button, modifiers, dragged_};
}

void BenchView::Body::begin(std::unique_ptr<Gesture> gesture, const Pointer& pointer) {
    gesture_ = std::move(gesture);
    clearHover();
    followLadder();
    with([&](Gesture& g) { g.press(pointer); });
}

void BenchView::Body::endGesture() {
    gesture_.reset();
    if (elsewhere_) qApp->removeEventFilter(&view_);
    elsewhere_ = buttonDown_ = dragged_ = false;
    followLadder();
    setAtPointer(std::nullopt, std::nullopt);
    scene_.setPale({});
    picture_.marks.band.reset();
    Marks& marks = picture_.marks;
    marks.targets.clear();
    marks.carried.reset();
    marks.drawn.reset();
    marks.drawnFree.reset();
    marks.probe.reset();
    marks.refused = false;
    litNets_.clear();
    if (!flashing_.isActive()) marks.say.clear();
    showMarks();
    Q_EMIT view_.gestureEnded();
}

void BenchView::Body::cancelGesture() {
    if (!gesture_) return;
    inGesture_ = true;
    gesture_->cancel();
    inGesture_ = false;
    clearMarks();
    endGesture();
}

void BenchView::Body::letGo() {
    if (gesture_) return cancelGesture();
    clearMarks();
    if (picture_.marks.selected.empty()) return hideCursor();
    setSelection({});
}

bool BenchView::Body::keyToGesture(int key) {
    bool taken = false;
    const Pointer pointer = pointerAt(lastAt_, downButton_, {});
    with([&](Gesture& g) { taken = g.key(key, pointer); });
    return taken;
}

void BenchView::Body::press(const QMouseEvent& event) {
    lastAt_ = downAt_ = event.position();
    hideCursor();
    if (gesture_) {
        // A carried thing is placed when the button comes up; another button lets go of everything.
        if (event.button() == Qt::LeftButton && !buttonDown_) {
            buttonDown_ = true;
            dragged_ = true;
        } else {
            cancelGesture();
        }
        return;
    }
    dragged_ = false;
    downButton_ = event.button();
    const Pointer pointer = pointerAt(event.position(), event.button(), event.modifiers());
    if ((inking_ && event.button() == Qt::LeftButton) || (projecting_ && event.button() == Qt::RightButton)) {
        buttonDown_ = true;
        return begin(std::make_unique<InkGesture>(*this, ink_), pointer);
    }
    // A click on a symbol opens its finding; a drag begins at what lies beneath it.
    pressedFinding_ = event.button() == Qt::LeftButton && !spaceHeld_ ? findingAt(event.position()) : -1;
    if (pressedFinding_ < 0) beginAt(pointer);
}

void BenchView::Body::beginAt(const Pointer& pointer) {
    auto gesture = gestureFor(*this, whatLiesAt(picture_, pointer.at), pointer, spaceHeld_);
    if (!gesture) return;
    clearMarks();
    buttonDown_ = true;
    begin(std::move(gesture), pointer);
}

void BenchView::Body::move(QPointF inView, Qt::MouseButtons buttons, Qt::KeyboardModifiers modifiers) {
    lastAt_ = inView;
    if (projecting_) showMarks();  // the ring follows
    if (pressedFinding_ >= 0 && QLineF(downAt_, inView).length() >= kDragPixels) {
        pressedFinding_ = -1;
        if (buttons & Qt::LeftButton) beginAt(pointerAt(downAt_, downButton_, modifiers));
    }
    if (!gesture_) return hover(inView);
    if (elsewhere_ && (buttons & Qt::LeftButton)) buttonDown_ = true;
    if (buttonDown_ && !dragged_) dragged_ = QLineF(downAt_, inView).length() >= kDragPixels;
    if (buttonDown_ && !dragged_) return;
    const Pointer pointer = pointerAt(inView, downButton_, modifiers);
    with([&](Gesture& g) { g.move(pointer); });
}

void BenchView::Body::release(QPointF inView, Qt::MouseButton button, Qt::KeyboardModifiers modifiers) {
    lastAt_ = inView;
    if (const int finding = std::exchange(pressedFinding_, -1); finding >= 0) Q_EMIT view_.findingChosen(finding);
    if (!gesture_) return;
    if (!elsewhere_ && button != downButton_) return;
    buttonDown_ = false;
    if (elsewhere_ && !view_.viewport()->rect().contains(inView.toPoint())) return cancelGesture();
    const Pointer pointer = pointerAt(inView, button, modifiers);
    with([&](Gesture& g) { g.release(pointer); });
    if (!gesture_) hover(inView);
}

// --- out of the tray ---

void BenchView::Body::place(const QString& kind, const QString& preset, QPoint globalPos) {
    cancelGesture();
    clearMarks();
    if (picture_.views.turned) {  // nothing goes into holes from below
        Views upright = picture_.views;
        upright.turned = false;
        setViews(upright);
    }
    std::unique_ptr<Gesture> gesture;
    if (kind == QLatin1String("jumper")) {
        const int colour = findJumperColour(preset.toStdString());
        if (colour >= 0) chosenColour_ = colour;
        gesture = std::make_unique<JumperGesture>(*this, chosenColour_.value_or(0));
    } else if (const PartKind* found = findKind(kind.toStdString())) {
        gesture = std::make_unique<PlaceGesture>(*this, PlaceGesture::fresh(picture_.bench(), *found, preset));
    } else {
        return;
    }
    view_.setFocus(Qt::OtherFocusReason);
    lastAt_ = downAt_ = view_.viewport()->mapFromGlobal(QPointF(globalPos));
    dragged_ = true;
    buttonDown_ = false;
    downButton_ = Qt::LeftButton;
    elsewhere_ = true;
    qApp->installEventFilter(&view_);
    begin(std::move(gesture), pointerAt(lastAt_, Qt::LeftButton, {}));
}

/// While something comes out of the tray the mouse belongs to whichever widget it went down on: its moves are followed from here, and the
/// widget still gets them.
bool BenchView::Body::followElsewhere(QObject* watched, QEvent* event) {
    if (!elsewhere_ || !gesture_ || watched == view_.viewport() || !watched->isWidgetType()) return false;
    const auto type = event->type();
    if (type != QEvent::MouseMove && type != QEvent::MouseButtonRelease) return false;
    const auto& mouse = *static_cast<QMouseEvent*>(event);
    const QPointF inView = view_.viewport()->mapFromGlobal(mouse.globalPosition());
    if (type == QEvent::MouseMove) {
        move(inView, mouse.buttons(), mouse.modifiers());
    } else if (buttonDown_) {
        release(inView, mouse.button(), mouse.modifiers());
    }
    return false;
}

// --- hovering ---

int BenchView::Body::findingAt(QPointF inView) const {
    for (const FindingMark& mark : canvas_.findingMarks(picture_)) {
        if (mark.frame.contains(view_.viewportTransform().inverted().map(inView))) return mark.finding;
    }
    return -1;
}

void BenchView::Body::hover(QPointF inView) {
    if (findingAt(inView) >= 0) {
        clearHover();
        view_.viewport()->setCursor(Qt::PointingHandCursor);
        return;
    }
    const Point at = view_.toMm(inView);
    const Under under = whatLiesAt(picture_, at);
    int net = -1;
    Point tag = at;
    const Layout& layout = *picture_.layout;
    if (!under.wire.empty()) {
        const int joint = layout.jumperJoints[static_cast<std::size_t>(picture_.bench().jumperIndex(under.wire))][0];
        net = layout.joints[static_cast<std::size_t>(joint)].net;
    } else if (under.socket) {
        net = layout.netOfLead[static_cast<std::size_t>(
            layout.leadIndex(picture_.bench().partIndex(under.socket->part), under.socket->lead))];
    } else if (under.hole && under.body.empty()) {
        net = layout.netOfHole(layout.holeIndex(*under.hole));
        tag = picture_.seenAt(*under.hole);
    }
    setHover(net, tag, under.thing());
    const bool hand = !under.control.empty();
    view_.viewport()->setCursor(hand                  ? Qt::PointingHandCursor
                                : under.grip          ? Qt::SizeAllCursor
                                : !under.body.empty() ? Qt::OpenHandCursor
                                                      : Qt::ArrowCursor);
}

void BenchView::Body::clearHover() { setHover(-1, {}, {}); }

void BenchView::Body::leave() {
    if (!gesture_) clearHover();
    if (projecting_) showMarks();
}

void BenchView::Body::setHover(int net, Point at, const std::string& part) {
    Marks& marks = picture_.marks;
    if (net == marks.hoverNet && part == marks.hoverPart && at == marks.hoverAt) return;
    const bool otherThing = net != marks.hoverNet || part != marks.hoverPart;
    marks.hoverNet = net;
    marks.hoverAt = at;
    marks.hoverPart = part;
    showMarks();
    if (otherThing) Q_EMIT view_.hoverChanged();
}

// --- wheel and focus ---

void BenchView::Body::wheel(const QWheelEvent& event) {
    const double notches =
        (event.angleDelta().y() != 0 ? event.angleDelta().y() : event.angleDelta().x()) / kWheelNotch;
    const bool zooms = event.modifiers() & Qt::ControlModifier;
    if (!zooms && !event.pixelDelta().isNull() && event.phase() != Qt::NoScrollPhase)
        return camera_.panBy(event.pixelDelta());
    const Under under = whatLiesAt(picture_, view_.toMm(event.position()));
    if (!zooms && !under.control.empty()) {
        if (!sinceWheel_.isValid() || sinceWheel_.elapsed() > kWheelPauseMs) wheelGesture_ = document_.newGesture();
        sinceWheel_.start();
        if (KnobGesture::turnBy(*this, under.control, notches * kTurnPerNotch, wheelGesture_)) return;
    }
    if (!zooms && !under.body.empty() && picture_.marks.selected == std::vector{under.body} && ladder_.isVisible()) {
        ladder_.turnWheel(notches);
        return;
    }
    camera_.zoomAt(event.position(), std::pow(kZoomPerNotch, notches));
}

void BenchView::Body::loseFocus() {
    spaceHeld_ = false;
    operated_.clear();
    fingers_.clear();
    latched_.clear();
    live_.releaseAll();
}

}  // namespace tiepoint::ui
