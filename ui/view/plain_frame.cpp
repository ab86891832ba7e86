#include "ui/view/plain_frame.h"

#include "ui/paint/pixel_sheet.h"
#include "ui/paint/sprites.h"
#include "ui/view/patch_sprites.h"

#include <algorithm>
#include <cmath>

namespace tiepoint::ui {

PlainFrame::PlainFrame(QImage& target, const Theme& theme, double pixelsPerMm, QPoint origin)
    : target_(target),
      theme_(theme),
      pixelsPerMm_(pixelsPerMm),
      origin_(origin) {}

void PlainFrame::paintTable(const std::vector<QRgb>& rows) {
    for (int y = 0; y < target_.height(); ++y)
        std::fill_n(reinterpret_cast<QRgb*>(target_.scanLine(y)), target_.width(), rows[static_cast<std::size_t>(y)]);
}

void PlainFrame::paintPatches(const Patches& patches) {
    for (const Patch& patch : patches) {
        const SpritePlace place = SpritePlace::of(patch, pixelsPerMm_);
        const QRect rect = place.rect().translated(origin_);
        if (!rect.intersects(target_.rect())) continue;
        const QPointF zero = rect.topLeft() + place.zero;
        if (patch.opacity < 1) {
            paintTogether(patch, zero, rect & target_.rect());
        } else {
            paintDrawing(target_, patch, zero);
        }
    }
}

void PlainFrame::paintTogether(const Patch& patch, QPointF zero, const QRect& rect) {
    QImage whole(rect.size(), QImage::Format_ARGB32_Premultiplied);
    whole.fill(Qt::transparent);
    paintDrawing(whole, patch, zero - rect.topLeft());
    QPainter painter(&target_);
    painter.setOpacity(patch.opacity);
    painter.drawImage(rect.topLeft(), whole);
}

void PlainFrame::paintDrawing(QImage& on, const Patch& patch, QPointF zero) const {
    PixelSheet sheet(on);
    QPainter painter(&sheet);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.translate(zero);
    painter.scale(pixelsPerMm_, pixelsPerMm_);
    patch.drawing->paint(painter, theme_);
}

void PlainFrame::paintArrows(const std::vector<ArrowMark>& marks, bool electrons) {
    PixelSheet sheet(target_);
    QPainter painter(&sheet);
    painter.setRenderHint(QPainter::Antialiasing);
    for (const ArrowMark& mark : marks) {
        painter.resetTransform();
        painter.translate(origin_ + QPoint(static_cast<int>(std::lround(mark.at.x * pixelsPerMm_)),
                                           static_cast<int>(std::lround(mark.at.y * pixelsPerMm_))));
        painter.scale(pixelsPerMm_, pixelsPerMm_);
        drawMark(painter, theme_, asSprite(mark), electrons);
    }
}

}  // namespace tiepoint::ui
