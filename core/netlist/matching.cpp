#include "core/netlist/matching.h"

#include <algorithm>
#include <cstdint>
#include <numeric>
#include <unordered_map>
#include <utility>

namespace tiepoint {
namespace {

class AugmentingPaths {
public:
    AugmentingPaths(int count, const std::function<bool(int, int)>& suits)
        : count_(count),
          suits_(suits),
          leftOf_(static_cast<std::size_t>(count), -1),
          rightOf_(static_cast<std::size_t>(count), -1),
          free_(static_cast<std::size_t>(count)) {
        std::iota(free_.begin(), free_.end(), 0);
    }

    std::vector<int> run() {
        for (int left = 0; left < count_; ++left) {
            if (!takeFree(left) && !makeRoom(left)) return {};
        }
        return std::move(rightOf_);
    }

private:
    bool suits(int left, int right) {
        const auto pair = static_cast<std::uint64_t>(left) << 32 | static_cast<std::uint64_t>(right);
        const auto [known, isNew] = known_.try_emplace(pair, false);
        if (isNew) known->second = suits_(left, right);
        return known->second;
    }

    void pair(int left, int right) {
        leftOf_[right] = left;
        rightOf_[left] = right;
    }

    /// Mostly nobody has to move.
    bool takeFree(int left) {
        const auto found = std::ranges::find_if(free_, [&](int right) { return suits(left, right); });
        if (found == free_.end()) return false;
        pair(left, *found);
        free_.erase(found);
        return true;
    }

    /// Others move on along the shortest way that ends at a free one.
    bool makeRoom(int start) {
        std::vector<int> lefts{start}, reachedFrom(static_cast<std::size_t>(count_), -1);
        for (std::size_t i = 0; i < lefts.size(); ++i) {
            for (int right = 0; right < count_; ++right) {
                if (reachedFrom[right] >= 0 || !suits(lefts[i], right)) continue;
                reachedFrom[right] = lefts[i];
                if (leftOf_[right] < 0) {
                    moveOn(start, right, reachedFrom);
                    return true;
                }
                lefts.push_back(leftOf_[right]);
            }
        }
        return false;
    }

    void moveOn(int start, int right, const std::vector<int>& reachedFrom) {
        std::erase(free_, right);
        while (right >= 0) {
            const int left = reachedFrom[right];
            const int next = left == start ? -1 : rightOf_[left];
            pair(left, right);
            right = next;
        }
    }

    int count_;
    const std::function<bool(int, int)>& suits_;
    std::unordered_map<std::uint64_t, bool> known_;  // by left and right
    std::vector<int> leftOf_, rightOf_;              // -1: free
    std::vector<int> free_;                          // rights
};

}  // namespace

std::vector<int> perfectMatching(int count, const std::function<bool(int left, int right)>& suits) {
    return AugmentingPaths(count, suits).run();
}

}  // namespace tiepoint
