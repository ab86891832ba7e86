#include "core/bench/frame_grid.h"

#include <algorithm>
#include <cmath>

namespace tiepoint {
namespace {

constexpr double kCellWidthMm = 165, kCellHeightMm = 55;
constexpr double kTouchMm = 0.01;  // docked boards share an edge, up to the rounding of their places

std::int64_t cellAt(double mm, double sizeMm) { return static_cast<std::int64_t>(std::floor(mm / sizeMm)); }

}  // namespace

bool overlap(const Rect& a, const Rect& b) {
    return std::min(a.right(), b.right()) - std::max(a.left, b.left) > kTouchMm &&
           std::min(a.bottom(), b.bottom()) - std::max(a.top, b.top) > kTouchMm;
}

std::optional<int> FrameGrid::add(const Rect& frame) {
    const int number = static_cast<int>(frames_.size());
    frames_.push_back(frame);
    const auto forEachCell = [&](auto visit) {
        for (auto x = cellAt(frame.left, kCellWidthMm); x <= cellAt(frame.right(), kCellWidthMm); ++x)
            for (auto y = cellAt(frame.top, kCellHeightMm); y <= cellAt(frame.bottom(), kCellHeightMm); ++y)
                visit(cells_[(x << 32) ^ (y & 0xFFFFFFFF)]);
    };
    std::optional<int> under;
    forEachCell([&](const std::vector<int>& neighbours) {
        for (const int other : neighbours) {
            if (!under && overlap(frame, frames_[other])) under = other;
        }
    });
    if (!under) forEachCell([&](std::vector<int>& neighbours) { neighbours.push_back(number); });
    return under;
}

}  // namespace tiepoint
