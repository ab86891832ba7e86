#include "ui/view/cached_layer.h"

#include <QImage>

#include <algorithm>

namespace tiepoint::ui {
namespace {

constexpr int kTilePixels = 128;     ///< small enough to skip the empty ground between marks
constexpr int kMarginShare = 8;      ///< of the viewport's size, on each side, so that a pan doesn't paint at once

/// What of the content is in sight, in logical pixels from the bench's origin.
QRect contentInSight(const Frame& frame, int marginX, int marginY) {
    const QRect sight = QRect(-frame.origin, frame.viewport).adjusted(-marginX, -marginY, marginX, marginY);
    return sight & QTransform::fromScale(frame.pixelsPerMm, frame.pixelsPerMm).mapRect(frame.contentMm).toAlignedRect();
}

bool isEmpty(const QImage& image, const QRect& rect) {
    for (int y = rect.top(); y <= rect.bottom(); ++y) {
        const auto* line = reinterpret_cast<const QRgb*>(image.constScanLine(y)) + rect.left();
        if (std::any_of(line, line + rect.width(), [](QRgb pixel) { return pixel != 0; })) return false;
    }
    return true;
}

}  // namespace

void CachedLayer::draw(QPainter& painter, const Frame& frame, const QByteArray& key, const std::function<void(QPainter&)>& paint) {
    const QRect visible = contentInSight(frame, 0, 0);
    const bool fits = key == key_ && frame.pixelsPerMm == pixelsPerMm_ && frame.devicePixelRatio == devicePixelRatio_ && (visible.isEmpty() || area_.contains(visible));
    if (!fits) {
        key_ = key;
        rebuild(frame, paint);
    }
    for (const Tile& tile : tiles_) painter.drawPixmap(tile.at + frame.origin, tile.pixels);
}

void CachedLayer::rebuild(const Frame& frame, const std::function<void(QPainter&)>& paint) {
    ++paintings_;
    pixelsPerMm_ = frame.pixelsPerMm;
    devicePixelRatio_ = frame.devicePixelRatio;
    const int marginX = frame.viewport.width() / kMarginShare, marginY = frame.viewport.height() / kMarginShare;
    area_ = contentInSight(frame, marginX, marginY);
    tiles_.clear();
    if (area_.isEmpty()) return;
    QImage image((QSizeF(area_.size()) * devicePixelRatio_).toSize(), QImage::Format_ARGB32_Premultiplied);
    image.setDevicePixelRatio(devicePixelRatio_);
    image.fill(Qt::transparent);
    {
        QPainter painter(&image);
        painter.setRenderHint(QPainter::Antialiasing);
        painter.translate(-area_.topLeft());
        painter.scale(pixelsPerMm_, pixelsPerMm_);
        paint(painter);
    }
    for (int y = 0; y < area_.height(); y += kTilePixels) {
        // Neighbours that hold something become one wide tile.
        QRect run;
        const auto flush = [&] {
            if (run.isEmpty()) return;
            const QRect onDevice = QRectF(QPointF(run.topLeft()) * devicePixelRatio_, QSizeF(run.size()) * devicePixelRatio_).toRect();
            QPixmap pixels = QPixmap::fromImage(image.copy(onDevice));
            pixels.setDevicePixelRatio(devicePixelRatio_);
            tiles_.push_back({area_.topLeft() + run.topLeft(), std::move(pixels)});
            run = {};
        };
        for (int x = 0; x < area_.width(); x += kTilePixels) {
            const QRect cell = QRect(x, y, kTilePixels, kTilePixels) & QRect(QPoint(0, 0), area_.size());
            const QRect onDevice = QRectF(QPointF(cell.topLeft()) * devicePixelRatio_, QSizeF(cell.size()) * devicePixelRatio_).toRect() & image.rect();
            if (isEmpty(image, onDevice)) {
                flush();
            } else {
                run |= cell;
            }
        }
        flush();
    }
}

}  // namespace tiepoint::ui
