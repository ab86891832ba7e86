#include "ui/paint/sprites.h"

#include "ui/paint/light_painter.h"
#include "ui/paint/part_scenes.h"
#include "ui/paint/shade.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace tiepoint::ui {
namespace {

constexpr int kAngles = 72;  ///< steps of five degrees
constexpr int kQuarter = kAngles / 4;
constexpr int kLooks = 4;
constexpr double kArrowRoomMm = 1.9;  ///< half side of the square that holds any arrow with its casing
constexpr double kDomeRoomMm = 5.1;   ///< holds the dome with its rays

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

/// A square pixmap with 0,0 mm in its middle, drawn once.
template <class Paint>
QPixmap square(const SpriteScale& scale, double halfMm, Paint paint) {
    const int side = 2 * static_cast<int>(std::ceil(halfMm * scale.pixelsPerMm * scale.devicePixelRatio)) + 2;
    QPixmap pixmap(side, side);
    pixmap.fill(Qt::transparent);
    QPainter painter(&pixmap);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.translate(side / 2.0, side / 2.0);
    painter.scale(scale.pixelsPerMm * scale.devicePixelRatio, scale.pixelsPerMm * scale.devicePixelRatio);
    paint(painter);
    painter.end();
    pixmap.setDevicePixelRatio(scale.devicePixelRatio);
    return pixmap;
}

void stamp(QPainter& painter, const QPixmap& sprite, QPointF at) {
    const double half = sprite.width() / sprite.devicePixelRatio() / 2;
    painter.drawPixmap(at - QPointF(half, half), sprite);
}

int lightLevel(double brightness) {
    return static_cast<int>(std::lround(std::clamp(brightness, 0.0, 1.0) * kArrowLevels));
}

}  // namespace

ArrowSprites::ArrowSprites(const Theme& theme, SpriteScale scale, bool electrons)
    : theme_(theme), scale_(scale), electrons_(electrons) {}

QPixmap ArrowSprites::make(const ArrowMark& mark) const {
    ArrowMark middle = mark;
    middle.at = {};
    middle.angle = stepRadians(angleStep(mark.angle));
    if (mark.level > 0) middle.breadthMm = breadthOfLevel(mark.level);
    return square(scale_, kArrowRoomMm,
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

void ArrowSprites::draw(QPainter& painter, const QTransform& toPixels, const std::vector<ArrowMark>& marks,
                        int mostNew) {
    for (const ArrowMark& mark : marks) {
        const int key = keyOf(mark);
        auto sprite = sprites_.constFind(key);
        if (sprite == sprites_.constEnd() && mostNew > 0) {
            --mostNew;
            sprite = sprites_.insert(key, make(mark));
        }
        if (sprite != sprites_.constEnd()) {
            stamp(painter, *sprite, toPixels.map(QPointF(mark.at.x, mark.at.y)));
            continue;
        }
        painter.save();
        painter.setRenderHint(QPainter::Antialiasing);
        painter.setTransform(toPixels, true);
        drawMark(painter, theme_, mark, electrons_);
        painter.restore();
    }
}

LightSprites::LightSprites(const Theme& theme, SpriteScale scale) : theme_(theme), scale_(scale) {}

void LightSprites::drawHalos(QPainter& painter, const QTransform& toPixels, const Picture& picture) {
    for (int part = 0; part < static_cast<int>(picture.bench().parts.size()); ++part) {
        const int level = lightLevel(brightnessOf(picture, part));
        if (level == 0) continue;
        const PartScene scene = sceneOf(picture, part);
        const QColor light = findPackagePainter(scene.part.kind->package->name)->light(scene);
        const quint64 key = (static_cast<quint64>(light.rgb()) << 8) |
                            static_cast<quint64>(level * 2 + (picture.views.voltage ? 1 : 0));
        auto halo = halos_.constFind(key);
        if (halo == halos_.constEnd()) {
            const double brightness = static_cast<double>(level) / kArrowLevels;
            halo = halos_.insert(key, square(scale_, haloRadiusMm(brightness), [&](QPainter& on) {
                                     paintHalo(on, theme_, light, brightness, picture.views.voltage);
                                 }));
        }
        stamp(painter, *halo, toPixels.map(toQt(scene.place.pose.centre)));
    }
}

void LightSprites::drawDomes(QPainter& painter, const QTransform& toPixels, const Picture& picture) {
    for (int part = 0; part < static_cast<int>(picture.bench().parts.size()); ++part) {
        const int level = lightLevel(brightnessOf(picture, part));
        if (level == 0 || picture.isBehind(part)) continue;
        const PartScene scene = sceneOf(picture, part);
        const PackagePainter& look = *findPackagePainter(scene.part.kind->package->name);
        const int turn = angleStep(scene.place.pose.angle);
        const quint64 key =
            (static_cast<quint64>(look.light(scene).rgb()) << 16) |
            static_cast<quint64>((level * kAngles + turn) * 2 + (picture.views.voltage ? 1 : 0));
        auto dome = domes_.constFind(key);
        if (dome == domes_.constEnd()) {
            const double brightness = static_cast<double>(level) / kArrowLevels;
            dome = domes_.insert(key, square(scale_, kDomeRoomMm, [&](QPainter& on) {
                                     PartPlace middle = scene.place;
                                     middle.pose.centre = {};
                                     middle.pose.angle = stepRadians(turn);
                                     look.paintLit(on, PartScene{theme_, scene.part, middle}, brightness);
                                     on.rotate(middle.pose.angle * 180 / std::numbers::pi);
                                     if (!picture.views.voltage) paintRays(on, theme_, brightness);
                                 }));
        }
        stamp(painter, *dome, toPixels.map(toQt(scene.place.pose.centre)));
    }
}

}  // namespace tiepoint::ui
