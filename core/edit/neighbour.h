#pragma once
// Walking over holes with arrow keys, and stretching ends from hole to hole. Pure functions.

#include "core/edit/edit.h"

#include <optional>

namespace tiepoint {

/// The hole that the eye takes for the next one to the right (columns 1), left (-1), below (rows 1) or above (-1); over the gap, to
/// rails and to other boards too. Nothing at the edge of the last board. One of the two is 0.
std::optional<Hole> neighbourHole(const Bench& bench, const Hole& hole, int columns, int rows);

/// Where a walk begins: hole a1 of the first board, or nothing on a bench without boards.
std::optional<Hole> firstHole(const Bench& bench);

/// The part with one lead moved to the neighbouring hole, or the jumper with one end moved; the result may be refused.
/// Nothing if the lead hangs or the walk ends there.
std::optional<Part> stretched(const Bench& bench, const Part& part, int lead, int columns, int rows);
std::optional<Jumper> stretched(const Bench& bench, const Jumper& jumper, int end, int columns, int rows);

}  // namespace tiepoint
