#pragma once
// What changes while the bench is projected for a room: what fills the window, and how large words stand. Pure functions.

#include "ui/paint/picture.h"

#include <QRectF>

namespace tiepoint::ui {

/// Capitals as shares of the window's height, so that the back row reads them.
inline constexpr double kReadingCapShare = 1.0 / 30;
inline constexpr double kWordCapShare = 1.0 / 40;

/// The circuit with three columns on either side: everything plugged in, and the supplies. The whole table where nothing is plugged in. mm.
QRectF circuitArea(const Picture& picture);

/// Sizes of words for a window of that height (pixels) at that zoom; never smaller than at a desk.
WordSizes projectedSizes(double heightPixels, double pixelsPerMm);

}  // namespace tiepoint::ui
