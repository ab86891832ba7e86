#include "ui/view/view_events.h"

#include "ui/view/view_assembly.h"

namespace tiepoint::ui {
bool ViewEvents::takeOfView(QEvent& event) {
    switch (event.type()) {
        case QEvent::ShortcutOverride:
            if (!parts_.keyboard.wants(static_cast<QKeyEvent&>(event))) return false;
            event.accept();
            return true;
        case QEvent::ContextMenu:
            return openMenu(event);
        case QEvent::FocusIn:
            focusIn(static_cast<QFocusEvent&>(event));
            return false;
        case QEvent::FocusOut:
            focusOut();
            return false;
        case QEvent::Show:
        case QEvent::Hide:
            parts_.followMotion(event.type() == QEvent::Show);
            return false;
        default:
            return false;
    }
}

bool ViewEvents::takeOfViewport(QEvent& event) {
    switch (event.type()) {
        case QEvent::MouseButtonPress:
            parts_.pointer.press(static_cast<QMouseEvent&>(event));
            return true;
        case QEvent::MouseButtonDblClick:
            doubleClick(static_cast<QMouseEvent&>(event));
            return true;
        case QEvent::MouseMove:
            parts_.pointer.move(static_cast<QMouseEvent&>(event));
            return true;
        case QEvent::MouseButtonRelease:
            parts_.pointer.release(static_cast<QMouseEvent&>(event));
            return true;
        case QEvent::Wheel:
            parts_.wheel.turn(static_cast<QWheelEvent&>(event));
            return true;
        case QEvent::TouchBegin:
        case QEvent::TouchUpdate:
        case QEvent::TouchEnd:
        case QEvent::TouchCancel:
            event.setAccepted(parts_.fingers.touch(static_cast<QTouchEvent&>(event)));
            return event.isAccepted();
        case QEvent::ContextMenu:
            return openMenu(event);
        case QEvent::Leave:
            leave();
            return false;
        default:
            return false;
    }
}

void ViewEvents::takeKey(QKeyEvent& event) {
    const bool isPress = event.type() == QEvent::KeyPress;
    event.setAccepted(isPress ? parts_.keyboard.press(event) : parts_.keyboard.release(event));
}

bool ViewEvents::openMenu(QEvent& event) {
    // While projecting the right button draws.
    if (!parts_.room.isProjecting()) parts_.menu.open(static_cast<QContextMenuEvent&>(event));
    return true;
}

void ViewEvents::focusIn(const QFocusEvent& event) {
    // Whoever comes by the keyboard must see where it is.
    if (event.reason() == Qt::TabFocusReason || event.reason() == Qt::BacktabFocusReason) parts_.cursor.restore();
}

void ViewEvents::focusOut() {
    parts_.keyboard.loseFocus();
    parts_.fingers.forget();
    parts_.hand.releaseAll();
    parts_.cursor.hide();
}

void ViewEvents::doubleClick(const QMouseEvent& event) {
    const std::string note = parts_.hovering.under(event.position()).note;
    if (!note.empty()) return parts_.notes.edit(note);
    parts_.pointer.press(event);  // two quick presses of a button are two presses
}

void ViewEvents::leave() {
    if (!parts_.gestures.isUnderWay()) parts_.marks.clearHover();
    if (parts_.room.isProjecting()) parts_.frame.follow();
}

}  // namespace tiepoint::ui
