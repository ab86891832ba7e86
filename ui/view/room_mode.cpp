#include "ui/view/room_mode.h"

namespace tiepoint::ui {

void RoomMode::setProjecting(bool projecting) {
    if (projecting == isProjecting()) return;
    ring_.setShown(projecting);
    Q_EMIT projectingChanged();
}

Qt::MouseButtons RoomMode::inkingButtons() const {
    return (inking_ ? Qt::LeftButton : Qt::NoButton) | (isProjecting() ? Qt::RightButton : Qt::NoButton);
}

void RoomMode::wipeInk() {
    ink_.wipe();
    Q_EMIT inkWiped();
}

}  // namespace tiepoint::ui
