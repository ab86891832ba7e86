#include "core/bench/board_grid.h"

#include <algorithm>
#include <cmath>

namespace tiepoint {
namespace {

constexpr double kCellWidthMm = 165, kCellHeightMm = 55;
constexpr double kTouchMm = 0.01;  // docked boards share an edge, up to the rounding of their places

std::int64_t cellAt(double mm, double sizeMm) { return static_cast<std::int64_t>(std::floor(mm / sizeMm)); }

bool overlap(const Rect& a, const Rect& b) {
    return std::min(a.right(), b.right()) - std::max(a.left, b.left) > kTouchMm &&
           std::min(a.bottom(), b.bottom()) - std::max(a.top, b.top) > kTouchMm;
}

}  // namespace

std::optional<int> BoardGrid::add(int index) {
    const Rect frame = boards_[index].frameMm();
    for (auto x = cellAt(frame.left, kCellWidthMm); x <= cellAt(frame.right(), kCellWidthMm); ++x) {
        for (auto y = cellAt(frame.top, kCellHeightMm); y <= cellAt(frame.bottom(), kCellHeightMm); ++y) {
            std::vector<int>& neighbours = cells_[(x << 32) ^ (y & 0xFFFFFFFF)];
            for (const int other : neighbours) {
                if (overlap(frame, boards_[other].frameMm())) return other;
            }
            neighbours.push_back(index);
        }
    }
    return std::nullopt;
}

}  // namespace tiepoint
