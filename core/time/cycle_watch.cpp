#include "core/time/cycle_watch.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace tiepoint {
namespace {

constexpr double kBelowShare =
    0.1;  ///< of its swing: so far under the middle a store has to be before it counts as risen
constexpr double kSwingShare = 1e-4;      ///< of what was ever stored: less is no swing
constexpr double kSizeShare = 0.05;       ///< of what was ever stored: what a difference is compared with at least
constexpr double kSameCycleShare = 5e-4;  ///< of a swing
constexpr double kAlmostShare = 2e-3;     ///< where it has become less than half of what it was
constexpr double kSamePeriodShare = 1e-3;
constexpr double kSameWidthShare = 0.5;  ///< what fades isn't repeating
constexpr double kStaysShare = 0.1;
constexpr double kAtOnceShare = 1e-4;  ///< of a swing: twice the same at once
constexpr double kGoesOnShare = 0.1;   ///< of what was followed: what goes on at first
constexpr std::size_t kAtOnceCycles = 2, kLeastCycles = 4;
constexpr std::size_t kMostRises = 4096;

}  // namespace

CycleWatch::CycleWatch(std::vector<int> stores, const std::vector<double>& least)
    : stores_(std::move(stores)),
      swings_(stores_.size()) {
    for (const int store : stores_) tooLittle_.push_back(least[store]);
}

void CycleWatch::beginRound() {
    const int before = slowest_;
    slowest_ = -1;
    for (std::size_t k = 0; k < swings_.size(); ++k) {
        Swing& s = swings_[k];
        const bool swings = s.width > kSwingShare * s.largest + tooLittle_[k] && s.rises > 0;
        if (round_ > 1 && swings && (slowest_ < 0 || s.rises < swings_[slowest_].rises)) slowest_ = static_cast<int>(k);
    }
    // What is watched already goes on being so, where it still swings as it did: a rise more or less is chance.
    const bool stays = slowest_ >= 0 && before >= 0 && swings_[before].rises > 0 &&
                       swings_[before].rises <= 2 * swings_[slowest_].rises + 1 && swingsAsBefore(swings_[before]);
    if (stays) slowest_ = before;
    for (Swing& s : swings_) {
        s.rises = 0;
        if (stays && &s == &swings_[slowest_]) continue;
        s.middle = (s.least + s.greatest) / 2;
        s.width = s.greatest - s.least;
        s.below = false;
    }
    ++round_;
    begun_ = false;
    if (stays) return;
    rises_.clear();
    if (slowest_ >= 0) cycleLeast_ = cycleGreatest_ = swings_[slowest_].middle;
}

bool CycleWatch::swingsAsBefore(const Swing& swing) {
    const double middle = (swing.least + swing.greatest) / 2, width = swing.greatest - swing.least;
    return std::abs(middle - swing.middle) < kStaysShare * width && std::abs(width - swing.width) < kStaysShare * width;
}

bool CycleWatch::rises(Swing& swing, double value) {
    if (value < swing.middle - kBelowShare * swing.width) swing.below = true;
    if (!swing.below || value <= swing.middle) return false;
    ++swing.rises;
    swing.below = false;
    return true;
}

void CycleWatch::add(const StoredInstant& from, const StoredInstant& to) {
    for (std::size_t k = 0; k < stores_.size(); ++k) {
        const double now = to.stored[stores_[k]];
        Swing& s = swings_[k];
        if (!begun_) s.least = s.greatest = now;
        s.least = std::min(s.least, now);
        s.greatest = std::max(s.greatest, now);
        s.largest = std::max(s.largest, std::abs(now));
        if (rises(s, now) && static_cast<int>(k) == slowest_) noteRise(from, to);
    }
    if (slowest_ >= 0) {
        const double now = to.stored[stores_[slowest_]];
        cycleLeast_ = std::min(cycleLeast_, now);
        cycleGreatest_ = std::max(cycleGreatest_, now);
    }
    begun_ = true;
}

void CycleWatch::noteRise(const StoredInstant& from, const StoredInstant& to) {
    if (rises_.size() >= kMostRises) return;
    rises_.push_back(riseBetween(from, to));
    cycleLeast_ = cycleGreatest_ = swings_[slowest_].middle;
    judge();
}

/// Where in a smooth piece the slowest store was at its middle: by Hermite's cubic, as the reading inside a step.
CycleWatch::Rise CycleWatch::riseBetween(const StoredInstant& from, const StoredInstant& to) const {
    const double length = to.second - from.second;
    const auto inside = [&](int store, double s) {
        const double r = 1 - s;
        return r * r * (1 + 2 * s) * from.stored[store] + s * s * (1 + 2 * r) * to.stored[store] +
               length * s * r * (r * from.storing[store] - s * to.storing[store]);
    };
    double low = 0, high = 1;
    for (int round = 0; round < 40; ++round) {
        const double half = (low + high) / 2;
        (inside(stores_[slowest_], half) > swings_[slowest_].middle ? high : low) = half;
    }
    Rise rise{from.second + high * length, cycleGreatest_ - cycleLeast_, {}};
    for (const int store : stores_) rise.stored.push_back(inside(store, high));
    return rise;
}

/// How each store swings in a piece of history, and which of those that come back comes back most seldom.
void CycleWatch::findSlowest(std::span<const StoredInstant> history) {
    slowest_ = -1;
    for (std::size_t k = 0; k < stores_.size(); ++k) {
        Swing& s = swings_[k];
        s.least = s.greatest = history.front().stored[stores_[k]];
        for (const StoredInstant& each : history) {
            s.least = std::min(s.least, each.stored[stores_[k]]);
            s.greatest = std::max(s.greatest, each.stored[stores_[k]]);
        }
        s.middle = (s.least + s.greatest) / 2;
        s.width = s.greatest - s.least;
        s.rises = 0;
        s.below = false;
        for (const StoredInstant& each : history) rises(s, each.stored[stores_[k]]);
        s.below = false;
        const bool swings = s.width > kSwingShare * s.largest + tooLittle_[k] && s.rises > 1;
        if (swings && (slowest_ < 0 || s.rises < swings_[slowest_].rises)) slowest_ = static_cast<int>(k);
    }
}

void CycleWatch::lookBack(std::span<const StoredInstant> history) {
    if (repeats() || history.size() < 3) return;
    CycleWatch whole = *this;  // what the last round says of rest stays
    whole.lookAtAll(history);
    if (whole.repeats()) *this = std::move(whole);
}

void CycleWatch::lookAtAll(std::span<const StoredInstant> history) {
    const double began = history.front().second, after = began + kGoesOnShare * (history.back().second - began);
    const auto first = std::ranges::find_if(history, [&](const StoredInstant& each) { return each.second >= after; });
    history = history.subspan(static_cast<std::size_t>(first - history.begin()));
    findSlowest(history);
    if (slowest_ < 0) return;
    std::vector<Rise> found;
    for (std::size_t i = 1; i < history.size(); ++i)
        if (rises(swings_[slowest_], history[i].stored[stores_[slowest_]]))
            found.push_back(riseBetween(history[i - 1], history[i]));
    if (found.size() < 2) return;
    const Rise &now = found.back(), &before = found[found.size() - 2];
    const double period = now.second - before.second;
    if (apart(now, before) > kAtOnceShare) return;
    if (found.size() > 2) {
        const Rise& earlier = found[found.size() - 3];
        if (std::abs(before.second - earlier.second - period) > kSamePeriodShare * period) return;
    }
    periodSecond_ = period;
}

double CycleWatch::apart(const Rise& a, const Rise& b) const {
    double most = 0;
    for (std::size_t k = 0; k < stores_.size(); ++k) {
        const double size = std::max(swings_[k].width, kSizeShare * swings_[k].largest) + tooLittle_[k];
        most = std::max(most, std::abs(a.stored[k] - b.stored[k]) / size);
    }
    return most;
}

void CycleWatch::judge() {
    const std::size_t count = rises_.size() - 1;  // of whole cycles
    if (count < kAtOnceCycles || (count & (count - 1)) != 0) return;
    const std::size_t halfAt = count / 2, quarterAt = count / 4;
    const Rise &now = rises_[count], &half = rises_[halfAt], &quarter = rises_[quarterAt];
    const double period = (now.second - half.second) / static_cast<double>(count - halfAt);
    const double earlier = (half.second - quarter.second) / static_cast<double>(halfAt - quarterAt);
    const double nowApart = apart(now, half), earlierApart = apart(half, quarter);
    const bool same = count < kLeastCycles
                          ? nowApart < kAtOnceShare && earlierApart < kAtOnceShare
                          : nowApart < kSameCycleShare || (nowApart < kAlmostShare && nowApart < earlierApart / 2);
    periodSecond_ = 0;
    if (same && std::abs(period - earlier) < kSamePeriodShare * period &&
        now.width > kSameWidthShare * swings_[slowest_].width)
        periodSecond_ = period;
}

bool CycleWatch::rests(const StoredInstant& now, double share, double seconds) const {
    if (!begun_) return false;
    for (std::size_t k = 0; k < stores_.size(); ++k) {
        const Swing& s = swings_[k];
        const double allowed = share * s.largest + tooLittle_[k];
        if (std::abs(now.storing[stores_[k]]) * seconds > allowed) return false;
        if (s.rises > 1 && s.greatest - s.least > allowed) return false;
    }
    return true;
}

}  // namespace tiepoint
