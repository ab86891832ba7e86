#pragma once
// Holes that a guide points at: a ring and an arrow from above. Ends that are still open: a ring broken in four, in the ink of the board, for
// nothing is wrong there. In millimetres of the bench.

#include "ui/paint/patch.h"
#include "ui/paint/picture.h"

#include <QPainterPath>

namespace tiepoint::ui {

void addGuideMarks(Patches& patches, const Picture& picture);
/// A ring broken in four, in whatever unit the painter has.
QPainterPath brokenRing(QPointF centre, double radius);

}  // namespace tiepoint::ui
