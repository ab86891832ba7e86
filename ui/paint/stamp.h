#pragma once
// Lays rows of pixels over others, for pictures that are put together from thousands of small pieces: without a painter's call for each.
// What is laid on top is ARGB32, premultiplied; what it is laid on RGB32, or ARGB32 premultiplied. Any thread.

#include <QImage>
#include <QRect>

namespace tiepoint::ui {

/// Lays `count` pixels over as many others. Rounds as the raster engine does.
void layOver(QRgb* target, const QRgb* above, int count);

/// Lays the part of a picture that falls into `clip` over `target`, the picture's corner at `at`. The target isn't shared with another image.
void stampOver(QImage& target, const QRect& clip, QPoint at, const QImage& stamp);

}  // namespace tiepoint::ui
