#pragma once
// A mend before it is carried out: what the mended bench would have otherwise, drawn over the bench as it is.

#include "ui/paint/patch.h"
#include "ui/paint/picture.h"

namespace tiepoint::ui {

/// The ghosts of parts and jumpers that the picture's mended bench has in other places or with other values, a ring about each hole that
/// something would go into, a tag for each value, and a cross over what would be taken away.
void addMended(Patches& patches, const Picture& picture);

}  // namespace tiepoint::ui
