#include "core/scope/spark.h"

#include <algorithm>
#include <cmath>

namespace tiepoint {
namespace {

constexpr float kNoSpark = std::numeric_limits<float>::quiet_NaN();
constexpr double kOneLineShare = 2e-3;  ///< of the greatest figure: a reading that does no more than that stands still

}  // namespace

Spark::Spark() : tag_(kColumns, -1), least_(kColumns, kNoSpark), greatest_(kColumns, kNoSpark) {}

void Spark::begin() {
    std::ranges::fill(tag_, -1);
    begun_ = false;
}

void Spark::follow(double benchSecondsPerSeen) {
    if (rate_ == benchSecondsPerSeen) return;
    rate_ = benchSecondsPerSeen;
    columnSecond_ = kSeenSecond * rate_ / kColumns;
    begin();
}

void Spark::take(double second, double value) {
    if (std::isnan(value)) return;
    const auto column = static_cast<std::int64_t>(std::floor(second / columnSecond_));
    const auto at = static_cast<std::size_t>(column % kColumns);
    const auto v = static_cast<float>(value);
    if (tag_[at] != column) {
        tag_[at] = column;
        least_[at] = greatest_[at] = v;
    }
    least_[at] = std::min(least_[at], v);
    greatest_[at] = std::max(greatest_[at], v);
    now_ = column;
    begun_ = true;
}

void Spark::publish(PinnedTrace& out, double small) const {
    out.least.assign(kColumns, kNoSpark);
    out.greatest.assign(kColumns, kNoSpark);
    out.varies = false;
    if (!begun_) return;
    double lowest = std::numeric_limits<double>::infinity(), highest = -lowest;
    for (int i = 0; i < kColumns; ++i) {
        const std::int64_t column = now_ - (kColumns - 1) + i;
        const auto at = static_cast<std::size_t>((column % kColumns + kColumns) % kColumns);
        if (column < 0 || tag_[at] != column) continue;
        out.least[static_cast<std::size_t>(i)] = least_[at];
        out.greatest[static_cast<std::size_t>(i)] = greatest_[at];
        lowest = std::min<double>(lowest, least_[at]);
        highest = std::max<double>(highest, greatest_[at]);
    }
    const double size = std::max(std::abs(lowest), std::abs(highest));
    out.varies = highest - lowest > std::max(small, kOneLineShare * size);
}

}  // namespace tiepoint
