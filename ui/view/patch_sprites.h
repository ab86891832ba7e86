#pragma once
// Pixels of patches, each painted once and as a whole, wherever on the screen and for whatever reason they are wanted. So what is on the
// screen never depends on what was there before: it is put together from sprites by whole pixels. Patches that look the same wherever they
// lie share one, between layers too.

#include "ui/paint/patch.h"
#include "ui/view/parallel_for.h"
#include "ui/view/tile_sheet.h"

#include <memory>
#include <unordered_map>
#include <vector>

namespace tiepoint::ui {

/// Where a patch's pixels lie. Movable ones are rounded to half a pixel, or to a pixel where these are small.
struct SpritePlace {
    QPoint corner;  ///< pixels from the bench's origin
    QSize size;
    QPointF zero;  ///< the drawing's 0,0, from the corner

    static SpritePlace of(const Patch& patch, double pixelsPerMm);
    QRect rect() const { return {corner, size}; }
};

/// The pixels of one drawing. Large ones are painted in blocks, as far as they are wanted.
class Sprite {
public:
    Sprite(TileStore& store, const Patch& patch, const SpritePlace& place, const Theme& theme, double pixelsPerMm);

    bool shows(const Patch& patch, const SpritePlace& place) const;
    /// Adds work that paints what isn't there yet of a part of it, in pixels from its corner; to be done before the next `lay`, in whatever threads.
    void prepare(const QRect& wanted, Work& work);
    /// Lays what falls into `clip`; `at`: where its corner is in the target. Any thread, while nothing is painted.
    void lay(PixelRows<QRgb> target, const QRect& clip, QPoint at, int opacity) const {
        pixels_.lay(target, clip.translated(-at) & QRect(QPoint(0, 0), size_), at, opacity);
    }
    /// Gives its pixels back; they are painted anew when they are wanted.
    void forget();
    bool isLarge() const;
    qsizetype keptPixels() const { return pixels_.keptPixels(); }

private:
    void paint(const QRect& block);

    std::shared_ptr<const Drawing> drawing_;
    const Theme& theme_;
    double pixelsPerMm_;
    QSize size_;
    QPointF zero_;
    int blockSide_;
    TileSheet pixels_;
    std::vector<char> painted_;  ///< by block, row after row
};

/// All sprites of a theme and a zoom. Belongs to the window's thread.
class PatchSprites {
public:
    /// The store must outlive the sprites.
    explicit PatchSprites(TileStore& store) : store_(store) {}

    /// For another theme or zoom: forgets all. Sprites that are still held stay as they are.
    void begin(const Theme& theme, double pixelsPerMm);
    /// That of a patch, a new one if there is none yet. Hold it as long as it is in use.
    std::shared_ptr<Sprite> find(const Patch& patch, const SpritePlace& place);
    double pixelsPerMm() const { return pixelsPerMm_; }
    /// Where sprites take much memory: forgets those that no one holds, and then the pixels of large ones.
    void trim();

private:
    TileStore& store_;
    const Theme* theme_ = nullptr;
    double pixelsPerMm_ = 0;
    std::unordered_multimap<std::size_t, std::shared_ptr<Sprite>> sprites_;
};

}  // namespace tiepoint::ui
