#include "ui/view/patch_stamps.h"

#include "ui/paint/pixel_sheet.h"
#include "ui/paint/stamp.h"

#include <algorithm>
#include <cmath>

namespace tiepoint::ui {
namespace {

constexpr int kRoom = 1;  ///< pixels on each side, for smooth edges
constexpr qsizetype kMostPixels = 12'000'000;
constexpr qsizetype kLargest = 250'000;       ///< pixels of one stamp that is worth keeping: of larger ones mostly a corner is wanted
constexpr qsizetype kLargestAtOnce = 1'000'000;  ///< the same, for one that is painted to be laid just now
constexpr double kFinePixelsPerMm = 12;    ///< from here on half a pixel more or less isn't seen

qsizetype areaOf(const QImage& image) { return qsizetype{image.width()} * image.height(); }

}  // namespace

PatchStamps::Place PatchStamps::placeOf(const Patch& patch, double pixelsPerMm) {
    const auto twice = [&](double mm) {
        const double pixels = mm * pixelsPerMm;
        return static_cast<int>(pixelsPerMm < kFinePixelsPerMm ? std::lround(pixels * 2) : std::lround(pixels) * 2);
    };
    const int twiceX = twice(patch.mm.left()), twiceY = twice(patch.mm.top());
    const int halfX = twiceX & 1, halfY = twiceY & 1;
    return {{patch.look.value(), halfX, halfY, static_cast<int>(std::ceil(patch.mm.width() * pixelsPerMm)),
             static_cast<int>(std::ceil(patch.mm.height() * pixelsPerMm))},
            {(twiceX - halfX) / 2 - kRoom, (twiceY - halfY) / 2 - kRoom}};
}

std::vector<std::function<void()>> PatchStamps::prepare(const std::vector<const Patch*>& wanted, double pixelsPerMm) {
    struct Missing {
        Key key;
        const Patch* patch;
    };
    std::vector<Missing> missing;
    for (const Patch* patch : wanted) {
        const Key key = placeOf(*patch, pixelsPerMm).key;
        if (stamps_.contains(key) || key.area() > kLargestAtOnce) continue;
        stamps_.insert(key, {});
        missing.push_back({key, patch});
    }
    std::ranges::stable_sort(missing, std::greater(), [](const Missing& each) { return each.key.area(); });
    std::vector<std::function<void()>> work;
    work.reserve(missing.size());
    // Nothing is inserted meanwhile, so that the places of the stamps stay.
    for (const Missing& each : missing)
        work.emplace_back([each, pixelsPerMm, stamp = &*stamps_.find(each.key)] { *stamp = paint(*each.patch, each.key, pixelsPerMm); });
    return work;
}

bool PatchStamps::lay(QImage& target, const QRect& clip, QPoint origin, const Patch& patch, double pixelsPerMm) const {
    const auto [key, corner] = placeOf(patch, pixelsPerMm);
    const auto stamp = stamps_.find(key);
    if (stamp == stamps_.end()) return false;
    stampOver(target, clip, origin + corner, *stamp);
    return true;
}

QPointF PatchStamps::roundedCorner(const Patch& patch, double pixelsPerMm) {
    const auto [key, corner] = placeOf(patch, pixelsPerMm);
    return corner + QPointF(kRoom + key.halfX / 2.0, kRoom + key.halfY / 2.0);
}

QImage PatchStamps::paint(const Patch& patch, const Key& key, double pixelsPerMm) {
    QImage pixels(key.width + 2 * kRoom + 1, key.height + 2 * kRoom + 1, QImage::Format_ARGB32_Premultiplied);
    pixels.fill(Qt::transparent);
    PixelSheet sheet(pixels);
    QPainter painter(&sheet);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.translate(kRoom + key.halfX / 2.0, kRoom + key.halfY / 2.0);
    painter.scale(pixelsPerMm, pixelsPerMm);
    painter.translate(-patch.mm.topLeft());
    patch.paint(painter);
    return pixels;
}

void PatchStamps::clear() { stamps_.clear(); }

void PatchStamps::trim() {
    qsizetype kept = 0;
    stamps_.removeIf([&](const auto& each) {
        const qsizetype area = areaOf(each.value());
        if (area > kLargest) return true;
        kept += area;
        return false;
    });
    if (kept > kMostPixels) clear();
}

}  // namespace tiepoint::ui
