#include "ui/paint/sprites.h"

#include "ui/paint/pixel_sheet.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace tiepoint::ui {
namespace {

constexpr int kAngles = 72;  ///< steps of five degrees
constexpr int kQuarter = kAngles / 4;
constexpr int kLooks = 4;
constexpr double kDotRoomMm = 0.5;

int angleStep(double radians) {
    const int step = static_cast<int>(std::lround(radians / (2 * std::numbers::pi) * kAngles)) % kAngles;
    return step < 0 ? step + kAngles : step;
}

double stepRadians(int step) { return step * 2 * std::numbers::pi / kAngles; }

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

/// The rectangle that holds every pixel that isn't empty.
QRect inked(const QImage& image) {
    QRect rect;
    for (int y = 0; y < image.height(); ++y) {
        const auto* line = reinterpret_cast<const QRgb*>(image.constScanLine(y));
        for (int x = 0; x < image.width(); ++x) {
            if (line[x] != 0) rect |= QRect(x, y, 1, 1);
        }
    }
    return rect;
}

}  // namespace

ArrowMark asSprite(const ArrowMark& mark) {
    ArrowMark middle = mark;
    middle.at = {};
    middle.angle = stepRadians(angleStep(mark.angle));
    if (mark.level > 0) middle.breadthMm = breadthOfLevel(mark.level);
    return middle;
}

ArrowSprites::ArrowSprites(const Theme& theme, double pixelsPerMm, bool electrons)
    : theme_(theme),
      pixelsPerMm_(pixelsPerMm),
      electrons_(electrons) {}

ArrowSprites::Sprite ArrowSprites::make(const ArrowMark& mark) const {
    const ArrowMark middle = asSprite(mark);
    const double room = mark.look == MarkLook::Dot
                            ? kDotRoomMm
                            : arrowReachMm(static_cast<double>(mark.level) / kArrowLevels, electrons_);
    const QImage whole =
        square(pixelsPerMm_, room, [&](QPainter& painter) { drawMark(painter, theme_, middle, electrons_); });
    const QRect rect = inked(whole);
    return {whole.copy(rect), rect.topLeft() - QPointF(whole.width(), whole.height()) / 2};
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

std::vector<std::function<void()>> ArrowSprites::prepare(std::span<const std::vector<ArrowMark>> layers) {
    std::vector<ArrowMark> missing;
    for (const std::vector<ArrowMark>& marks : layers) {
        for (const ArrowMark& mark : marks) {
            const int key = keyOf(mark);
            if (sprites_.contains(key)) continue;
            sprites_.insert(key, {});
            missing.push_back(mark);
        }
    }
    std::vector<std::function<void()>> work;
    work.reserve(missing.size());
    // Nothing is inserted meanwhile, so that the places of the sprites stay.
    for (const ArrowMark& mark : missing)
        work.emplace_back([this, mark, sprite = &*sprites_.find(keyOf(mark))] { *sprite = make(mark); });
    return work;
}

std::vector<PlacedSprite> ArrowSprites::place(const QTransform& toPixels, const std::vector<ArrowMark>& marks) const {
    std::vector<PlacedSprite> placed;
    placed.reserve(marks.size());
    for (const ArrowMark& mark : marks) {
        const auto sprite = sprites_.constFind(keyOf(mark));
        if (sprite == sprites_.constEnd()) continue;
        const QPointF corner = toPixels.map(QPointF(mark.at.x, mark.at.y)) + sprite->corner;
        placed.push_back({QPoint(static_cast<int>(std::lround(corner.x())), static_cast<int>(std::lround(corner.y()))),
                          sprite->picture});
    }
    return placed;
}

}  // namespace tiepoint::ui
