#pragma once
// Lays blocks of pixels over others, for pictures that are put together from thousands of small pieces: without a painter's call for each.
// What is laid on top is ARGB32, premultiplied; what it is laid on RGB32, or ARGB32 premultiplied. Any thread.

#include <QImage>
#include <QRect>

namespace tiepoint::ui {

/// The pixels of a picture as they lie in memory, row after row. Valid while the picture is neither copied nor changed elsewhere.
template <class Pixel>
struct PixelRows {
    Pixel* first = nullptr;
    qsizetype stride = 0;  ///< from row to row, in pixels
    Pixel* at(QPoint place) const { return first + place.y() * stride + place.x(); }
};

/// Those of an image that isn't shared with another one.
PixelRows<QRgb> rowsOf(QImage& image);
PixelRows<const QRgb> rowsOf(const QImage& image);

/// Lays `count` pixels over as many others. Rounds as the raster engine does.
void layOver(QRgb* target, const QRgb* above, int count);
/// The same for a block, `target` and `above` at its corner; `opacity`: of what is laid, up to kOpaque.
inline constexpr int kOpaque = 255;
void layBlock(PixelRows<QRgb> target, PixelRows<const QRgb> above, QSize size, int opacity = kOpaque);
/// Copies a block.
void copyBlock(PixelRows<QRgb> target, PixelRows<const QRgb> from, QSize size);

/// Lays the part of a picture that falls into `clip` over `target`, the picture's corner at `at`. The target isn't shared with another image.
void laySprite(QImage& target, const QRect& clip, QPoint at, const QImage& sprite);

}  // namespace tiepoint::ui
