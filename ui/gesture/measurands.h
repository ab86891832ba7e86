#pragma once
// What can be measured where the hand is. Pure functions of a picture.

#include "ui/paint/picture.h"
#include "ui/scene/under.h"

#include <vector>

namespace tiepoint::ui {

/// What lies under the pointer can be read so, the likeliest first.
std::vector<Measurand> measurandsOf(const Picture& picture, const Under& under);
/// The same for the one thing that is selected, or else for what is in the hole of the keyboard's cursor.
std::vector<Measurand> measurandsOf(const Picture& picture, const std::optional<Hole>& cursor);

}  // namespace tiepoint::ui
