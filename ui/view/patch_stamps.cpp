#include "ui/view/patch_stamps.h"

#include "ui/paint/pixel_sheet.h"

#include <cmath>

namespace tiepoint::ui {
namespace {

constexpr int kRoom = 1;  ///< pixels on each side, for smooth edges
constexpr int kMostStamps = 1024;

}  // namespace

void PatchStamps::draw(QPainter& painter, QPoint origin, const Patch& patch, double pixelsPerMm) {
    const int twiceX = static_cast<int>(std::lround(patch.mm.left() * pixelsPerMm * 2)),
              twiceY = static_cast<int>(std::lround(patch.mm.top() * pixelsPerMm * 2));
    const int halfX = twiceX & 1, halfY = twiceY & 1;
    const Key key{patch.look.value(), halfX, halfY, static_cast<int>(std::ceil(patch.mm.width() * pixelsPerMm)),
                  static_cast<int>(std::ceil(patch.mm.height() * pixelsPerMm))};
    auto stamp = stamps_.find(key);
    if (stamp == stamps_.end()) {
        stamp = stamps_.insert(key, paint(patch, key, pixelsPerMm));
        ++painted_;
    }
    const QPoint corner((twiceX - halfX) / 2 - kRoom, (twiceY - halfY) / 2 - kRoom);
    painter.drawImage(origin + corner, *stamp);
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
    if (stamps_.size() > kMostStamps) stamps_.clear();
}

}  // namespace tiepoint::ui
