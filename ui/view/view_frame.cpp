#include "ui/view/view_frame.h"

#include "ui/paint/note_places.h"
#include "ui/paint/shade.h"
#include "ui/view/cell_grid.h"

#include <QBackingStore>
#include <QPaintEngine>

#include <utility>

namespace tiepoint::ui {
namespace {

constexpr double kLabelRoomMm = 25;  ///< flags and shadows reach so far beyond boards and bodies
constexpr double kTagRoomEm = 3;     ///< and tags that stand there
constexpr int kWaitMs = 16;          ///< how long a frame waits for the answer to an edit

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

ViewFrame::ViewFrame(const Needs& needs) : needs_(needs) {
    waiting_.setSingleShot(true);
    waiting_.setInterval(kWaitMs);
    connect(&waiting_, &QTimer::timeout, this, &ViewFrame::resume);
}

Frame ViewFrame::frame() const {
    const QTransform toPixels = needs_.view.viewportTransform();
    const double ratio = needs_.view.devicePixelRatioF();
    return {toPixels.m11() * ratio, (QPointF(toPixels.dx(), toPixels.dy()) * ratio).toPoint(),
            (QSizeF(viewport().size()) * ratio).toSize(), ratio, contentMm()};
}

QRectF ViewFrame::contentMm() const {
    const Picture& picture = needs_.picture;
    if (content_.layout != picture.layout || content_.table != picture.table || content_.sizes != picture.sizes) {
        const double room = kLabelRoomMm + kTagRoomEm * picture.sizes.readingMm;
        content_ = {picture.layout, picture.table, picture.sizes,
                    toQt(picture.table->allMm).united(notesArea(picture)).adjusted(-room, -room, room, room)};
    }
    return content_.mm;
}

void ViewFrame::hold() {
    // The answer to an edit is there within a millisecond or two; until then the old frame stays, rather than one without marks.
    if (!waiting_.isActive()) waiting_.start();
    viewport().setUpdatesEnabled(false);
}

void ViewFrame::resume() {
    waiting_.stop();
    if (!viewport().updatesEnabled()) viewport().setUpdatesEnabled(true);
}

void ViewFrame::follow() {
    // Several marks may change before the frame; what they change is found once, and only that is painted.
    if (std::exchange(isFollowing_, true)) return;
    QMetaObject::invokeMethod(this, &ViewFrame::update, Qt::QueuedConnection);
}

void ViewFrame::update() {
    isFollowing_ = false;
    if (!needs_.view.isVisible() || !viewport().updatesEnabled()) return;
    if (needs_.camera.isZooming() || needs_.room.ink().changes() != inkDrawn_) return followAll();
    followCanvas();
    const QPoint slide = canvas_.takeSlide();
    // The ring for the room stays with the pointer while the bench slides.
    if ((!slide.isNull() && !ringDrawn_.isEmpty()) || !slideScreen(slide)) return followAll();
    viewport().update(takeStale());
}

QRegion ViewFrame::takeStale() {
    const QRegion stale = scaled(canvas_.takeStale(), 1 / needs_.view.devicePixelRatioF());
    const QRect ring = needs_.room.ring().rect();
    return ring == ringDrawn_ ? stale : stale | ring | ringDrawn_;
}

/// Moves what is on the screen; false if it can't be moved by whole logical pixels.
bool ViewFrame::slideScreen(QPoint device) {
    const double ratio = needs_.view.devicePixelRatioF();
    const QPoint logical = (QPointF(device) / ratio).toPoint();
    if (QPointF(logical) * ratio != QPointF(device)) return false;
    if (!logical.isNull()) viewport().scroll(logical.x(), logical.y());
    return true;
}

void ViewFrame::followTable() {
    const QWidget& window = *needs_.view.window();
    canvas_.setTableArea(toDevice(QRectF(viewport().mapFrom(&window, QPoint(0, 0)), window.size())));
}

void ViewFrame::followCanvas() {
    followTable();
    canvas_.update(needs_.picture, frame(), needs_.scene, needs_.marks.litNets());
}

QRect ViewFrame::toDevice(const QRectF& logical) const {
    const double ratio = needs_.view.devicePixelRatioF();
    return QRectF(logical.topLeft() * ratio, logical.size() * ratio).toAlignedRect();
}

void ViewFrame::paint(QPainter& painter, const QRegion& exposed) {
    if (needs_.camera.isZooming()) {
        followTable();
        canvas_.showTable(painter, viewport().rect());
        needs_.camera.paintStill(painter);
        return;
    }
    followCanvas();
    canvas_.show(painter, scaled(exposed, needs_.view.devicePixelRatioF()));
    QBackingStore* store = needs_.view.window()->backingStore();
    // Else a picture is taken, and the screen stays as it is.
    if (store && painter.paintEngine()->paintDevice() == store->paintDevice()) followScreen(exposed);
    needs_.room.ink().draw(painter, needs_.picture, needs_.view.viewportTransform(), viewport().size());
    needs_.room.ring().paint(painter, *needs_.picture.theme);
}

/// What has changed beyond what was asked for follows in a frame of its own.
void ViewFrame::followScreen(const QRegion& exposed) {
    const bool whole = !canvas_.takeSlide().isNull() || needs_.room.ink().changes() != inkDrawn_;
    const QRegion stale = takeStale();
    if (const QRegion left = (whole ? QRegion(viewport().rect()) : stale) - exposed; !left.isEmpty())
        viewport().update(left);
    ringDrawn_ = needs_.room.ring().rect();
    inkDrawn_ = needs_.room.ink().changes();
}

}  // namespace tiepoint::ui
