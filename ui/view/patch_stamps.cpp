#include "ui/view/patch_stamps.h"

#include "ui/paint/pixel_sheet.h"
#include "ui/paint/stamp.h"

#include <cmath>

namespace tiepoint::ui {
namespace {

constexpr int kRoom = 1;  ///< pixels on each side, for smooth edges
constexpr qsizetype kMostPixels = 12'000'000;
constexpr double kFinePixelsPerMm = 12;  ///< from here on half a pixel more or less isn't seen

}  // namespace

void PatchStamps::lay(QImage& target, const QRect& clip, QPoint origin, const Patch& patch, double pixelsPerMm) {
    const auto twice = [&](double mm) {
        const double pixels = mm * pixelsPerMm;
        return static_cast<int>(pixelsPerMm < kFinePixelsPerMm ? std::lround(pixels * 2) : std::lround(pixels) * 2);
    };
    const int twiceX = twice(patch.mm.left()), twiceY = twice(patch.mm.top());
    const int halfX = twiceX & 1, halfY = twiceY & 1;
    const Key key{patch.look.value(), halfX, halfY, static_cast<int>(std::ceil(patch.mm.width() * pixelsPerMm)),
                  static_cast<int>(std::ceil(patch.mm.height() * pixelsPerMm))};
    auto stamp = stamps_.find(key);
    if (stamp == stamps_.end()) {
        stamp = stamps_.insert(key, paint(patch, key, pixelsPerMm));
        ++painted_;
        pixels_ += qsizetype{stamp->width()} * stamp->height();
    }
    const QPoint corner((twiceX - halfX) / 2 - kRoom, (twiceY - halfY) / 2 - kRoom);
    stampOver(target, clip, origin + corner, *stamp);
}

QImage PatchStamps::paint(const Patch& patch, const Key& key, double pixelsPerMm) const {
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

void PatchStamps::trim() {
    if (pixels_ > kMostPixels) clear();
}

}  // namespace tiepoint::ui
