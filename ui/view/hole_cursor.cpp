#include "ui/view/hole_cursor.h"

#include "core/edit/neighbour.h"
#include "core/edit/placement.h"

#include <algorithm>

namespace tiepoint::ui {
namespace {

constexpr int kSightPixels = 40;  ///< the cursor keeps this far from the edges of the view
constexpr double kAnywhereMm = 1e6;

}  // namespace

void HoleCursor::show(const Hole& hole) {
    const Point at = picture_.seenAt(hole);
    const bool isAnother = picture_.marks.cursor != hole;
    marks_.marks().cursor = kept_ = hole;
    bringIntoSight(at);
    if (!gestures_.isUnderWay()) {
        const auto occupant = occupantOf(picture_.bench(), hole);
        marks_.setHover(picture_.layout->netOfHole(picture_.layout->holeIndex(hole)), at,
                        occupant ? occupant->id : std::string());
    }
    marks_.show();
    if (isAnother) Q_EMIT moved();
}

void HoleCursor::bringIntoSight(Point at) {
    const QRectF sight = camera_.sight().adjusted(kSightPixels, kSightPixels, -kSightPixels, -kSightPixels);
    const QPointF in = camera_.fromMm(at);
    const QPointF inside(std::clamp(in.x(), sight.left(), std::max(sight.left(), sight.right())),
                         std::clamp(in.y(), sight.top(), std::max(sight.top(), sight.bottom())));
    if (inside != in) camera_.panBy(inside - in);
}

void HoleCursor::hide() {
    if (!picture_.marks.cursor) return;
    marks_.marks().cursor.reset();
    marks_.clearHover();
    marks_.show();
    Q_EMIT moved();
}

void HoleCursor::restore() {
    if (picture_.marks.cursor) return;
    const Point middle = camera_.toMm(camera_.sight().center());
    const auto hole = kept_ ? kept_ : nearestHole(picture_.bench(), picture_.table->seen(middle), kAnywhereMm);
    if (hole) show(*hole);
}

void HoleCursor::walk(int columns, int rows) {
    if (!picture_.marks.cursor) return restore();
    if (const auto next = neighbourHole(picture_.bench(), *picture_.marks.cursor, columns, rows)) show(*next);
}

void HoleCursor::followBench() {
    if (picture_.marks.cursor && !holeMm(picture_.bench(), *picture_.marks.cursor)) hide();
    if (kept_ && !holeMm(picture_.bench(), *kept_)) kept_.reset();
}

}  // namespace tiepoint::ui
