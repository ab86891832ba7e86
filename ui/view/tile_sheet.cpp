#include "ui/view/tile_sheet.h"

#include "ui/paint/grid_index.h"

#include <algorithm>
#include <cstring>
#include <utility>

namespace tiepoint::ui {
namespace {

constexpr int kSide = TileSheet::kSide, kCell = TileSheet::kCell, kCells = kSide / kCell;
constexpr std::uint16_t kAllFilled = 0xffff;
static_assert(kCells * kCells == 16, "a tile's cells must fit its bits");

/// The tile in which a pixel lies, before the plane's origin too.
int tileOf(int x) { return x >= 0 ? x / kSide : (x + 1) / kSide - 1; }

bool isEmpty(const QRgb* row, int count) {
    return std::all_of(row, row + count, [](QRgb pixel) { return pixel == 0; });
}

}  // namespace

QRgb* TileStore::take() {
    QRgb* tile = nullptr;
    {
        const std::lock_guard lock(mutex_);
        if (free_.empty()) {
            constexpr std::size_t kSlab = kLargePage / sizeof(QRgb);
            slabs_.push_back(largePixels(kSlab));
            for (std::size_t at = kSlab; at > 0; at -= kPixels) free_.push_back(slabs_.back().get() + at - kPixels);
        }
        tile = free_.back();
        free_.pop_back();
    }
    std::memset(tile, 0, kPixels * sizeof(QRgb));
    return tile;
}

void TileStore::giveBack(QRgb* tile) {
    const std::lock_guard lock(mutex_);
    free_.push_back(tile);
}

QRect TileSheet::tilesOf(const QRect& rect) {
    if (rect.isEmpty()) return {};
    return {QPoint(tileOf(rect.left()), tileOf(rect.top())), QPoint(tileOf(rect.right()), tileOf(rect.bottom()))};
}

QRect TileSheet::wholeTiles(const QRect& rect) {
    const QRect tiles = tilesOf(rect);
    return {tiles.topLeft() * kSide, tiles.size() * kSide};
}

void TileSheet::reach(const QRect& area) {
    const QRect before = std::exchange(inTiles_, tilesOf(area));
    area_ = wholeTiles(area);
    std::vector<Tile> tiles(gridSize(inTiles_.width(), inTiles_.height()));
    for (int y = before.top(); y <= before.bottom(); ++y) {
        for (int x = before.left(); x <= before.right(); ++x) {
            const Tile& tile = tiles_[gridIndex(x - before.left(), y - before.top(), before.width())];
            if (inTiles_.contains(x, y)) {
                tiles[gridIndex(x - inTiles_.left(), y - inTiles_.top(), inTiles_.width())] = tile;
            } else if (tile.pixels) {
                store_.giveBack(tile.pixels);
            }
        }
    }
    tiles_ = std::move(tiles);
}

template <class Work>
void TileSheet::forTiles(const QRect& rect, Work work) const {
    const QRect tiles = tilesOf(rect) & inTiles_;
    for (int y = tiles.top(); y <= tiles.bottom(); ++y) {
        for (int x = tiles.left(); x <= tiles.right(); ++x) {
            const QRect whole = tile(x, y);
            work(gridIndex(x - inTiles_.left(), y - inTiles_.top(), inTiles_.width()), whole.topLeft(), whole & rect);
        }
    }
}

void TileSheet::put(const QImage& from, QPoint at) {
    forTiles(QRect(at, from.size()),
             [&](std::size_t i, QPoint corner, const QRect& rect) { putTile(tiles_[i], corner, rect, from, at); });
}

void TileSheet::putTile(Tile& tile, QPoint corner, const QRect& rect, const QImage& from, QPoint at) {
    const PixelRows<const QRgb> all = rowsOf(from), fresh{all.at(rect.topLeft() - at), all.stride};
    if (!tile.pixels) {
        bool empty = true;
        for (int y = 0; y < rect.height() && empty; ++y) empty = isEmpty(fresh.at({0, y}), rect.width());
        if (empty) return;
        tile.pixels = store_.take();
    }
    const QRect inTile = rect.translated(-corner);
    const PixelRows<QRgb> pixels{tile.pixels, kSide};
    copyBlock({pixels.at(inTile.topLeft()), kSide}, fresh, inTile.size());
    for (int row = inTile.top() / kCell; row <= inTile.bottom() / kCell; ++row) {
        for (int column = inTile.left() / kCell; column <= inTile.right() / kCell; ++column) {
            bool empty = true;
            for (int y = 0; y < kCell && empty; ++y)
                empty = isEmpty(pixels.at({column * kCell, row * kCell + y}), kCell);
            const auto bit = static_cast<std::uint16_t>(1U << (row * kCells + column));
            tile.filled = static_cast<std::uint16_t>(empty ? tile.filled & ~bit : tile.filled | bit);
        }
    }
    if (tile.filled == 0) store_.giveBack(std::exchange(tile.pixels, nullptr));
}

void TileSheet::lay(PixelRows<QRgb> target, const QRect& rect, QPoint toTarget, int opacity) const {
    forTiles(rect, [&](std::size_t i, QPoint corner, const QRect& piece) {
        const Tile& tile = tiles_[i];
        if (tile.filled == 0) return;
        const PixelRows<const QRgb> pixels{tile.pixels, kSide};
        const auto layPart = [&](const QRect& inTile) {
            if (!inTile.isEmpty())
                layBlock({target.at(corner + inTile.topLeft() + toTarget), target.stride},
                         {pixels.at(inTile.topLeft()), kSide}, inTile.size(), opacity);
        };
        const QRect inTile = piece.translated(-corner);
        if (tile.filled == kAllFilled) return layPart(inTile);
        for (int row = inTile.top() / kCell; row <= inTile.bottom() / kCell; ++row) {
            const unsigned cells = (tile.filled >> (row * kCells)) & ((1U << kCells) - 1);
            for (int first = 0; first < kCells; ++first) {
                if (!(cells >> first & 1U)) continue;
                int end = first + 1;
                while (end < kCells && (cells >> end & 1U)) ++end;
                layPart(QRect(first * kCell, row * kCell, (end - first) * kCell, kCell) & inTile);
                first = end;
            }
        }
    });
}

void TileSheet::copy(PixelRows<QRgb> target, const QRect& rect, QPoint toTarget) const {
    forTiles(rect, [&](std::size_t i, QPoint corner, const QRect& piece) {
        const PixelRows<const QRgb> pixels{tiles_[i].pixels, kSide};
        if (pixels.first)
            copyBlock({target.at(piece.topLeft() + toTarget), target.stride},
                      {pixels.at(piece.topLeft() - corner), kSide}, piece.size());
    });
}

qsizetype TileSheet::keptPixels() const {
    return std::ranges::count_if(tiles_, [](const Tile& tile) { return tile.pixels != nullptr; }) *
           static_cast<qsizetype>(TileStore::kPixels);
}

}  // namespace tiepoint::ui
