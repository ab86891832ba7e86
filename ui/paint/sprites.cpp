#include "ui/paint/sprites.h"

#include "ui/paint/pixel_sheet.h"
#include "ui/paint/stamp.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace tiepoint::ui {
namespace {

constexpr int kAngles = 72;  ///< steps of five degrees
constexpr int kQuarter = kAngles / 4;
constexpr int kLooks = 4;
constexpr double kDotRoomMm = 0.5;
constexpr double kFarPixels = 300;  ///< no arrow reaches so far
constexpr int kSmallPixels = 24;  ///< up to here a painter's call costs more than the pixels

int angleStep(double radians) {
    const int step = static_cast<int>(std::lround(radians / (2 * std::numbers::pi) * kAngles)) % kAngles;
    return step < 0 ? step + kAngles : step;
}

double stepRadians(int step) {
    return step * 2 * std::numbers::pi / kAngles;
}

int keyOf(const ArrowMark& mark) {
    const int angle = mark.look == MarkLook::Dot ? 0 : angleStep(mark.angle);
    return (angle * (kArrowLevels + 1) + mark.level) * kLooks + static_cast<int>(mark.look);
}

/// A square picture with 0,0 mm in its middle, drawn once.
template <class Paint>
QImage square(double pixelsPerMm, double halfMm, Paint paint) {
    const int side = 2 * static_cast<int>(std::ceil(halfMm * pixelsPerMm)) + 2;
    QImage image(side, side, QImage::Format_ARGB32_Premultiplied);
    image.fill(Qt::transparent);
    PixelSheet sheet(image);
    QPainter painter(&sheet);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.translate(side / 2.0, side / 2.0);
    painter.scale(pixelsPerMm, pixelsPerMm);
    paint(painter);
    painter.end();
    return image;
}

}  // namespace

ArrowSprites::ArrowSprites(const Theme& theme, double pixelsPerMm, bool electrons)
    : theme_(theme), pixelsPerMm_(pixelsPerMm), electrons_(electrons) {}

QImage ArrowSprites::make(const ArrowMark& mark) const {
    ArrowMark middle = mark;
    middle.at = {};
    middle.angle = stepRadians(angleStep(mark.angle));
    if (mark.level > 0) middle.breadthMm = breadthOfLevel(mark.level);
    const double room = mark.look == MarkLook::Dot ? kDotRoomMm : arrowReachMm(static_cast<double>(mark.level) / kArrowLevels, electrons_);
    return square(pixelsPerMm_, room,
                  [&](QPainter& painter) { drawMark(painter, theme_, middle, electrons_); });
}

int ArrowSprites::prewarm(int most) {
    constexpr int kAll = 4 * kArrowLevels;
    int made = 0;
    for (; warmed_ < kAll && made < most; ++warmed_) {
        ArrowMark mark;
        mark.level = 1 + warmed_ % kArrowLevels;
        mark.angle = stepRadians(warmed_ / kArrowLevels * kQuarter);
        if (sprites_.contains(keyOf(mark))) continue;
        sprites_.insert(keyOf(mark), make(mark));
        ++made;
    }
    return made;
}

void ArrowSprites::makeFor(const std::vector<ArrowMark>& marks) {
    for (const ArrowMark& mark : marks) {
        if (const int key = keyOf(mark); !sprites_.contains(key)) sprites_.insert(key, make(mark));
    }
}

void ArrowSprites::draw(QImage& target, const QTransform& toPixels, const std::vector<ArrowMark>& marks) const {
    QPainter painter(&target);
    const QRectF reached = QRectF(target.rect()).adjusted(-kFarPixels, -kFarPixels, kFarPixels, kFarPixels);
    for (const ArrowMark& mark : marks) {
        const QPointF at = toPixels.map(QPointF(mark.at.x, mark.at.y));
        if (!reached.contains(at)) continue;
        const auto sprite = sprites_.constFind(keyOf(mark));
        if (sprite == sprites_.constEnd()) continue;
        const QPointF corner = at - QPointF(sprite->width(), sprite->height()) / 2;
        const QPoint whole(static_cast<int>(std::lround(corner.x())), static_cast<int>(std::lround(corner.y())));
        if (sprite->width() <= kSmallPixels) {
            stampOver(target, whole, *sprite);
        } else {
            painter.drawImage(whole, *sprite);
        }
    }
}

}  // namespace tiepoint::ui
