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

/// The em of tags at a desk, as a share of the window's height.
inline constexpr double kDeskTagShare = 1.0 / 46;
/// Sizes of words at a desk, in a window of that height (pixels) at that zoom; never smaller than on paper.
WordSizes deskSizes(double heightPixels, double pixelsPerMm);
/// The same for a room.
WordSizes projectedSizes(double heightPixels, double pixelsPerMm);

}  // namespace tiepoint::ui
