#pragma once
// Supplies and instruments on the table: put somewhere by hand, or back where they find a place by themselves. Pure functions that return
// edits.

#include "core/edit/edit.h"

namespace tiepoint {

/// Where a box comes to stand that is let go with its corner at a place (mm): at half pitches. In pitches.
Point boxLandsAt(Point cornerMm);
/// Puts a box with its corner at a place in pitches. All other boxes stay where they stand, so one that would find another place by itself
/// gets its present one. Fails, saying what is in the way, where the box would stand on a board or on another box.
Result<Edit> moveBoxEdit(const Bench& bench, const std::string& id, Point at);
/// Lets a box find its place beside the boards by itself.
Edit boxHomeEdit(const Bench& bench, const std::string& id);

}  // namespace tiepoint
