#include "ui/view/camera.h"

#include "ui/view/large_pages.h"

#include <QPainter>
#include <QScrollBar>

#include <algorithm>
#include <cmath>

namespace tiepoint::ui {
namespace {

constexpr int kSettleMs = 80;
constexpr double kStep = 1.25;  ///< about eight steps from the whole bench to a few holes
constexpr int kFewestSteps = -3, kMostZoomSteps = 9;
constexpr double kFitMarginShare = 0.02;
constexpr double kPanRoomMm = 400;  ///< how far the bench can be panned off

/// What a widget shows, in memory that goes back to the system with it.
QImage stillOf(QWidget& widget) {
    const double ratio = widget.devicePixelRatioF();
    const QSize size = (QSizeF(widget.size()) * ratio).toSize();
    QRgb* pixels =
        largePixels(static_cast<std::size_t>(size.width()) * static_cast<std::size_t>(size.height())).release();
    QImage still(
        reinterpret_cast<uchar*>(pixels), size.width(), size.height(),
        static_cast<qsizetype>(size.width()) * static_cast<qsizetype>(sizeof(QRgb)), QImage::Format_RGB32,
        [](void* memory) { FreePixels()(static_cast<QRgb*>(memory)); }, pixels);
    still.setDevicePixelRatio(ratio);
    widget.render(&still);
    return still;
}

}  // namespace

Camera::Camera(QGraphicsView& view) : QObject(&view), view_(view) {
    settling_.setSingleShot(true);
    settling_.setInterval(kSettleMs);
    connect(&settling_, &QTimer::timeout, this, &Camera::settle);
}

Point Camera::toMm(QPointF inView) const {
    const QPointF mm = view_.viewportTransform().inverted().map(inView);
    return {mm.x(), mm.y()};
}

QPointF Camera::fromMm(Point mm) const { return view_.viewportTransform().map(QPointF(mm.x, mm.y)); }

double Camera::scaleToFit(const QRectF& areaMm) const {
    const QSize size = view_.viewport()->size();
    const double room = 1 - 2 * kFitMarginShare;
    if (areaMm.isEmpty() || size.isEmpty()) return 1;
    return std::max(0.1, room * std::min(size.width() / areaMm.width(), size.height() / areaMm.height()));
}

void Camera::setScale(double pixelsPerMm) { view_.setTransform(QTransform::fromScale(pixelsPerMm, pixelsPerMm)); }

void Camera::fit(const QRectF& areaMm) {
    area_ = areaMm;
    fitted_ = true;
    still_ = {};
    settling_.stop();
    view_.setSceneRect(area_.adjusted(-kPanRoomMm, -kPanRoomMm, kPanRoomMm, kPanRoomMm));
    setScale(scaleToFit(area_));
    view_.centerOn(area_.center());
    Q_EMIT moved();
}

void Camera::refit(const QRectF& areaMm) {
    if (fitted_ && !area_.isEmpty()) fit(areaMm);
}

void Camera::include(const QRectF& areaMm) {
    if (area_.contains(areaMm)) return;
    if (fitted_) return fit(areaMm);
    area_ = area_.united(areaMm);
    view_.setSceneRect(area_.adjusted(-kPanRoomMm, -kPanRoomMm, kPanRoomMm, kPanRoomMm));
}

void Camera::holdAt(QPointF at, QPointF mm) {
    const QPointF now = view_.viewportTransform().map(mm);
    view_.horizontalScrollBar()->setValue(view_.horizontalScrollBar()->value() +
                                          static_cast<int>(std::lround(now.x() - at.x())));
    view_.verticalScrollBar()->setValue(view_.verticalScrollBar()->value() +
                                        static_cast<int>(std::lround(now.y() - at.y())));
}

void Camera::zoomAt(QPointF at, double factor) {
    const double fit = scaleToFit(area_);
    const double scale =
        std::clamp(pixelsPerMm() * factor, fit * std::pow(kStep, kFewestSteps), fit * std::pow(kStep, kMostZoomSteps));
    if (scale == pixelsPerMm()) return;
    if (!isZooming()) {
        still_ = stillOf(*view_.viewport());
        stillFrom_ = view_.viewportTransform();
    }
    fitted_ = false;
    zoomAt_ = at;
    const QPointF mm = view_.viewportTransform().inverted().map(at);
    setScale(scale);
    holdAt(at, mm);
    settling_.start();
    view_.viewport()->update();
    Q_EMIT moved();
}

void Camera::settle() {
    settling_.stop();
    if (!isZooming()) return;
    still_ = {};
    // Fine wheels and pinches end on a step, so that few scales are ever drawn.
    const double fit = scaleToFit(area_);
    const double snapped = fit * std::pow(kStep, std::round(std::log(pixelsPerMm() / fit) / std::log(kStep)));
    const QPointF mm = view_.viewportTransform().inverted().map(zoomAt_);
    setScale(snapped);
    holdAt(zoomAt_, mm);
    view_.viewport()->update();
    Q_EMIT moved();
    Q_EMIT settled();
}

void Camera::panBy(QPointF pixels) {
    fitted_ = false;
    view_.horizontalScrollBar()->setValue(view_.horizontalScrollBar()->value() -
                                          static_cast<int>(std::lround(pixels.x())));
    view_.verticalScrollBar()->setValue(view_.verticalScrollBar()->value() - static_cast<int>(std::lround(pixels.y())));
    Q_EMIT moved();
}

void Camera::paintStill(QPainter& painter) const {
    painter.setRenderHint(QPainter::SmoothPixmapTransform, false);
    painter.setTransform(stillFrom_.inverted() * view_.viewportTransform(), true);
    painter.drawImage(0, 0, still_);
}

}  // namespace tiepoint::ui
