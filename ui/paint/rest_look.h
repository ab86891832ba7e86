#pragma once
// What parts and jumpers look like at rest, apart from their names and from where they lie: equal looks may be painted once and moved.

#include "ui/paint/patch.h"
#include "ui/paint/picture.h"

namespace tiepoint::ui {

/// Of a part; `mm`: its bounds. Supplies and meters show their names, so that none looks like another.
PatchLook restLook(const Picture& picture, int part, const QRectF& mm);
PatchLook restLookOfJumper(const Picture& picture, int jumper, const QRectF& mm);

}  // namespace tiepoint::ui
