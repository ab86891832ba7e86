#pragma once
// A frame as the pile of pictures that it is put together from: the table, boards, metal and light, arrows on these, parts, what glows and is
// pressed on them, arrows, words, marks of the hand. It is put together tile by tile of the layers, so that its pixels stay near the processor.
// Places are device pixels of the viewport. Several threads may compose at a time, each other pieces.
//
// Notes on the method: what is done, why, and what was tried. Figures are of one full board at 1080 lines, from the history of these files.
//
//  - Sprites (PatchSprites). A patch is painted once, as a whole or in fixed blocks, from its mark alone; everything after that moves whole pixels.
//    So what is on the screen can't depend on what was there before. Painting only what a change touches was tried first: gradients and dashes
//    come out otherwise where a shape is cut, and what was kept differed from a fresh picture. It was slow as well: fifty dragged things took
//    67 ms a frame, 9 ms once their pixels were moved.
//  - Layers (PatchLayer). The sprites of a layer are laid over each other once and kept, so that a tick of the arrows goes through six layers rather
//    than some hundred sprites. One picture of the viewport for each layer took four times 18 MB at a device pixel ratio of 2 and was moved at
//    each pan; tiles (TileSheet) take only what isn't empty and stay where they are.
//  - Frames (here). They were blended into a picture of the view and copied from there; now straight on the window's pixels, and only in
//    cells in which an arrow or a patch came or went. A pan slides what is on the screen. Laying thin rows as a whole was taken back:
//    a pan took 5.1 ms with it, 4.7 ms without.
//  - Rows (ui/paint/pixel_rows.cpp). Wide registers halve the time in which layers are laid over each other, which is most of a frame.
//  - Threads (parallelFor). Whatever is missing is painted by all processors; opening a bench of 100 parts was 60 ms, one processor idle. Threads wake each
//    other: woken all at once, two often shared a processor.
//  - Large pages (large_pages.h). Fresh memory costs a visit of the system for each page. Process time without and with them, medians of runs in
//    turn on a busy machine, at a device pixel ratio of 2: fifty dragged things 16.2 ms and 14.2 ms a frame, a pan 8.6 ms and 8.1 ms, a zoom
//    159 ms and 142 ms. At a ratio of 1 there is no difference.
//  - PixelSheet. The raster engine flattens curves in the units of their path: parts of a full board took 240 ms in millimetres, 39 ms in pixels.
//
// PlainFrame paints the same patches with a painter, each frame anew. tests/ui/canvas_test.cpp holds the two against each other.

#include "ui/paint/sprites.h"
#include "ui/view/patch_layer.h"

#include <QImage>
#include <QRegion>

#include <array>
#include <vector>

namespace tiepoint::ui {

/// Sprites by the tile that they touch, so that a piece finds its own.
class SpriteGrid {
public:
    /// Takes other sprites, placed from the bench's origin; where one has come or gone, in the viewport.
    std::vector<QRect> replace(std::vector<PlacedSprite> sprites, QPoint origin, const QSize& viewport);
    /// Lays what falls into `piece`, which lies within one tile, in pixels from the bench's origin. `toTarget`: where that is in the target.
    void lay(PixelRows<QRgb> target, const QRect& piece, QPoint toTarget) const;

private:
    void sort(const QRect& sight);

    /// A picture's number and its corner: what a sprite is known by.
    using Key = std::array<qint64, 3>;
    std::vector<PlacedSprite> sprites_;
    std::vector<std::pair<Key, QRect>> keys_;  ///< sorted
    QRect tiles_;                              ///< in sight
    std::vector<std::vector<int>> byTile_;     ///< by row
};

struct FrameStack {
    const std::vector<QRgb>& table;           ///< its colour in each row of the viewport
    const std::array<PatchLayer, 6>& layers;  ///< boards, under the parts, parts, on these, words, marks of the hand
    const std::array<SpriteGrid, 2>& arrows;  ///< under and over the parts
    QPoint origin;                            ///< of the bench

    /// Puts the region together on `target`, whose pixels no one else touches meanwhile. `shift`: from the viewport to the target.
    void compose(PixelRows<QRgb> target, const QRegion& region, QPoint shift) const;

private:
    /// A piece within one tile, from the bench's origin.
    void composePiece(PixelRows<QRgb> target, const QRect& piece, bool solid, QPoint shift) const;
};

}  // namespace tiepoint::ui
