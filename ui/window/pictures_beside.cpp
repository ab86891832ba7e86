#include "ui/window/pictures_beside.h"

#include <utility>

namespace tiepoint::ui {

PicturesBeside::PicturesBeside(QObject* parent) : QObject(parent) {
    pool_.setMaxThreadCount(1);
    pool_.setThreadPriority(QThread::LowPriority);
}

PicturesBeside::~PicturesBeside() {
    going_ = true;
    pool_.clear();
    pool_.waitForDone();
}

void PicturesBeside::order(const Fill& fill, const Take& take) {
    pool_.start([this, fill, take] {
        if (going_) return;
        const Miniature picture = fill();
        if (picture.isEmpty()) return;
        QMetaObject::invokeMethod(
            this, [take, image = paintMiniature(picture)] { take(image); }, Qt::QueuedConnection);
    });
}

}  // namespace tiepoint::ui
