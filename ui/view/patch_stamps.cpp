#include "ui/view/patch_stamps.h"

#include "ui/paint/pixel_sheet.h"
#include "ui/view/thread_sheet.h"

#include <algorithm>
#include <cmath>

namespace tiepoint::ui {
namespace {

constexpr int kRoom = 1;  ///< pixels on each side, for smooth edges
constexpr qsizetype kMostPixels = 12'000'000;
constexpr qsizetype kLargest =
    250'000;  ///< pixels of one stamp that is worth keeping: of larger ones mostly a corner is wanted
constexpr qsizetype kLargestAtOnce = 1'000'000;  ///< the same, for one that is painted to be laid just now
constexpr double kFinePixelsPerMm = 12;          ///< from here on half a pixel more or less isn't seen

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
        TileSheet* pixels;
    };
    std::vector<Missing> missing;
    for (const Patch* patch : wanted) {
        const Key key = placeOf(*patch, pixelsPerMm).key;
        if (key.area() > kLargestAtOnce) continue;
        const auto [stamp, isNew] = stamps_.try_emplace(key, store_);
        stamp->second.wanted = true;
        if (isNew) missing.push_back({key, patch, &stamp->second.pixels});
    }
    std::ranges::stable_sort(missing, std::greater(), [](const Missing& each) { return each.key.area(); });
    std::vector<std::function<void()>> work;
    work.reserve(missing.size());
    for (const Missing& each : missing)
        work.emplace_back([each, pixelsPerMm] { paint(*each.pixels, *each.patch, each.key, pixelsPerMm); });
    return work;
}

bool PatchStamps::lay(PixelRows<QRgb> target, const QRect& clip, QPoint origin, const Patch& patch,
                      double pixelsPerMm) const {
    const auto [key, corner] = placeOf(patch, pixelsPerMm);
    const auto stamp = stamps_.find(key);
    if (stamp == stamps_.end()) return false;
    const QPoint at = origin + corner;
    stamp->second.pixels.lay(target, clip.translated(-at), at, static_cast<int>(std::lround(patch.opacity * kOpaque)));
    return true;
}

QPointF PatchStamps::roundedCorner(const Patch& patch, double pixelsPerMm) {
    const auto [key, corner] = placeOf(patch, pixelsPerMm);
    return corner + QPointF(kRoom + key.halfX / 2.0, kRoom + key.halfY / 2.0);
}

void PatchStamps::paint(TileSheet& pixels, const Patch& patch, const Key& key, double pixelsPerMm) {
    const QSize size(key.width + 2 * kRoom + 1, key.height + 2 * kRoom + 1);
    QImage image = threadSheet(size);
    PixelSheet sheet(image);
    QPainter painter(&sheet);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.translate(kRoom + key.halfX / 2.0, kRoom + key.halfY / 2.0);
    painter.scale(pixelsPerMm, pixelsPerMm);
    painter.translate(-patch.mm.topLeft());
    patch.paint(painter);
    painter.end();
    pixels.reach({QPoint(0, 0), size});
    pixels.put(image, {0, 0});
}

void PatchStamps::trim() {
    qsizetype kept = 0;
    std::erase_if(stamps_, [&](const auto& each) {
        if (each.first.area() > kLargest) return true;
        kept += each.second.pixels.keptPixels();
        return false;
    });
    if (kept > kMostPixels) std::erase_if(stamps_, [](const auto& each) { return !each.second.wanted; });
    for (auto& [key, stamp] : stamps_) stamp.wanted = false;
}

}  // namespace tiepoint::ui
