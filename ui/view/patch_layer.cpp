#include "ui/view/patch_layer.h"

#include "ui/paint/pixel_sheet.h"
#include "ui/paint/stamp.h"

#include <algorithm>
#include <cmath>
#include <cstring>
#include <iterator>
#include <utility>

namespace tiepoint::ui {
namespace {

constexpr int kChangeCell = 8;   ///< pixels; changes are gathered in cells, so that few rectangles are left
constexpr int kFilledCell = 16;
constexpr int kPartsOfPixel = 8;

QRectF inPixels(const QRectF& mm, double pixelsPerMm) {
    // One pixel more on each side, for smooth edges.
    return QRectF(mm.topLeft() * pixelsPerMm, mm.size() * pixelsPerMm).adjusted(-1, -1, 1, 1);
}

int areaOf(const QRect& rect) { return rect.width() * rect.height(); }

/// What is kept from now on for a sight: a margin only on the sides to which it has moved, so that what comes to lie still isn't painted
/// wider than it is seen. `room`: the sight with margins on all sides.
QRect roomFor(const QRect& sight, const QRect& room, const QRect& before) {
    if (!before.intersects(sight)) return sight;
    return QRect(QPoint(sight.left() < before.left() ? room.left() : std::max(room.left(), before.left()),
                        sight.top() < before.top() ? room.top() : std::max(room.top(), before.top())),
                 QPoint(sight.right() > before.right() ? room.right() : std::min(room.right(), before.right()),
                        sight.bottom() > before.bottom() ? room.bottom() : std::min(room.bottom(), before.bottom())));
}

/// Joins rectangles where painting them together costs little more than one by one.
std::vector<QRect> joined(const QRegion& region) {
    constexpr double kMostMore = 1.25;
    constexpr int kForFree = 64 * 64;  // pixels cost less than beginning anew
    std::vector<QRect> rects(region.begin(), region.end());
    for (std::size_t i = 0; i < rects.size(); ++i) {
        for (std::size_t k = i + 1; k < rects.size();) {
            const QRect both = rects[i] | rects[k];
            if (areaOf(both) > kMostMore * (areaOf(rects[i]) + areaOf(rects[k])) + kForFree) {
                ++k;
                continue;
            }
            rects[i] = both;
            rects.erase(rects.begin() + static_cast<std::ptrdiff_t>(k));
            k = i + 1;  // the larger one may reach what the smaller didn't
        }
    }
    return rects;
}

}  // namespace

PatchLayer::Key PatchLayer::keyOf(const Patch& patch) const {
    const auto rounded = [&](double mm) { return static_cast<int>(std::lround(mm * pixelsPerMm_ * kPartsOfPixel)); };
    return {patch.look.value(), {rounded(patch.mm.left()), rounded(patch.mm.top()), rounded(patch.mm.right()), rounded(patch.mm.bottom())}};
}

QRectF PatchLayer::Key::pixels() const {
    const auto at = [&](std::size_t i) { return static_cast<double>(place[i]) / kPartsOfPixel; };
    return QRectF(QPointF(at(0), at(1)), QPointF(at(2), at(3))).adjusted(-1, -1, 1, 1);
}

void PatchLayer::clear() {
    pixels_.clear();
    room_ = {};
    keys_.clear();
    opaque_ = {};
    filled_ = {};
    stamps_.clear();
}

void PatchLayer::take(Patches patches, const QRect& sight, const QRect& room, double pixelsPerMm) {
    patches_ = std::move(patches);
    changed_ = unpainted_ = {};
    if (pixelsPerMm != pixelsPerMm_) clear();
    pixelsPerMm_ = pixelsPerMm;
    const std::vector<Key> differing = followKeys();
    const bool wasKnown = !room_.isEmpty();
    if (!sight.isEmpty() && !room_.contains(sight)) room_ = roomFor(sight, room, room_);
    if (const QRect needed = extent() & room_; !needed.isEmpty() && !pixels_.area().contains(needed)) reach(needed | (pixels_.area() & room_), room.size());
    if (wasKnown) changed_ = cellsOf(differing);  // else all of it is new
    unpainted_ = (unpainted_ | changed_) & pixels_.area();
    changed_ &= sight;
    if (under_) {
        unpainted_ |= under_->unpainted_ & pixels_.area();
        changed_ |= under_->changed_;
    }
    if (unpainted_.isEmpty()) patches_.clear();
}

std::vector<PatchLayer::Key> PatchLayer::followKeys() {
    std::vector<Key> keys, differing;
    keys.reserve(patches_.size());
    for (const Patch& patch : patches_) keys.push_back(keyOf(patch));
    std::sort(keys.begin(), keys.end());
    std::set_symmetric_difference(keys_.begin(), keys_.end(), keys.begin(), keys.end(), std::back_inserter(differing));
    keys_ = std::move(keys);
    if (differing.empty()) return differing;
    opaque_ = {};
    for (const Patch& patch : patches_) {
        // Only whole pixels within are surely covered.
        if (!patch.opaque.isEmpty()) opaque_ |= inPixels(patch.opaque, pixelsPerMm_).adjusted(2, 2, -2, -2).toRect();
    }
    return differing;
}

QRegion PatchLayer::cellsOf(const std::vector<Key>& keys) const {
    if (keys.empty()) return {};
    CellGrid cells(room_ | pixels_.area(), kChangeCell);  // pixels beyond the room are still kept where they are
    for (const Key& key : keys) cells.add(key.pixels());
    return cells.region();
}

QRect PatchLayer::extent() const {
    QRectF all;
    for (const Key& key : keys_) all |= key.pixels();
    return under_ ? all.toAlignedRect() | under_->pixels_.area() : all.toAlignedRect();
}

void PatchLayer::reach(const QRect& area, const QSize& most) {
    if (area == pixels_.area()) return;
    unpainted_ = QRegion(area) - pixels_.area();
    pixels_.reach(area, most);
    const CellGrid before = std::exchange(filled_, CellGrid(area, kFilledCell));
    for (const QRect& rect : before.region()) filled_.add(QRectF(rect & area).adjusted(0, 0, -1, -1));
}

std::vector<std::function<void()>> PatchLayer::preparations() {
    std::vector<const Patch*> wanted;
    for (const Patch& patch : patches_)
        if (patch.movable && unpainted_.intersects(inPixels(patch.mm, pixelsPerMm_).toAlignedRect())) wanted.push_back(&patch);
    return stamps_.prepare(wanted, pixelsPerMm_);
}

void PatchLayer::paint() {
    for (const QRect& rect : joined(unpainted_)) {
        paintOver(rect);
        filled_.ask(rect, [this](const QRect& cell) { return !isEmpty(cell & pixels_.area()); });
    }
    patches_.clear();
    stamps_.trim();
}

void PatchLayer::paintOver(const QRect& rect) {
    PixelSheet sheet(pixels_.image());
    QPainter painter(&sheet);
    painter.translate(-pixels_.area().topLeft());
    painter.setClipRect(rect);
    painter.setCompositionMode(QPainter::CompositionMode_Source);
    painter.fillRect(rect, Qt::transparent);
    if (under_) painter.drawImage(rect.topLeft(), under_->pixels_.image(), (rect & under_->pixels_.area()).translated(-under_->pixels_.area().topLeft()));
    painter.setCompositionMode(QPainter::CompositionMode_SourceOver);
    painter.setRenderHint(QPainter::Antialiasing);
    const QRect inImage = rect.translated(-pixels_.area().topLeft());
    const QTransform inMm = QTransform(painter.transform()).scale(pixelsPerMm_, pixelsPerMm_);
    for (const Patch& patch : patches_) {
        if (!inPixels(patch.mm, pixelsPerMm_).intersects(rect)) continue;
        if (!patch.movable) {
            painter.setTransform(inMm);
            patch.paint(painter);
        } else if (!stamps_.lay(pixels_.image(), inImage, -pixels_.area().topLeft(), patch, pixelsPerMm_)) {
            const QPointF shift = PatchStamps::roundedCorner(patch, pixelsPerMm_) - patch.mm.topLeft() * pixelsPerMm_;
            painter.setTransform(inMm * QTransform::fromTranslate(shift.x(), shift.y()));
            patch.paint(painter);
        }
    }
    paintedPixels_ += areaOf(rect);
}

bool PatchLayer::isEmpty(const QRect& rect) const {
    const QRect inside = rect.translated(-pixels_.area().topLeft());
    for (int y = inside.top(); y <= inside.bottom(); ++y) {
        const auto* line = reinterpret_cast<const QRgb*>(pixels_.image().constScanLine(y)) + inside.left();
        if (std::any_of(line, line + inside.width(), [](QRgb pixel) { return pixel != 0; })) return false;
    }
    return true;
}

template <class Row>
void PatchLayer::forRows(QImage& target, const QRect& rect, QPoint toTarget, Row row) const {
    for (int y = rect.top(); y <= rect.bottom(); ++y) {
        row(reinterpret_cast<QRgb*>(target.scanLine(y + toTarget.y())) + rect.left() + toTarget.x(),
            reinterpret_cast<const QRgb*>(pixels_.image().constScanLine(y - pixels_.area().top())) + rect.left() - pixels_.area().left(), rect.width());
    }
}

void PatchLayer::lay(QImage& target, const QRect& rect, QPoint toTarget) const {
    filled_.forTaken(rect & pixels_.area(), [&](const QRect& filled) { forRows(target, filled, toTarget, layOver); });
}

void PatchLayer::copy(QImage& target, const QRect& rect, QPoint toTarget) const {
    forRows(target, rect & pixels_.area(), toTarget, [](QRgb* to, const QRgb* from, int count) { std::memcpy(to, from, static_cast<std::size_t>(count) * sizeof(QRgb)); });
}

}  // namespace tiepoint::ui
