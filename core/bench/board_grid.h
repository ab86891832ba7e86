#pragma once
// Which boards overlap, found in linear time. Not thread-safe.

#include "core/bench/bench.h"

#include <cstdint>
#include <optional>
#include <unordered_map>
#include <vector>

namespace tiepoint {

/// A grid over the table with cells of the largest board: each board touches at most four, and few boards
/// that don't overlap fit into one. The boards must outlive the grid and have kinds and finite places.
class BoardGrid {
public:
    explicit BoardGrid(const std::vector<Board>& boards) : boards_(boards) {}

    /// Puts a board down, by index. Returns a board put down before that it overlaps; boards that share an
    /// edge don't.
    std::optional<int> add(int index);

private:
    const std::vector<Board>& boards_;
    std::unordered_map<std::int64_t, std::vector<int>> cells_;
};

}  // namespace tiepoint
