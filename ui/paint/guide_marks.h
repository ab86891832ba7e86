#pragma once
// Holes that a guide points at: a ring and an arrow from above, in millimetres of the bench.

#include "ui/paint/patch.h"
#include "ui/paint/picture.h"

namespace tiepoint::ui {

void addGuideMarks(Patches& patches, const Picture& picture);

}  // namespace tiepoint::ui
