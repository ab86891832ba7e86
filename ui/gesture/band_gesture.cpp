#include "ui/gesture/band_gesture.h"

#include "ui/gesture/selecting.h"

namespace tiepoint::ui {

void BandGesture::press(const Pointer& pointer) {
    from_ = pointer.at;
    if (pointer.modifiers & (Qt::ShiftModifier | Qt::ControlModifier)) before_ = hand().selection();
}

void BandGesture::move(const Pointer& pointer) {
    const QRectF band = QRectF(QPointF(from_.x, from_.y), QPointF(pointer.at.x, pointer.at.y)).normalized();
    hand().setBand(band);
    QStringList ids = before_;
    for (const QString& id : hand().touchedBy(band)) {
        if (!ids.contains(id)) ids << id;
    }
    hand().setSelection(ids);
}

void BandGesture::release(const Pointer& pointer) {
    if (!pointer.dragged) selectByClick(hand(), {}, pointer.modifiers);
    hand().setBand(std::nullopt);
    finish();
}

void BandGesture::cancel() {
    hand().setBand(std::nullopt);
    hand().setSelection(before_);
}

}  // namespace tiepoint::ui
