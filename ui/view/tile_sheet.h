#pragma once
// Pixels of a large plane, kept in square tiles and only where there is anything: most layers of a picture are empty for the most part, and
// a tile stays where it is while the piece of the plane that is kept wanders over it.

#include "ui/paint/pixel_rows.h"
#include "ui/view/large_pages.h"

#include <QImage>
#include <QRect>

#include <cstddef>
#include <cstdint>
#include <mutex>
#include <vector>

namespace tiepoint::ui {

/// Memory for the tiles of several sheets. What one gives back serves the next. For any thread.
class TileStore {
public:
    static constexpr int kSide = 64;  ///< pixels of a tile
    static constexpr std::size_t kPixels = std::size_t{kSide} * kSide;

    /// Pixels of a tile, all transparent.
    QRgb* take();
    void giveBack(QRgb* tile);

private:
    std::mutex mutex_;
    std::vector<LargePixels> slabs_;
    std::vector<QRgb*> free_;
};

/// Colours are premultiplied; places are pixels of the plane.
class TileSheet {
public:
    static constexpr int kSide = TileStore::kSide;
    static constexpr int kCell = 16;  ///< pixels; it is known of each cell whether there is anything in it

    /// The store must outlive the sheet.
    explicit TileSheet(TileStore& store) : store_(store) {}
    ~TileSheet() { clear(); }
    TileSheet(const TileSheet&) = delete;
    TileSheet& operator=(const TileSheet&) = delete;

    /// The tiles that a rectangle touches, by column and row.
    static QRect tilesOf(const QRect& rect);
    /// The pixels of one.
    static QRect tile(int column, int row) { return {column * kSide, row * kSide, kSide, kSide}; }
    /// The pixels of all that a rectangle touches.
    static QRect wholeTiles(const QRect& rect);
    /// What is kept: whole tiles.
    const QRect& area() const { return area_; }
    /// Keeps another area from now on, of whole tiles. What comes in is empty.
    void reach(const QRect& area);
    void clear() { reach({}); }
    /// Takes the pixels of `from`, whose corner lies at `at`, for those of the plane. Several threads may do so at a time, each in tiles of its own.
    void put(const QImage& from, QPoint at);
    /// Lays what there is within `rect` over the target; `toTarget`: where the plane's origin is in it; `opacity`: up to kOpaque. Any thread, while
    /// nothing is put.
    void lay(PixelRows<QRgb> target, const QRect& rect, QPoint toTarget, int opacity = kOpaque) const;
    /// The same where everything is known to be opaque.
    void copy(PixelRows<QRgb> target, const QRect& rect, QPoint toTarget) const;
    /// Pixels for which it takes memory.
    qsizetype keptPixels() const;

private:
    struct Tile {
        QRgb* pixels = nullptr;    ///< none while it is empty
        std::uint16_t filled = 0;  ///< a bit for each cell that isn't empty, by row
    };
    template <class Work>
    void forTiles(const QRect& rect, Work work) const;
    void putTile(Tile& tile, QPoint corner, const QRect& rect, const QImage& from, QPoint at);

    TileStore& store_;
    QRect area_, inTiles_;     ///< the same in pixels and in tiles
    std::vector<Tile> tiles_;  ///< by row
};

}  // namespace tiepoint::ui
