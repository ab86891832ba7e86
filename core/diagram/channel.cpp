// Method notes. The classical channel: each net lies on a level track, its ends run plumb to the edges. Where an end on the one edge stands
// opposite to another net's end, the first must lie on the earlier track (the vertical constraint graph of Hashimoto and Stevens 1971, from
// memory). Among the orders that this leaves, the next track is given to the run that costs the fewest crossings, and tracks are shared
// where spans are apart (left edge). A cycle of constraints is broken by a run that takes two tracks, one for each edge, joined by a plumb
// link beyond all other wires.

#include "core/diagram/channel.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace tiepoint {
namespace {

constexpr double kClear = 2;  // between parallel wires

class ChannelRouter {
public:
    ChannelRouter(const std::vector<ChannelRun>& runs, double freeAcross) : free_(freeAcross) {
        for (std::size_t run = 0; run < runs.size(); ++run) {
            ChannelBar bar;
            bar.run = static_cast<int>(run);
            bar.before = runs[run].before;
            bar.after = runs[run].after;
            span(bar);
            if (bar.high - bar.low > 1e-6) bars_.push_back(std::move(bar));
        }
    }

    RoutedChannel run() {
        std::vector<char> done(bars_.size());
        std::vector<int> order;
        while (order.size() < bars_.size()) {
            const int next = cheapest(done);
            if (next >= 0) {
                done[next] = 1;
                order.push_back(next);
            } else {
                splitOne(done);
                done.resize(bars_.size());
            }
        }
        RoutedChannel channel;
        giveTracks(order, channel);
        channel.bars = std::move(bars_);
        return channel;
    }

private:
    static void span(ChannelBar& bar) {
        bar.low = std::numeric_limits<double>::max(), bar.high = std::numeric_limits<double>::lowest();
        for (const auto* list : {&bar.before, &bar.after, &bar.links}) {
            for (const double x : *list) bar.low = std::min(bar.low, x), bar.high = std::max(bar.high, x);
        }
    }

    /// Whether the first must lie on an earlier track than the second.
    bool mustPrecede(const ChannelBar& first, const ChannelBar& second) const {
        if (first.run == second.run) return !first.before.empty() && !second.after.empty() && second.before.empty();
        for (const double top : first.before) {
            for (const double bottom : second.after) {
                if (std::abs(top - bottom) < kClear) return true;
            }
        }
        return false;
    }

    static int inside(const std::vector<double>& ends, const ChannelBar& bar) {
        return static_cast<int>(
            std::ranges::count_if(ends, [&](double x) { return x > bar.low - 1e-6 && x < bar.high + 1e-6; }));
    }
    /// Crossings of two bars if the first lies earlier.
    static int crossings(const ChannelBar& first, const ChannelBar& second) {
        return inside(first.after, second) + inside(second.before, first);
    }

    int cheapest(const std::vector<char>& done) const {
        int best = -1, least = std::numeric_limits<int>::max();
        for (std::size_t i = 0; i < bars_.size(); ++i) {
            if (done[i]) continue;
            bool free = true;
            int cost = 0;
            for (std::size_t k = 0; k < bars_.size() && free; ++k) {
                if (done[k] || k == i) continue;
                free = !mustPrecede(bars_[k], bars_[i]);
                cost += crossings(bars_[i], bars_[k]) - crossings(bars_[k], bars_[i]);
            }
            if (free && cost < least) least = cost, best = static_cast<int>(i);
        }
        return best;
    }

    /// Parts a bar that others hold up into one for each edge.
    void splitOne(const std::vector<char>& done) {
        for (std::size_t i = 0; i < bars_.size(); ++i) {
            if (done[i] || bars_[i].before.empty() || bars_[i].after.empty()) continue;
            ChannelBar second = bars_[i];
            second.before.clear();
            bars_[i].after.clear();
            bars_[i].links.push_back(free_);
            second.links = {free_};
            free_ += kClear;
            span(bars_[i]);
            span(second);
            bars_.push_back(std::move(second));
            return;
        }
    }

    void giveTracks(const std::vector<int>& order, RoutedChannel& channel) {
        std::vector<int> placed;
        for (const int each : order) {
            int track = 0;
            for (const int other : placed) {
                const ChannelBar &a = bars_[other], &b = bars_[each];
                const bool apart = a.high + kClear <= b.low || b.high + kClear <= a.low;
                if (!apart || mustPrecede(a, b)) track = std::max(track, a.track + 1);
            }
            bars_[each].track = track;
            placed.push_back(each);
            channel.tracks = std::max(channel.tracks, track + 1);
        }
    }

    std::vector<ChannelBar> bars_;
    double free_;
};

}  // namespace

RoutedChannel routeChannel(const std::vector<ChannelRun>& runs, double freeAcross) {
    return ChannelRouter(runs, freeAcross).run();
}

}  // namespace tiepoint
