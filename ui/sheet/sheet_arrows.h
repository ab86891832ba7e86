#pragma once
// Arrows of current on a circuit diagram, by the law of the board: breadth, speed, threads and spacing are those of arrow_marks.h.

#include "ui/paint/arrow_marks.h"
#include "ui/sheet/sheet_painter.h"

namespace tiepoint::ui {

std::vector<ArrowMark> sheetArrows(const SheetPicture& picture);

}  // namespace tiepoint::ui
