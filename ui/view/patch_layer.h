#pragma once
// The pixels of one layer, kept from frame to frame where there is anything. Given the layer's patches it paints only what is new, has gone or looks otherwise,
// and what comes into sight. Places are device pixels from the bench's origin. `take` belongs to the window's thread; `paint` may
// run in another one, as long as what the patches refer to doesn't change meanwhile.

#include "ui/paint/patch.h"
#include "ui/view/cell_grid.h"
#include "ui/view/kept_pixels.h"
#include "ui/view/patch_stamps.h"

#include <QImage>
#include <QRegion>

#include <array>
#include <compare>
#include <cstdint>
#include <functional>
#include <vector>

namespace tiepoint::ui {

class PatchLayer {
public:
    PatchLayer() = default;
    /// A layer that is kept together with the one under it, so that a frame draws both at once. Give the lower one its patches first,
    /// and paint it first.
    explicit PatchLayer(const PatchLayer& under) : under_(&under) {}
    PatchLayer& operator=(const PatchLayer&) = delete;

    /// Takes what the layer holds now. `sight`: what has to be at hand; `room`: what may be, with a margin for panning.
    void take(Patches patches, const QRect& sight, const QRect& room, double pixelsPerMm);
    /// Whether the pixels of the last `take` serve for this sight too; then `keep` them.
    bool reaches(const QRect& sight, double pixelsPerMm) const {
        return pixelsPerMm == pixelsPerMm_ && (sight.isEmpty() || room_.contains(sight)) && (!under_ || under_->unpainted_.isEmpty());
    }
    void keep() { changed_ = unpainted_ = {}; }
    /// Forgets everything: another theme, for example.
    void clear();
    bool isUnpainted() const { return !unpainted_.isEmpty(); }
    /// Work that `paint` would have to do first, in small pieces: to be done before it, in whatever threads.
    std::vector<std::function<void()>> preparations();
    /// Paints what the last `take` found to be painted, and lets go of the patches.
    void paint();

    /// What `take` found to look otherwise than before, within sight.
    const QRegion& changed() const { return changed_; }
    /// Where its pixels cover what lies under them.
    QRegion opaque() const { return under_ ? opaque_ | under_->opaque() : opaque_; }
    /// Lays what there is within `rect` over the target; `toTarget`: where the bench's origin is in it. Any thread, while nothing is taken or painted.
    void lay(QImage& target, const QRect& rect, QPoint toTarget) const;
    /// The same for where it is opaque.
    void copy(QImage& target, const QRect& rect, QPoint toTarget) const;
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
    void paintOver(const QRect& rect);
    template <class Row>
    void forRows(QImage& target, const QRect& rect, QPoint toTarget, Row row) const;
    bool isEmpty(const QRect& rect) const;
    void reach(const QRect& area, const QSize& most);
    /// Takes the keys of the patches; returns those that came or went.
    std::vector<Key> followKeys();
    QRegion cellsOf(const std::vector<Key>& keys) const;
    /// Where there is anything.
    QRect extent() const;

    const PatchLayer* under_ = nullptr;
    Patches patches_;
    PatchStamps stamps_;
    std::vector<Key> keys_;
    QRect room_;          ///< where everything is kept
    KeptPixels pixels_;   ///< as much of that as has something in it
    double pixelsPerMm_ = 0;
    CellGrid filled_;  ///< cells that aren't empty
    QRegion changed_, unpainted_, opaque_;
    long long paintedPixels_ = 0;
};

}  // namespace tiepoint::ui
