#include "ui/view/patch_layer.h"

#include "ui/paint/pixel_sheet.h"
#include "ui/view/cell_grid.h"
#include "ui/view/thread_sheet.h"

#include <algorithm>
#include <cmath>
#include <cstring>
#include <iterator>
#include <utility>

namespace tiepoint::ui {
namespace {

constexpr int kChangeCell = 8;  ///< pixels; changes are gathered in cells, so that few rectangles are left
constexpr int kPartsOfPixel = 8;
constexpr int kLargeStamp = 100'000;                       ///< pixels
constexpr int kSmallBand = 1 << 15, kLargeBand = 1 << 19;  ///< pixels that a thread paints at a time
constexpr int kBandsAtOnce = 4;  ///< of a change between these, so that no thread waits long for another

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
    return {(PatchLook(patch.look) << patch.opacity).value(),
            {rounded(patch.mm.left()), rounded(patch.mm.top()), rounded(patch.mm.right()), rounded(patch.mm.bottom())}};
}

QRectF PatchLayer::Key::pixels() const {
    const auto at = [&](std::size_t i) { return static_cast<double>(place[i]) / kPartsOfPixel; };
    return QRectF(QPointF(at(0), at(1)), QPointF(at(2), at(3))).adjusted(-1, -1, 1, 1);
}

void PatchLayer::clear() {
    pixels_.clear();
    keys_.clear();
    opaque_ = {};
}

void PatchLayer::take(Patches patches, const QRect& sight, const QRect& room, double pixelsPerMm) {
    patches_ = std::move(patches);
    changed_ = unpainted_ = {};
    if (pixelsPerMm != pixelsPerMm_) clear();
    pixelsPerMm_ = pixelsPerMm;
    const std::vector<Key> differing = followKeys();
    const QRect before = pixels_.area();
    if (!sight.isEmpty() && !before.contains(sight)) {
        pixels_.reach(TileSheet::wholeTiles(roomFor(sight, room, before)));
        unpainted_ = cellsOf(keys_, TileSheet::kSide) - before;
    }
    if (!before.isEmpty()) changed_ = cellsOf(differing, kChangeCell);  // else all of it is new
    unpainted_ |= changed_;
    changed_ &= sight;
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

QRegion PatchLayer::cellsOf(const std::vector<Key>& keys, int cell) const {
    if (keys.empty()) return {};
    CellGrid cells(pixels_.area(), cell);
    for (const Key& key : keys) cells.add(key.pixels());
    return cells.region();
}

Work PatchLayer::preparations() {
    std::vector<const Patch*> wanted;
    for (const Patch& patch : patches_) {
        const QRect rect = inPixels(patch.mm, pixelsPerMm_).toAlignedRect();
        if (!patch.movable || !unpainted_.intersects(rect)) continue;
        // Of a large one of which only a little comes into sight just that is painted.
        if (areaOf(rect) > kLargeStamp && areaOf(unpainted_ & rect) < areaOf(rect) / 2) continue;
        wanted.push_back(&patch);
    }
    return stamps_.prepare(wanted, pixelsPerMm_);
}

Work PatchLayer::paintings() {
    Work work;
    if (unpainted_.isEmpty()) return work;
    const int enough = std::clamp(areaOf(unpainted_) / kBandsAtOnce, kSmallBand, kLargeBand);
    const QRect all = TileSheet::wholeTiles(unpainted_.boundingRect());
    QRegion band;
    for (int top = all.top(); top <= all.bottom(); top += TileSheet::kSide) {
        band |= unpainted_ & QRect(all.left(), top, all.width(), TileSheet::kSide);
        const bool last = top + TileSheet::kSide > all.bottom();
        if (!last && areaOf(band) < enough) continue;
        if (!band.isEmpty()) work.emplace_back([this, part = std::exchange(band, {})] { paintBand(part); });
    }
    return work;
}

void PatchLayer::finish() { patches_.clear(); }

void PatchLayer::paint() {
    for (const auto& each : preparations()) each();
    for (const auto& each : paintings()) each();
    finish();
}

void PatchLayer::paintBand(const QRegion& band) {
    for (const QRect& rect : joined(band)) {
        QImage sheet = threadSheet(rect.size());
        paintOver(sheet, rect);
        pixels_.put(sheet, rect.topLeft());
        paintedPixels_ += areaOf(rect);
    }
}

void PatchLayer::paintOver(QImage& sheet, const QRect& rect) const {
    PixelSheet device(sheet);
    QPainter painter(&device);
    painter.setRenderHint(QPainter::Antialiasing);
    const QTransform inMm = QTransform::fromTranslate(-rect.left(), -rect.top()).scale(pixelsPerMm_, pixelsPerMm_);
    const PixelRows<QRgb> pixels = rowsOf(sheet);
    for (const Patch& patch : patches_) {
        if (!inPixels(patch.mm, pixelsPerMm_).intersects(rect)) continue;
        if (!patch.movable) {
            painter.setTransform(inMm);
            paintPatch(painter, patch);
        } else if (!stamps_.lay(pixels, sheet.rect(), -rect.topLeft(), patch, pixelsPerMm_)) {
            const QPointF shift = PatchStamps::roundedCorner(patch, pixelsPerMm_) - patch.mm.topLeft() * pixelsPerMm_;
            painter.setTransform(inMm * QTransform::fromTranslate(shift.x(), shift.y()));
            paintPatch(painter, patch);
        }
    }
}

}  // namespace tiepoint::ui
