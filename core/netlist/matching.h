#pragma once
// Assigning things to partners where only some pairs suit: the classic augmenting paths.

#include <functional>
#include <vector>

namespace tiepoint {

/// By left thing, of as many on each side: its partner on the right; nothing if not all can have one. `suits` is asked at most once for each pair.
std::vector<int> perfectMatching(int count, const std::function<bool(int left, int right)>& suits);

}  // namespace tiepoint
