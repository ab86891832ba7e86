// The frame of the view: what of the screen has to be painted anew, and painting it: the bench, ink on it, and the ring about the pointer.

#include "ui/gesture/ink_gesture.h"
#include "ui/paint/shade.h"
#include "ui/view/bench_view_body.h"
#include "ui/view/cell_grid.h"

#include <QBackingStore>
#include <QPaintEngine>

#include <utility>

namespace tiepoint::ui {
namespace {

constexpr double kLabelRoomMm = 25;  ///< flags, tags and shadows reach so far beyond boards and bodies
constexpr double kRingRadiusShare = 1.0 / 32, kRingBreadthShare = 1.0 / 200;  ///< of the window's height

/// A region of hundreds of rectangles in other pixels; a little more than it where they don't fit whole.
QRegion scaled(const QRegion& region, double factor) {
    if (factor == 1) return region;
    constexpr int kCell = 8;
    std::vector<QRect> rects;
    CellGrid cells(
        QRectF(QPointF(region.boundingRect().topLeft()) * factor, QSizeF(region.boundingRect().size()) * factor)
            .toAlignedRect(),
        kCell);
    bool isWhole = true;
    for (const QRect& rect : region) {
        const QRectF exact(QPointF(rect.topLeft()) * factor, QSizeF(rect.size()) * factor);
        rects.push_back(exact.toAlignedRect());
        isWhole = isWhole && QRectF(rects.back()) == exact;
    }
    QRegion result;
    if (isWhole) {
        result.setRects(rects.data(), static_cast<int>(rects.size()));  // as ordered as the region's own
        return result;
    }
    for (const QRect& rect : rects) cells.add(rect);
    return cells.region();
}

}  // namespace

Frame BenchView::Body::frame() const {
    const QTransform toPixels = view_.viewportTransform();
    const QRectF content =
        toQt(picture_.table->allMm).adjusted(-kLabelRoomMm, -kLabelRoomMm, kLabelRoomMm, kLabelRoomMm);
    const double ratio = view_.devicePixelRatioF();
    return {toPixels.m11() * ratio, (QPointF(toPixels.dx(), toPixels.dy()) * ratio).toPoint(),
            (QSizeF(view_.viewport()->size()) * ratio).toSize(), ratio, content};
}

void BenchView::Body::showMarks() {
    // Several marks may change before the frame; what they change is found once, and only that is painted.
    if (std::exchange(isFollowing_, true)) return;
    QMetaObject::invokeMethod(
        &motion_,
        [this] {
            isFollowing_ = false;
            if (!view_.isVisible() || !view_.viewport()->updatesEnabled()) return;
            if (camera_.isZooming() || ink_.changes() != inkDrawn_) return view_.viewport()->update();
            followCanvas();
            const QPoint slide = canvas_.takeSlide();
            // The ring for the room stays with the pointer while the bench slides.
            if ((!slide.isNull() && !ringDrawn_.isEmpty()) || !slideScreen(slide)) return view_.viewport()->update();
            view_.viewport()->update(takeStale());
        },
        Qt::QueuedConnection);
}

QRegion BenchView::Body::takeStale() {
    const QRegion stale = toLogical(canvas_.takeStale());
    const QRect ring = pointerRing();
    return ring == ringDrawn_ ? stale : stale | ring | ringDrawn_;
}

/// Moves what is on the screen; false if it can't be moved by whole logical pixels.
bool BenchView::Body::slideScreen(QPoint device) {
    const QPoint logical = (QPointF(device) / view_.devicePixelRatioF()).toPoint();
    if (QPointF(logical) * view_.devicePixelRatioF() != QPointF(device)) return false;
    if (!logical.isNull()) view_.viewport()->scroll(logical.x(), logical.y());
    return true;
}

QRect BenchView::Body::pointerRing() const {
    if (!projecting_ || !view_.viewport()->underMouse()) return {};
    const double reach = (kRingRadiusShare + 1.5 * kRingBreadthShare) * view_.viewport()->height();
    return QRectF(lastAt_, QSizeF()).adjusted(-reach, -reach, reach, reach).toAlignedRect();
}

void BenchView::Body::paintPointerRing(QPainter& painter) const {
    if (pointerRing().isEmpty()) return;
    const double radius = kRingRadiusShare * view_.viewport()->height(),
                 breadth = kRingBreadthShare * view_.viewport()->height();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(picture_.theme->arrowCasing, 2 * breadth));
    painter.drawEllipse(lastAt_, radius, radius);
    painter.setPen(QPen(picture_.theme->accent, breadth));
    painter.drawEllipse(lastAt_, radius, radius);
}

void BenchView::Body::followTable() {
    canvas_.setTableArea(
        toDevice(QRectF(view_.viewport()->mapFrom(view_.window(), QPoint(0, 0)), view_.window()->size())));
}

void BenchView::Body::followCanvas() {
    followTable();
    canvas_.update(picture_, frame(), scene_, litNets_);
}

QRect BenchView::Body::toDevice(const QRectF& logical) const {
    const double ratio = view_.devicePixelRatioF();
    return QRectF(logical.topLeft() * ratio, logical.size() * ratio).toAlignedRect();
}

QRegion BenchView::Body::toLogical(const QRegion& device) const {
    return scaled(device, 1 / view_.devicePixelRatioF());
}

void BenchView::Body::paint(QPainter& painter, const QRegion& exposed) {
    if (camera_.isZooming()) {
        followTable();
        canvas_.showTable(painter, view_.viewport()->rect());
        camera_.paintStill(painter);
        return;
    }
    followCanvas();
    canvas_.show(painter, scaled(exposed, view_.devicePixelRatioF()));
    QBackingStore* store = view_.window()->backingStore();
    if (store && painter.paintEngine()->paintDevice() ==
                     store->paintDevice()) {  // else a picture is taken, and the screen stays as it is
        // What has changed meanwhile beyond what was asked for follows in a frame of its own.
        const bool whole = !canvas_.takeSlide().isNull() || ink_.changes() != inkDrawn_;
        const QRegion stale = takeStale();
        if (const QRegion left = (whole ? QRegion(view_.viewport()->rect()) : stale) - exposed; !left.isEmpty())
            view_.viewport()->update(left);
        ringDrawn_ = pointerRing();
        inkDrawn_ = ink_.changes();
    }
    ink_.draw(painter, picture_, view_.viewportTransform(), view_.viewport()->size(),
              dynamic_cast<const InkGesture*>(gesture_.get()) != nullptr);
    paintPointerRing(painter);
    if (motion_.isMoving()) canvas_.prewarm();
}

void BenchView::Body::tick() {
    picture_.phaseMm = motion_.phaseMm();
    showMarks();
}

}  // namespace tiepoint::ui
