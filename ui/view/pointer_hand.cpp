#include "ui/view/pointer_hand.h"

#include "ui/gesture/gesture_table.h"
#include "ui/gesture/ink_gesture.h"

#include <QApplication>

#include <utility>

namespace tiepoint::ui {

PointerHand::PointerHand(const Needs& needs) : needs_(needs), edge_(needs.viewport) {
    connect(&edge_, &EdgeScroll::scrolled, this,
            [this](QPointF pixels) { scroll(pixels, QApplication::keyboardModifiers()); });
    connect(&needs_.gestures, &GestureRun::ended, this, &PointerHand::forget);
}

Pointer PointerHand::pointerAt(QPointF inView, Qt::MouseButton button, Qt::KeyboardModifiers modifiers) const {
    return {needs_.camera.toMm(inView), inView, button, modifiers, dragged_};
}

void PointerHand::setAt(QPointF inView) {
    at_ = inView;
    Q_EMIT moved();
}

void PointerHand::forget() {
    if (elsewhere_) qApp->removeEventFilter(this);
    elsewhere_ = buttonDown_ = dragged_ = false;
    edge_.stop();
}

/// The bench moves under a pointer that stays: what it drags goes on over the bench.
void PointerHand::scroll(QPointF pixels, Qt::KeyboardModifiers modifiers) {
    needs_.camera.panBy(pixels);
    needs_.gestures.move(pointerAt(at_, downButton_, modifiers));
}

void PointerHand::press(const QMouseEvent& event) {
    downAt_ = event.position();
    setAt(downAt_);
    Q_EMIT pressed();
    if (needs_.gestures.isUnderWay()) return pressAgain(event.button());
    dragged_ = false;
    downButton_ = event.button();
    const Pointer pointer = pointerAt(event.position(), event.button(), event.modifiers());
    if (needs_.room.inkingButtons() & event.button()) {
        buttonDown_ = true;
        return needs_.gestures.begin(std::make_unique<InkGesture>(needs_.hand, needs_.room.ink()), pointer);
    }
    // A click on a symbol opens its finding; a drag begins at what lies beneath it.
    const bool chooses = event.button() == Qt::LeftButton && !spaceHeld_;
    pressedFinding_ = chooses ? needs_.hovering.findingAt(event.position()) : -1;
    if (pressedFinding_ < 0) beginAt(pointer);
}

/// A carried thing is placed when the button comes up; another button lets go of everything.
void PointerHand::pressAgain(Qt::MouseButton button) {
    if (button != Qt::LeftButton || buttonDown_) return needs_.gestures.cancel();
    buttonDown_ = true;
    dragged_ = true;
}

void PointerHand::beginAt(const Pointer& pointer) {
    auto gesture = gestureFor(needs_.hand, needs_.hand.under(pointer.at), pointer, spaceHeld_);
    if (!gesture) return;
    needs_.hand.clearMarks();
    buttonDown_ = true;
    needs_.gestures.begin(std::move(gesture), pointer);
}

void PointerHand::move(QPointF inView, Qt::MouseButtons buttons, Qt::KeyboardModifiers modifiers) {
    setAt(inView);
    if (pressedFinding_ >= 0 && isFar(inView)) {
        pressedFinding_ = -1;
        if (buttons & Qt::LeftButton) beginAt(pointerAt(downAt_, downButton_, modifiers));
    }
    if (!needs_.gestures.isUnderWay()) return needs_.hovering.follow(inView);
    if (elsewhere_ && (buttons & Qt::LeftButton)) buttonDown_ = true;
    if (buttonDown_ && !dragged_) dragged_ = isFar(inView);
    if (buttonDown_ && !dragged_) return;
    needs_.gestures.move(pointerAt(inView, downButton_, modifiers));
    if (buttonDown_ && !elsewhere_ && needs_.gestures.canLeaveSight()) edge_.follow(inView);
}

void PointerHand::release(QPointF inView, Qt::MouseButton button, Qt::KeyboardModifiers modifiers) {
    setAt(inView);
    if (const int finding = std::exchange(pressedFinding_, -1); finding >= 0) Q_EMIT findingChosen(finding);
    if (!needs_.gestures.isUnderWay()) return;
    if (!elsewhere_ && button != downButton_) return;
    buttonDown_ = false;
    if (elsewhere_ && !needs_.viewport.rect().contains(inView.toPoint())) return needs_.gestures.cancel();
    needs_.gestures.release(pointerAt(inView, button, modifiers));
    if (!needs_.gestures.isUnderWay()) needs_.hovering.follow(inView);
}

bool PointerHand::key(int key, Qt::KeyboardModifiers modifiers) {
    return needs_.gestures.key(key, pointerAt(at_, downButton_, modifiers));
}

void PointerHand::carryWithButtonUp() {
    downButton_ = Qt::LeftButton;
    buttonDown_ = false;
    dragged_ = true;
}

void PointerHand::carry(std::unique_ptr<Gesture> gesture, Point at) {
    setAt(needs_.camera.fromMm(at));
    carryWithButtonUp();
    const Pointer pointer{at, at_, Qt::LeftButton, {}, true};
    needs_.gestures.begin(std::move(gesture), pointer);
    if (needs_.gestures.isUnderWay()) needs_.gestures.move(pointer);
}

void PointerHand::carryFromTray(std::unique_ptr<Gesture> gesture, QPointF inView) {
    downAt_ = inView;
    setAt(inView);
    carryWithButtonUp();
    elsewhere_ = true;
    qApp->installEventFilter(this);
    needs_.gestures.begin(std::move(gesture), pointerAt(at_, Qt::LeftButton, {}));
}

void PointerHand::lead(Point at, Qt::KeyboardModifiers modifiers, bool letGo) {
    setAt(needs_.camera.fromMm(at));
    const Pointer pointer{at, at_, Qt::LeftButton, modifiers, true};
    letGo ? needs_.gestures.release(pointer) : needs_.gestures.move(pointer);
}

bool PointerHand::eventFilter(QObject* watched, QEvent* event) {
    if (!elsewhere_ || watched == &needs_.viewport || !watched->isWidgetType()) return false;
    const auto type = event->type();
    if (type != QEvent::MouseMove && type != QEvent::MouseButtonRelease) return false;
    const auto& mouse = *static_cast<QMouseEvent*>(event);
    const QPointF inView = needs_.viewport.mapFromGlobal(mouse.globalPosition());
    if (type == QEvent::MouseMove) {
        move(inView, mouse.buttons(), mouse.modifiers());
    } else if (buttonDown_) {
        release(inView, mouse.button(), mouse.modifiers());
    }
    return false;
}

}  // namespace tiepoint::ui
