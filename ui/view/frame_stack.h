#pragma once
// A frame as the pile of pictures that it is put together from: the table, the ground (boards, metal, light), arrows on it, parts, arrows on
// them, words, marks of the hand. A piece of the frame is put together in one go, so that its pixels stay near the processor.
// Places are device pixels of the viewport. Several threads may compose at a time, each other pieces.

#include "ui/paint/sprites.h"
#include "ui/view/patch_layer.h"

#include <QImage>
#include <QRegion>

#include <array>
#include <vector>

namespace tiepoint::ui {

/// Stamps by the square of the viewport that they touch, so that a piece finds its own.
class StampGrid {
public:
    static constexpr int kCell = 64;  ///< pixels
    /// Takes other stamps, placed from the bench's origin; where one has come or gone, in the viewport.
    std::vector<QRect> replace(std::vector<Stamp> stamps, QPoint origin, const QSize& viewport);
    /// Lays what falls into `piece`, which lies within one square. `shift`: from the viewport to the target.
    void lay(QImage& target, const QRect& piece, QPoint shift) const;

private:
    void sort(const QSize& viewport);

    /// A picture's number and its corner: what a stamp is known by.
    using Key = std::array<qint64, 3>;
    std::vector<Stamp> stamps_;                ///< in the viewport
    std::vector<std::pair<Key, QRect>> keys_;  ///< from the bench's origin, sorted
    std::vector<std::vector<int>> byCell_;
    int columns_ = 0;
};

struct FrameStack {
    const std::vector<QRgb>& table;  ///< its colour in each row of the viewport
    const PatchLayer &ground, &parts, &words, &hand;
    const std::array<StampGrid, 2>& arrows;  ///< under and over the parts
    QPoint origin;                           ///< of the bench

    /// Puts the region together on `target`, whose pixels no one else touches meanwhile. `shift`: from the viewport to the target.
    void compose(QImage& target, const QRegion& region, QPoint shift) const;

private:
    void composePiece(QImage& target, const QRect& piece, bool solid, QPoint shift) const;
};

}  // namespace tiepoint::ui
