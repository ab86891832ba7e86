#pragma once
// A frame as the pile of pictures that it is put together from: the table, boards, metal and light, arrows on these, parts, what glows and is
// pressed on them, arrows, words, marks of the hand. It is put together tile by tile of the layers, so that its pixels stay near the processor.
// Places are device pixels of the viewport. Several threads may compose at a time, each other pieces.

#include "ui/paint/sprites.h"
#include "ui/view/patch_layer.h"

#include <QImage>
#include <QRegion>

#include <array>
#include <vector>

namespace tiepoint::ui {

/// Stamps by the tile that they touch, so that a piece finds its own.
class StampGrid {
public:
    /// Takes other stamps, placed from the bench's origin; where one has come or gone, in the viewport.
    std::vector<QRect> replace(std::vector<Stamp> stamps, QPoint origin, const QSize& viewport);
    /// Lays what falls into `piece`, which lies within one tile, in pixels from the bench's origin. `toTarget`: where that is in the target.
    void lay(PixelRows<QRgb> target, const QRect& piece, QPoint toTarget) const;

private:
    void sort(const QRect& sight);

    /// A picture's number and its corner: what a stamp is known by.
    using Key = std::array<qint64, 3>;
    std::vector<Stamp> stamps_;
    std::vector<std::pair<Key, QRect>> keys_;  ///< sorted
    QRect tiles_;                              ///< in sight
    std::vector<std::vector<int>> byTile_;     ///< by row
};

struct FrameStack {
    const std::vector<QRgb>& table;           ///< its colour in each row of the viewport
    const std::array<PatchLayer, 6>& layers;  ///< boards, under the parts, parts, on these, words, marks of the hand
    const std::array<StampGrid, 2>& arrows;   ///< under and over the parts
    QPoint origin;                            ///< of the bench

    /// Puts the region together on `target`, whose pixels no one else touches meanwhile. `shift`: from the viewport to the target.
    void compose(PixelRows<QRgb> target, const QRegion& region, QPoint shift) const;

private:
    /// A piece within one tile, from the bench's origin.
    void composePiece(PixelRows<QRgb> target, const QRect& piece, bool solid, QPoint shift) const;
};

}  // namespace tiepoint::ui
