#pragma once
// The pixels of one layer, kept from frame to frame where there is anything: its patches' sprites, laid over each other. Given the layer's
// patches it lays anew only where one has come, gone or looks otherwise, and what comes into sight. Places are device pixels from the bench's origin. Belongs
// to the window's thread, but for the work that it hands out.

#include "ui/paint/patch.h"
#include "ui/view/parallel_for.h"
#include "ui/view/patch_sprites.h"
#include "ui/view/tile_sheet.h"

#include <QImage>
#include <QRegion>

#include <atomic>
#include <memory>
#include <vector>

namespace tiepoint::ui {

class PatchLayer {
public:
    /// What layers share must outlive them.
    PatchLayer(TileStore& store, PatchSprites& sprites) : sprites_(sprites), pixels_(store) {}

    /// Takes what the layer holds now, at the sprites' zoom. `sight`: what has to be at hand; `room`: what may be, with a margin for panning.
    /// Whether anything came, went or looks otherwise.
    bool take(const Patches& patches, const QRect& sight, const QRect& room);
    /// Whether the pixels of the last `take` serve for this sight too; then `keep` them.
    bool reaches(const QRect& sight) const { return sight.isEmpty() || pixels_.area().contains(sight); }
    void keep() { changed_ = unlaid_ = {}; }
    /// Forgets everything: the sprites are of another theme or zoom.
    void clear();

    /// What has to be done after a `take`, in pieces for whatever threads: first all that `preparations` returns, then all of `layings`. All layers
    /// that share sprites take before any prepares.
    Work preparations();
    Work layings();
    /// All of that, one after the other.
    void layAll();

    /// What `take` found to look otherwise than before, within sight.
    const QRegion& changed() const { return changed_; }
    /// Where its pixels cover what lies under them.
    const QRegion& opaque() const { return opaque_; }
    /// Lays what there is within `rect` over the target; `toTarget`: where the bench's origin is in it. Any thread, while nothing is taken or laid.
    void lay(PixelRows<QRgb> target, const QRect& rect, QPoint toTarget) const { pixels_.lay(target, rect, toTarget); }
    /// The same for where it is opaque.
    void copy(PixelRows<QRgb> target, const QRect& rect, QPoint toTarget) const {
        pixels_.copy(target, rect, toTarget);
    }
    /// Pixels laid anew so far, for tests and benchmarks.
    long long laidPixels() const { return laidPixels_; }

private:
    struct Entry {
        Patch patch;
        QRect rect;
        std::shared_ptr<Sprite> sprite;
    };
    Entry entryOf(const Patch& patch);
    /// Takes the patches for the entries. Returns where one came, went or looks otherwise; what stays has kept its order.
    std::vector<QRect> follow(const Patches& patches);
    void followOpaque();
    template <class Rects>
    QRegion cellsOf(const Rects& rects, int cell) const;
    void layBand(const QRegion& band);

    PatchSprites& sprites_;
    std::vector<Entry> entries_;
    TileSheet pixels_;
    QRegion changed_, unlaid_, opaque_;
    std::atomic<long long> laidPixels_ = 0;
};

}  // namespace tiepoint::ui
