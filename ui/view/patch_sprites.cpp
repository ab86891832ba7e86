#include "ui/view/patch_sprites.h"

#include "ui/paint/grid_index.h"
#include "ui/paint/pixel_sheet.h"
#include "ui/view/scratch_buffer.h"

#include <QHashFunctions>

#include <algorithm>
#include <cmath>

namespace tiepoint::ui {
namespace {

constexpr int kSmoothEdge = 1;                       ///< pixels on each side
constexpr double kFinePixelsPerMm = 12;              ///< from here on half a pixel more or less isn't seen
constexpr int kWholePixels = 1 << 18;                ///< up to here a sprite is painted as a whole
constexpr int kBlockSide = 4 * TileSheet::kSide;     ///< of larger ones
constexpr qsizetype kMostSpritePixels = 12'000'000;  ///< 48 MB

/// A place along one direction.
struct Span {
    int corner, size;
    double zero;
};

Span spanOf(double at, bool movable, double from, double length, double pixelsPerMm) {
    double zero = at * pixelsPerMm;
    if (movable) zero = pixelsPerMm < kFinePixelsPerMm ? std::round(zero * 2) / 2 : std::round(zero);
    const double whole = std::floor(zero), rest = zero - whole;
    const int first = static_cast<int>(std::floor(rest + from * pixelsPerMm)) - kSmoothEdge;
    const int last = static_cast<int>(std::ceil(rest + (from + length) * pixelsPerMm)) + kSmoothEdge;
    return {static_cast<int>(whole) + first, last - first, rest - first};
}

int wholeTilesUp(int pixels) { return (pixels + TileSheet::kSide - 1) / TileSheet::kSide * TileSheet::kSide; }

std::size_t hashOf(const Patch& patch, const SpritePlace& place) {
    const Drawing& drawing = *patch.drawing;
    return qHashMulti(0, typeid(drawing).hash_code(), place.size.width(), place.size.height(), place.zero.x(),
                      place.zero.y());
}

}  // namespace

SpritePlace SpritePlace::of(const Patch& patch, double pixelsPerMm) {
    const Span x = spanOf(patch.at.x, patch.movable, patch.room.left, patch.room.width, pixelsPerMm);
    const Span y = spanOf(patch.at.y, patch.movable, patch.room.top, patch.room.height, pixelsPerMm);
    return {{x.corner, y.corner}, {x.size, y.size}, {x.zero, y.zero}};
}

Sprite::Sprite(TileStore& store, const Patch& patch, const SpritePlace& place, const Theme& theme, double pixelsPerMm)
    : drawing_(patch.drawing),
      theme_(theme),
      pixelsPerMm_(pixelsPerMm),
      size_(place.size),
      zero_(place.zero),
      blockSide_(isLarge() ? kBlockSide : wholeTilesUp(std::max(size_.width(), size_.height()))),
      pixels_(store) {
    forget();
}

bool Sprite::isLarge() const { return static_cast<qint64>(size_.width()) * size_.height() > kWholePixels; }

bool Sprite::shows(const Patch& patch, const SpritePlace& place) const {
    return size_ == place.size && zero_.x() == place.zero.x() && zero_.y() == place.zero.y() &&
           (drawing_ == patch.drawing || drawing_->looksLike(*patch.drawing));
}

void Sprite::forget() {
    const auto blocks = [this](int pixels) { return static_cast<std::size_t>((pixels + blockSide_ - 1) / blockSide_); };
    painted_.assign(blocks(size_.width()) * blocks(size_.height()), 0);
    pixels_.clear();
    pixels_.reach({QPoint(0, 0), size_});
}

void Sprite::prepare(const QRect& wanted, Work& work) {
    const QRect within = wanted & QRect(QPoint(0, 0), size_);
    if (within.isEmpty()) return;
    const int columns = (size_.width() + blockSide_ - 1) / blockSide_;
    for (int row = within.top() / blockSide_; row <= within.bottom() / blockSide_; ++row) {
        for (int column = within.left() / blockSide_; column <= within.right() / blockSide_; ++column) {
            char& painted = painted_[gridIndex(column, row, columns)];
            if (painted) continue;
            painted = 1;
            const QRect block =
                QRect(column * blockSide_, row * blockSide_, blockSide_, blockSide_) & QRect(QPoint(0, 0), size_);
            work.emplace_back([this, block] { paint(block); });
        }
    }
}

void Sprite::paint(const QRect& block) {
    QImage image = scratchBuffer(block.size());
    PixelSheet sheet(image);
    QPainter painter(&sheet);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.translate(zero_ - block.topLeft());
    painter.scale(pixelsPerMm_, pixelsPerMm_);
    drawing_->paint(painter, theme_);
    painter.end();
    pixels_.put(image, block.topLeft());
}

void PatchSprites::begin(const Theme& theme, double pixelsPerMm) {
    theme_ = &theme;
    pixelsPerMm_ = pixelsPerMm;
    sprites_.clear();
}

std::shared_ptr<Sprite> PatchSprites::find(const Patch& patch, const SpritePlace& place) {
    const std::size_t hash = hashOf(patch, place);
    const auto [first, last] = sprites_.equal_range(hash);
    const auto found = std::find_if(first, last, [&](const auto& each) { return each.second->shows(patch, place); });
    if (found != last) return found->second;
    return sprites_.emplace(hash, std::make_shared<Sprite>(store_, patch, place, *theme_, pixelsPerMm_))->second;
}

void PatchSprites::trim() {
    const auto kept = [this] {
        qsizetype pixels = 0;
        for (const auto& [hash, sprite] : sprites_) pixels += sprite->keptPixels();
        return pixels;
    };
    if (kept() <= kMostSpritePixels) return;
    std::erase_if(sprites_, [](const auto& each) { return each.second.use_count() == 1; });
    if (kept() <= kMostSpritePixels) return;
    for (auto& [hash, sprite] : sprites_) {
        if (sprite->isLarge()) sprite->forget();
    }
}

}  // namespace tiepoint::ui
