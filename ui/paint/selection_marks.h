#pragma once
// The brackets of what is selected, and the line that ties a menu to it.

#include "ui/paint/patch.h"
#include "ui/paint/picture.h"

namespace tiepoint::ui {

/// All round the body of a part, mm.
QRectF bodyFrame(const Picture& picture, int part);
void addSelection(Patches& patches, const Picture& picture);
void addTie(Patches& patches, const Picture& picture);

}  // namespace tiepoint::ui
