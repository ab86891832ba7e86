#include "ui/view/frame_stack.h"

#include "ui/paint/grid_index.h"
#include "ui/paint/pixel_rows.h"

#include <algorithm>
#include <iterator>
#include <utility>

namespace tiepoint::ui {
namespace {

/// Calls `work` with the parts of a rectangle in the tiles of the plane.
template <class Work>
void forPieces(const QRect& rect, Work work) {
    const QRect tiles = TileSheet::tilesOf(rect);
    for (int y = tiles.top(); y <= tiles.bottom(); ++y) {
        for (int x = tiles.left(); x <= tiles.right(); ++x) work(TileSheet::tile(x, y) & rect);
    }
}

void fillRows(PixelRows<QRgb> target, const QRect& piece, const std::vector<QRgb>& rows, QPoint shift) {
    for (int y = piece.top(); y <= piece.bottom(); ++y)
        std::fill_n(target.at(QPoint(piece.left(), y) + shift), piece.width(), rows[static_cast<std::size_t>(y)]);
}

}  // namespace

std::vector<QRect> SpriteGrid::replace(std::vector<PlacedSprite> sprites, QPoint origin, const QSize& viewport) {
    sprites_ = std::move(sprites);
    const auto before = std::exchange(keys_, {});
    keys_.reserve(sprites_.size());
    for (const PlacedSprite& sprite : sprites_)
        keys_.emplace_back(Key{sprite.picture.cacheKey(), sprite.at.x(), sprite.at.y()}, sprite.rect());
    const auto byKey = [](const auto& a, const auto& b) { return a.first < b.first; };
    std::sort(keys_.begin(), keys_.end(), byKey);
    std::vector<std::pair<Key, QRect>> differing;
    std::set_symmetric_difference(before.begin(), before.end(), keys_.begin(), keys_.end(),
                                  std::back_inserter(differing), byKey);
    std::vector<QRect> changed;
    changed.reserve(differing.size());
    for (const auto& [key, rect] : differing) changed.push_back(rect.translated(origin));
    sort({-origin, viewport});
    return changed;
}

void SpriteGrid::sort(const QRect& sight) {
    tiles_ = TileSheet::tilesOf(sight);
    byTile_.resize(gridSize(tiles_.width(), tiles_.height()));
    for (std::vector<int>& tile : byTile_) tile.clear();
    for (int i = 0; i < static_cast<int>(sprites_.size()); ++i) {
        const QRect touched = TileSheet::tilesOf(sprites_[static_cast<std::size_t>(i)].rect()) & tiles_;
        for (int y = touched.top(); y <= touched.bottom(); ++y) {
            for (int x = touched.left(); x <= touched.right(); ++x)
                byTile_[gridIndex(x - tiles_.left(), y - tiles_.top(), tiles_.width())].push_back(i);
        }
    }
}

void SpriteGrid::lay(PixelRows<QRgb> target, const QRect& piece, QPoint toTarget) const {
    const QPoint tile = TileSheet::tilesOf(piece).topLeft();
    if (!tiles_.contains(tile)) return;
    for (const int i : byTile_[gridIndex(tile.x() - tiles_.left(), tile.y() - tiles_.top(), tiles_.width())]) {
        const PlacedSprite& sprite = sprites_[static_cast<std::size_t>(i)];
        const QRect rect = sprite.rect() & piece;
        if (rect.isEmpty()) continue;
        const PixelRows<const QRgb> pixels = rowsOf(sprite.picture);
        layBlock({target.at(rect.topLeft() + toTarget), target.stride},
                 {pixels.at(rect.topLeft() - sprite.at), pixels.stride}, rect.size());
    }
}

void FrameStack::composePiece(PixelRows<QRgb> target, const QRect& piece, bool solid, QPoint shift) const {
    const QPoint toTarget = origin + shift;
    const auto& [boards, under, items, parts, words, hand] = layers;
    if (solid) {
        boards.copy(target, piece, toTarget);
    } else {
        fillRows(target, piece.translated(origin), table, shift);
        boards.lay(target, piece, toTarget);
    }
    under.lay(target, piece, toTarget);
    arrows[0].lay(target, piece, toTarget);
    items.lay(target, piece, toTarget);
    parts.lay(target, piece, toTarget);
    arrows[1].lay(target, piece, toTarget);
    words.lay(target, piece, toTarget);
    hand.lay(target, piece, toTarget);
}

void FrameStack::compose(PixelRows<QRgb> target, const QRegion& region, QPoint shift) const {
    const QRegion onBench = region.translated(-origin), solid = onBench & layers.front().opaque();
    for (const QRect& rect : solid)
        forPieces(rect, [&](const QRect& piece) { composePiece(target, piece, true, shift); });
    for (const QRect& rect : onBench - solid)
        forPieces(rect, [&](const QRect& piece) { composePiece(target, piece, false, shift); });
}

}  // namespace tiepoint::ui
