#pragma once
// A leg in the wrong hole and the hole where it belongs: the column that is right is tinted, the wrong one an empty dashed outline, each with
// its number, and an arrow leaps from hole to hole. In millimetres of the bench.

#include "ui/paint/patch.h"
#include "ui/paint/picture.h"

namespace tiepoint::ui {

/// An arrow that leaps from a hole to another; its way bows upwards.
void addHop(Patches& patches, Point from, Point to);
/// What `picture.marks.hop` says; holes that don't exist are left out.
void addHopMarks(Patches& patches, const Picture& picture);

}  // namespace tiepoint::ui
