#pragma once
// Parts and jumpers that are dragged together, drawn over the bench where they would go.

#include "ui/paint/patch.h"
#include "ui/paint/picture.h"

namespace tiepoint::ui {

constexpr double kCarriedOpacity = 0.88,
                 kRefusedOpacity = 0.5;  ///< of what is in the hand; of what can't go there

/// The group of the picture's marks, if there is one.
void addCarriedGroup(Patches& patches, const Picture& picture);

}  // namespace tiepoint::ui
