#pragma once
// Which things on the table overlap, found in linear time. Not thread-safe.

#include "core/base/geometry.h"

#include <cstdint>
#include <optional>
#include <unordered_map>
#include <vector>

namespace tiepoint {

/// A grid over the table with cells of the largest board: each frame of a board or a box touches a few, and few that don't overlap fit into
/// one.
class FrameGrid {
public:
    /// Puts a frame (mm, at finite places) down. Returns the number of one put down before that it overlaps, counted from 0 in the order of
    /// calls; frames that share an edge don't. One that overlaps is counted, but not put down.
    std::optional<int> add(const Rect& frame);

private:
    std::vector<Rect> frames_;
    std::unordered_map<std::int64_t, std::vector<int>> cells_;
};

/// Whether two frames lie over each other by more than the rounding of places.
bool overlap(const Rect& a, const Rect& b);

}  // namespace tiepoint
