#pragma once
// The colour of a part that gives several: what its lights make together in an eye that doesn't tell them apart.

#include "core/snapshot/snapshot.h"

#include <QColor>

namespace tiepoint::ui {

/// Not valid for parts with one light, and while none of several is lit. Light adds up linearly (Grassmann's laws); the primaries are those of the
/// palette, the nearest by wavelength.
QColor mixedLight(const Snapshot& snapshot, int part);

}  // namespace tiepoint::ui
