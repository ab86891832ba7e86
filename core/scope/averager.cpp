#include "core/scope/averager.h"

#include <algorithm>
#include <cmath>

namespace tiepoint {
namespace {

constexpr double kSmallTurn = 0.02;  ///< of the swing in the window
constexpr double kNoSwing = 1e-6;    ///< of the largest figure: noise of the solve

}  // namespace

void Averager::turnAt(double value, double second) {
    if (!begun_) {
        begun_ = true;
        furthest_ = value;
        return;
    }
    const double least = std::max(kSmallTurn * swing_, kNoSwing * std::abs(value));
    if (way_ == 0) {
        if (std::abs(value - furthest_) <= least) return;
        way_ = value > furthest_ ? 1 : -1;
        furthest_ = value;
    } else if (way_ * (value - furthest_) > 0) {
        furthest_ = value;
    } else if (way_ * (furthest_ - value) > least) {
        way_ = -way_;
        furthest_ = value;
        turned_ = {turned_[1], second};
    }
}

void Averager::take(const Piece3& piece) {
    constexpr double kBucketSecond = kWindowSecond / kBuckets;
    const double until = piece.untilSecond;
    double from = std::max(piece.fromSecond, until - kWindowSecond);
    if (!(until > from)) return turnAt(piece.atShare(0), from);
    piece.eachStretch(from, until, [&](double a, double b) {
        turnAt(piece.at(a), a);
        turnAt(piece.at(b), b);
    });
    while (from < until) {
        const auto number = static_cast<std::int64_t>(std::floor(from / kBucketSecond));
        const double end = std::min(until, static_cast<double>(number + 1) * kBucketSecond);
        Bucket& bucket = buckets_[static_cast<std::size_t>(number % static_cast<std::int64_t>(buckets_.size()))];
        const double va = piece.at(from), vb = piece.at(end);
        if (bucket.number != number) bucket = {number, 0, 0, 0, va, va};
        const Piece3::Sums sums = piece.integral(from, end);
        bucket.second += end - from;
        bucket.once += sums.once;
        bucket.squared += sums.squared;
        bucket.least = std::min({bucket.least, va, vb});
        bucket.greatest = std::max({bucket.greatest, va, vb});
        if (!(end > from)) break;
        from = end;
    }
    nowSecond_ = until;
    double least = std::numeric_limits<double>::infinity(), greatest = -least;
    const auto now = static_cast<std::int64_t>(std::floor(nowSecond_ / kBucketSecond));
    for (const Bucket& bucket : buckets_) {
        if (bucket.number < 0 || bucket.number < now - kBuckets) continue;
        least = std::min(least, bucket.least);
        greatest = std::max(greatest, bucket.greatest);
    }
    swing_ = std::max(0.0, greatest - least);
}

void Averager::publish(MeterAverage& out) const {
    constexpr double kBucketSecond = kWindowSecond / kBuckets;
    const auto now = static_cast<std::int64_t>(std::floor(nowSecond_ / kBucketSecond));
    double seconds = 0, once = 0, squared = 0;
    for (const Bucket& bucket : buckets_) {
        if (bucket.number < 0 || bucket.number < now - kBuckets) continue;
        seconds += bucket.second;
        once += bucket.once;
        squared += bucket.squared;
    }
    out.alternates = seconds > 0 && turned_[0] >= nowSecond_ - kWindowSecond;
    out.mean = seconds > 0 ? once / seconds : 0;
    out.effective = seconds > 0 ? std::sqrt(std::max(0.0, squared / seconds)) : 0;
}

}  // namespace tiepoint
