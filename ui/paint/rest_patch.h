#pragma once
// Parts and jumpers at rest: unlit, unpressed, without live figures. Those that lie alike are the same mark, wherever they lie; behind
// turned boards they are ghosts.

#include "ui/paint/patch.h"
#include "ui/paint/picture.h"

namespace tiepoint::ui {

Patch restPatch(const Picture& picture, int part);
Patch restPatchOfJumper(const Picture& picture, int jumper);

}  // namespace tiepoint::ui
