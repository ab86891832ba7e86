#include "ui/view/patch_layer.h"

#include "ui/view/cell_grid.h"
#include "ui/view/scratch_buffer.h"

#include <QHashFunctions>

#include <algorithm>
#include <cmath>
#include <unordered_map>
#include <utility>

namespace tiepoint::ui {
namespace {

constexpr int kChangeCell = 8;  ///< pixels; changes are gathered in cells, so that few rectangles are left
constexpr int kSmallBand = 1 << 15, kLargeBand = 1 << 19;  ///< pixels that a thread paints at a time
constexpr int kBandsAtOnce = 4;  ///< of a change between these, so that no thread waits long for another

/// What is kept from now on for a sight: a margin only on the sides to which it has moved, so that what comes to lie still isn't painted
/// wider than it is seen. `room`: the sight with margins on all sides.
QRect roomFor(const QRect& sight, const QRect& room, const QRect& before) {
    if (!before.intersects(sight)) return sight;
    return QRect(QPoint(sight.left() < before.left() ? room.left() : std::max(room.left(), before.left()),
                        sight.top() < before.top() ? room.top() : std::max(room.top(), before.top())),
                 QPoint(sight.right() > before.right() ? room.right() : std::min(room.right(), before.right()),
                        sight.bottom() > before.bottom() ? room.bottom() : std::min(room.bottom(), before.bottom())));
}

}  // namespace

PatchLayer::Entry PatchLayer::entryOf(const Patch& patch) {
    const SpritePlace place = SpritePlace::of(patch, sprites_.pixelsPerMm());
    return {patch, place.rect(), sprites_.find(patch, place)};
}

void PatchLayer::clear() {
    pixels_.clear();
    entries_.clear();
    opaque_ = {};
}

bool PatchLayer::take(const Patches& patches, const QRect& sight, const QRect& room) {
    changed_ = unlaid_ = {};
    const std::vector<QRect> differing = follow(patches);
    if (!differing.empty()) followOpaque();
    const QRect before = pixels_.area();
    if (!sight.isEmpty() && !before.contains(sight)) {
        pixels_.reach(TileSheet::wholeTiles(roomFor(sight, room, before)));
        std::vector<QRect> all;
        for (const Entry& entry : entries_) all.push_back(entry.rect);
        unlaid_ = cellsOf(all, TileSheet::kSide) - before;
    }
    if (!before.isEmpty()) changed_ = cellsOf(differing, kChangeCell);  // else all of it is new
    unlaid_ |= changed_;
    changed_ &= sight;
    return !differing.empty();
}

std::vector<QRect> PatchLayer::follow(const Patches& patches) {
    std::vector<Entry> before = std::exchange(entries_, {});
    entries_.reserve(patches.size());
    std::vector<QRect> differing;
    // Most lists begin and end as they did. What is between is found by where it lies, in its order: where that changed it counts as new.
    const std::size_t common = std::min(before.size(), patches.size());
    std::size_t head = 0, tail = 0;
    while (head < common && before[head].patch == patches[head]) entries_.push_back(std::move(before[head++]));
    while (tail < common - head && before[before.size() - 1 - tail].patch == patches[patches.size() - 1 - tail]) ++tail;
    std::unordered_multimap<std::size_t, std::size_t> byPlace;
    const auto hash = [](const Patch& patch) {
        return qHashMulti(0, patch.at.x, patch.at.y, patch.room.left, patch.room.top, patch.room.width);
    };
    std::size_t next = head;  // no later one may have stood before this
    for (std::size_t i = head; i < before.size() - tail; ++i) byPlace.emplace(hash(before[i].patch), i);
    for (std::size_t i = head; i < patches.size() - tail; ++i) {
        const auto [first, last] = byPlace.equal_range(hash(patches[i]));
        const auto same = std::find_if(first, last, [&](const auto& each) {
            return each.second >= next && before[each.second].patch == patches[i];
        });
        if (same == last) {
            entries_.push_back(entryOf(patches[i]));
            differing.push_back(entries_.back().rect);
            continue;
        }
        for (; next < same->second; ++next) differing.push_back(before[next].rect);
        entries_.push_back(std::move(before[next++]));
    }
    for (; next < before.size() - tail; ++next) differing.push_back(before[next].rect);
    for (; next < before.size(); ++next) entries_.push_back(std::move(before[next]));
    return differing;
}

void PatchLayer::followOpaque() {
    opaque_ = {};
    for (const Entry& entry : entries_) {
        if (entry.patch.opaque.width <= 0) continue;
        // Only whole pixels within are surely covered, half a pixel from where the patch would lie.
        const double scale = sprites_.pixelsPerMm();
        const QRectF mm = toQt(entry.patch.opaque).translated(toQt(entry.patch.at));
        opaque_ |= QRectF(mm.topLeft() * scale, mm.size() * scale).adjusted(2, 2, -2, -2).toRect();
    }
}

template <class Rects>
QRegion PatchLayer::cellsOf(const Rects& rects, int cell) const {
    if (rects.empty()) return {};
    CellGrid cells(pixels_.area(), cell);
    for (const QRect& rect : rects) cells.add(rect);
    return cells.region();
}

Work PatchLayer::preparations() {
    Work work;
    for (const Entry& entry : entries_) {
        for (const QRect& rect : unlaid_& entry.rect)
            entry.sprite->prepare(rect.translated(-entry.rect.topLeft()), work);
    }
    return work;
}

Work PatchLayer::layings() {
    Work work;
    if (unlaid_.isEmpty()) return work;
    const int enough = std::clamp(areaOf(unlaid_) / kBandsAtOnce, kSmallBand, kLargeBand);
    const QRect all = TileSheet::wholeTiles(unlaid_.boundingRect());
    QRegion band;
    for (int top = all.top(); top <= all.bottom(); top += TileSheet::kSide) {
        band |= unlaid_ & QRect(all.left(), top, all.width(), TileSheet::kSide);
        const bool last = top + TileSheet::kSide > all.bottom();
        if (!last && areaOf(band) < enough) continue;
        if (!band.isEmpty()) work.emplace_back([this, part = std::exchange(band, {})] { layBand(part); });
    }
    return work;
}

void PatchLayer::layAll() {
    for (const auto& each : preparations()) each();
    for (const auto& each : layings()) each();
}

void PatchLayer::layBand(const QRegion& band) {
    for (const QRect& rect : band) {
        QImage sheet = scratchBuffer(rect.size());
        const PixelRows<QRgb> pixels = rowsOf(sheet);
        for (const Entry& entry : entries_) {
            if (entry.rect.intersects(rect))
                entry.sprite->lay(pixels, sheet.rect(), entry.rect.topLeft() - rect.topLeft(),
                                  static_cast<int>(std::lround(entry.patch.opacity * kOpaque)));
        }
        pixels_.put(sheet, rect.topLeft());
        laidPixels_ += rect.width() * rect.height();
    }
}

}  // namespace tiepoint::ui
