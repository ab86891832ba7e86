#include "ui/gesture/band_gesture.h"

#include "ui/gesture/selecting.h"
#include "ui/paint/bench_painter.h"

#include <algorithm>

namespace tiepoint::ui {
namespace {

QStringList touched(const Picture& picture, const QRectF& band) {
    QStringList ids;
    for (std::size_t i = 0; i < picture.bench().parts.size(); ++i) {
        // The body counts, not its leads: a supply's cables reach over half the bench.
        const Outline& body = picture.table->parts[i].pose.body;
        const double reach = std::max(body.halfLength, body.halfWidth);
        const QRectF around(body.centre.x - reach, body.centre.y - reach, 2 * reach, 2 * reach);
        if (band.intersects(around)) ids << QString::fromStdString(picture.bench().parts[i].id);
    }
    for (std::size_t i = 0; i < picture.bench().jumpers.size(); ++i) {
        if (jumperShape(picture, static_cast<int>(i)).intersects(band))
            ids << QString::fromStdString(picture.bench().jumpers[i].id);
    }
    return ids;
}

}  // namespace

void BandGesture::press(const Pointer& pointer) {
    from_ = pointer.at;
    if (pointer.modifiers & (Qt::ShiftModifier | Qt::ControlModifier)) before_ = hand().selection();
}

void BandGesture::move(const Pointer& pointer) {
    const QRectF band = QRectF(QPointF(from_.x, from_.y), QPointF(pointer.at.x, pointer.at.y)).normalized();
    hand().setBand(band);
    QStringList ids = before_;
    for (const QString& id : touched(hand().picture(), band)) {
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
