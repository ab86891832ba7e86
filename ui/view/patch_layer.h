#pragma once
// The pixels of one layer, kept from frame to frame where there is anything. Given the layer's patches it paints only what is new, has gone or looks otherwise,
// and what comes into sight. Places are device pixels from the bench's origin. Belongs to the window's thread, but for the work that it hands
// out; what the patches refer to must not change until `finish`.

#include "ui/paint/patch.h"
#include "ui/view/do_together.h"
#include "ui/view/patch_stamps.h"
#include "ui/view/tile_sheet.h"

#include <QImage>
#include <QRegion>

#include <array>
#include <atomic>
#include <compare>
#include <cstdint>
#include <functional>
#include <vector>

namespace tiepoint::ui {

class PatchLayer {
public:
    /// What layers share must outlive them.
    PatchLayer(TileStore& store, PatchStamps& stamps) : stamps_(stamps), pixels_(store) {}

    /// Takes what the layer holds now. `sight`: what has to be at hand; `room`: what may be, with a margin for panning.
    void take(Patches patches, const QRect& sight, const QRect& room, double pixelsPerMm);
    /// Whether the pixels of the last `take` serve for this sight too; then `keep` them.
    bool reaches(const QRect& sight, double pixelsPerMm) const {
        return pixelsPerMm == pixelsPerMm_ && (sight.isEmpty() || pixels_.area().contains(sight));
    }
    void keep() { changed_ = unpainted_ = {}; }
    /// Forgets everything but the stamps: another theme, for example.
    void clear();

    /// What has to be done after a `take`, in pieces for whatever threads: first all that `preparations` returns, then all of `paintings`,
    /// then `finish`. All layers that share stamps take before any prepares.
    Work preparations();
    Work paintings();
    void finish();
    /// All of that, one after the other.
    void paint();

    /// What `take` found to look otherwise than before, within sight.
    const QRegion& changed() const { return changed_; }
    /// Where its pixels cover what lies under them.
    const QRegion& opaque() const { return opaque_; }
    /// Lays what there is within `rect` over the target; `toTarget`: where the bench's origin is in it. Any thread, while nothing is taken or painted.
    void lay(PixelRows<QRgb> target, const QRect& rect, QPoint toTarget) const { pixels_.lay(target, rect, toTarget); }
    /// The same for where it is opaque.
    void copy(PixelRows<QRgb> target, const QRect& rect, QPoint toTarget) const {
        pixels_.copy(target, rect, toTarget);
    }
    /// Pixels painted so far, for tests and benchmarks.
    long long paintedPixels() const { return paintedPixels_; }

private:
    /// Look and place of a patch.
    struct Key {
        std::uint64_t look;
        std::array<int, 4> place;  ///< in parts of a pixel, so that what looks alike is alike
        friend auto operator<=>(const Key&, const Key&) = default;
        QRectF pixels() const;
    };
    Key keyOf(const Patch& patch) const;
    /// Takes the keys of the patches; returns those that came or went.
    std::vector<Key> followKeys();
    QRegion cellsOf(const std::vector<Key>& keys, int cell) const;
    void paintBand(const QRegion& band);
    void paintOver(QImage& sheet, const QRect& rect) const;

    Patches patches_;
    PatchStamps& stamps_;
    std::vector<Key> keys_;
    TileSheet pixels_;
    double pixelsPerMm_ = 0;
    QRegion changed_, unpainted_, opaque_;
    std::atomic<long long> paintedPixels_ = 0;
};

}  // namespace tiepoint::ui
