// A greedy choice: wishes in the order of their rank, each at the foot that it likes best among those with which the row of tags still fits.
// Whether a row fits is asked exactly: in the order of their leaders, each tag as far left as its leader and its neighbours let it. At the end
// each row is laid out so that tags are moved from where they would like to stand as little as can be (pool adjacent violators).

#include "ui/paint/tag_places.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>
#include <tuple>
#include <utility>

namespace tiepoint::ui {
namespace {

constexpr double kDislikePerMm = 0.02;   ///< of a long leader
constexpr double kCrowdedDislike = 0.8;  ///< for each neighbour that would have to move all of its width
constexpr double kKeptLiking = 1000;     ///< of the foot that it had
constexpr double kKeptWeight = 50;       ///< of the place that it had, against one that is only wished for
constexpr double kFixedWeight = 1e9;
constexpr double kSlackMm = 1e-6;
constexpr double kRoundedMm = 1e-7;
constexpr double kClearMm = 0.1;

/// A tag, or a taken stretch, in its row.
struct RowSlot {
    double leaderFrom = 0, leaderTo = 0;  ///< the leftmost and rightmost leader
    double width = 0;
    double wishedLeft = 0, weight = 1;
    int wish = -1;  ///< -1: a taken stretch, which can't move
    double middle() const { return (leaderFrom + leaderTo) / 2; }
};

using TagRow = std::vector<RowSlot>;  ///< in the order of their middles

class TagPlacer {
public:
    TagPlacer(const TagRoom& room, const std::vector<TagWish>& wishes)
        : room_(room),
          wishes_(wishes),
          rows_(room.bands.size()),
          places_(wishes.size()) {
        for (std::size_t band = 0; band < rows_.size(); ++band) {
            for (const TakenStretch& taken : merged(room.bands[band].taken))
                insert(rows_[band], {taken.from, taken.to, taken.to - taken.from, taken.from, kFixedWeight, -1});
        }
    }

    std::vector<std::optional<TagPlace>> place() {
        for (const int wish : order()) grant(wish);
        for (std::size_t band = 0; band < rows_.size(); ++band) layOut(static_cast<int>(band));
        return std::move(places_);
    }

private:
    struct Chosen {
        int band = -1;
        const TagFoot* foot = nullptr;
        double cost = std::numeric_limits<double>::infinity();
    };

    static std::vector<TakenStretch> merged(std::vector<TakenStretch> all) {
        std::sort(all.begin(), all.end(), [](const auto& a, const auto& b) { return a.from < b.from; });
        std::vector<TakenStretch> apart;
        for (const TakenStretch& one : all) {
            if (apart.empty() || one.from > apart.back().to)
                apart.push_back(one);
            else
                apart.back().to = std::max(apart.back().to, one.to);
        }
        return apart;
    }

    std::vector<int> order() const {
        std::vector<int> order(wishes_.size());
        std::iota(order.begin(), order.end(), 0);
        const auto key = [this](int index) {
            const TagWish& wish = wishes_[static_cast<std::size_t>(index)];
            return std::tuple(wish.rank, !wish.before, wish.feet.size(), index);
        };
        std::sort(order.begin(), order.end(), [&](int a, int b) { return key(a) < key(b); });
        return order;
    }

    static void insert(TagRow& row, const RowSlot& slot) {
        const auto at = std::upper_bound(row.begin(), row.end(), slot,
                                         [](const RowSlot& a, const RowSlot& b) { return a.middle() < b.middle(); });
        row.insert(at, slot);
    }

    RowSlot slotOf(const TagFoot& foot, double width, int wish) const {
        RowSlot slot;
        const auto [left, right] =
            std::minmax_element(foot.ends.begin(), foot.ends.end(), [](Point a, Point b) { return a.x < b.x; });
        slot.leaderFrom = left->x;
        slot.leaderTo = right->x;
        slot.width = std::max(width, slot.leaderTo - slot.leaderFrom + 2 * room_.insetMm);
        slot.wishedLeft = slot.middle() - slot.width / 2;
        slot.wish = wish;
        return slot;
    }

    bool isFixed(const RowSlot& slot) const { return slot.wish < 0; }
    double earliestAlone(const RowSlot& slot, const Rect& room) const {
        return isFixed(slot) ? slot.wishedLeft : std::max(room.left, slot.leaderTo + room_.insetMm - slot.width);
    }
    double latestAlone(const RowSlot& slot, const Rect& room) const {
        return isFixed(slot) ? slot.wishedLeft : std::min(room.right() - slot.width, slot.leaderFrom - room_.insetMm);
    }
    double gapBetween(const RowSlot& one, const RowSlot& other) const {
        return isFixed(one) && isFixed(other) ? 0 : room_.gapMm;
    }

    /// Whether the row with one tag more fits.
    bool fits(const TagRow& row, const Rect& room, const RowSlot& slot) const {
        TagRow with = row;
        insert(with, slot);
        double end = -std::numeric_limits<double>::infinity();
        for (std::size_t i = 0; i < with.size(); ++i) {
            const double gap = i == 0 ? 0 : gapBetween(with[i - 1], with[i]);
            const double left = std::max(earliestAlone(with[i], room), end + gap);
            if (left > latestAlone(with[i], room) + kSlackMm) return false;
            end = left + with[i].width;
        }
        return true;
    }

    /// The y from the tag to the end of one leader.
    std::pair<double, double> leaderSpan(int band, Point end) const {
        const TagBand& row = room_.bands[static_cast<std::size_t>(band)];
        return row.above ? std::pair(row.room.bottom(), end.y + room_.ringMm)
                         : std::pair(end.y - room_.ringMm, row.room.top);
    }

    bool isClear(int band, const TagFoot& foot) const {
        const double clearance = leaderClearance(room_);
        for (const auto& placed : places_) {
            if (!placed) continue;
            for (const Point other : placed->ends) {
                const auto [otherTop, otherBottom] = leaderSpan(placed->band, other);
                for (const Point end : foot.ends) {
                    const auto [top, bottom] = leaderSpan(band, end);
                    if (std::abs(end.x - other.x) < clearance && top < otherBottom && otherTop < bottom) return false;
                }
            }
        }
        return true;
    }

    double hindered(int band, const TagFoot& foot) const {
        double cost = 0;
        for (const Point end : foot.ends) {
            const auto [top, bottom] = leaderSpan(band, end);
            cost += kDislikePerMm * (bottom - top);
            for (const TagHindrance& hindrance : room_.hindrances) {
                const Rect& frame = hindrance.frame;
                if (end.x + room_.casingMm / 2 < frame.left || end.x - room_.casingMm / 2 > frame.right()) continue;
                cost +=
                    hindrance.dislikePerMm * std::max(0.0, std::min(bottom, frame.bottom()) - std::max(top, frame.top));
            }
        }
        return cost;
    }

    double crowded(const TagRow& row, const RowSlot& slot) const {
        double cost = 0;
        for (const RowSlot& other : row) {
            const double shared = std::min(slot.wishedLeft + slot.width, other.wishedLeft + other.width) -
                                  std::max(slot.wishedLeft, other.wishedLeft) + room_.gapMm;
            if (shared > 0) cost += kCrowdedDislike * shared / std::min(slot.width, other.width);
        }
        return cost;
    }

    void grant(int index) {
        const TagWish& wish = wishes_[static_cast<std::size_t>(index)];
        Chosen best;
        for (const TagFoot& foot : wish.feet) {
            for (int band = 0; band < static_cast<int>(room_.bands.size()); ++band) {
                const TagRow& row = rows_[static_cast<std::size_t>(band)];
                const RowSlot slot = slotOf(foot, wish.width, index);
                const bool kept = isKept(wish, band, foot);
                const double cost = foot.dislike + hindered(band, foot) + crowded(row, slot) - (kept ? kKeptLiking : 0);
                if (cost >= best.cost || !isClear(band, foot)) continue;
                if (fits(row, room_.bands[static_cast<std::size_t>(band)].room, slot)) best = {band, &foot, cost};
            }
        }
        if (best.foot) take(index, best);
    }

    static bool isKept(const TagWish& wish, int band, const TagFoot& foot) {
        return wish.before && wish.before->band == band && wish.before->ends == foot.ends;
    }

    void take(int index, const Chosen& chosen) {
        const TagWish& wish = wishes_[static_cast<std::size_t>(index)];
        RowSlot slot = slotOf(*chosen.foot, wish.width, index);
        if (isKept(wish, chosen.band, *chosen.foot)) {
            const Rect& frame = wish.before->frame;
            slot.wishedLeft = frame.left + (frame.width - slot.width) / 2;
            slot.weight = kKeptWeight;
        }
        insert(rows_[static_cast<std::size_t>(chosen.band)], slot);
        const Rect& room = room_.bands[static_cast<std::size_t>(chosen.band)].room;
        places_[static_cast<std::size_t>(index)] =
            TagPlace{chosen.band, {slot.wishedLeft, room.top, slot.width, room.height}, chosen.foot->ends};
    }

    /// Several slots that touch and move together.
    struct Pool {
        double sum = 0, weight = 0;
        std::size_t count = 0;
        double at() const { return sum / weight; }
    };

    /// Left edges that keep tags apart, as near to the wished ones as can be.
    std::vector<double> apart(const TagRow& row) const {
        std::vector<Pool> pools;
        double before = 0;
        std::vector<double> shifts;
        for (std::size_t i = 0; i < row.size(); ++i) {
            if (i > 0) before += row[i - 1].width + room_.gapMm;
            shifts.push_back(before);
            pools.push_back({(row[i].wishedLeft - before) * row[i].weight, row[i].weight, 1});
            while (pools.size() > 1 && pools[pools.size() - 2].at() > pools.back().at() + kRoundedMm) {
                const Pool last = pools.back();
                pools.pop_back();
                pools.back() = {pools.back().sum + last.sum, pools.back().weight + last.weight,
                                pools.back().count + last.count};
            }
        }
        std::vector<double> lefts;
        for (const Pool& pool : pools)
            for (std::size_t i = 0; i < pool.count; ++i) lefts.push_back(pool.at() + shifts[lefts.size()]);
        return lefts;
    }

    void layOut(int band) {
        const TagRow& row = rows_[static_cast<std::size_t>(band)];
        const Rect& room = room_.bands[static_cast<std::size_t>(band)].room;
        std::vector<double> lefts = apart(row), earliest(row.size()), latest(row.size());
        for (std::size_t i = 0; i < row.size(); ++i) {
            earliest[i] = earliestAlone(row[i], room);
            if (i > 0)
                earliest[i] =
                    std::max(earliest[i], earliest[i - 1] + row[i - 1].width + gapBetween(row[i - 1], row[i]));
        }
        for (std::size_t i = row.size(); i-- > 0;) {
            latest[i] = latestAlone(row[i], room);
            if (i + 1 < row.size())
                latest[i] = std::min(latest[i], latest[i + 1] - row[i].width - gapBetween(row[i], row[i + 1]));
        }
        for (std::size_t i = 0; i < row.size(); ++i) {
            if (isFixed(row[i])) continue;
            const double left = std::min(std::max(lefts[i], earliest[i]), latest[i]);
            // Rounded, so that what stays where it was is exactly there.
            places_[static_cast<std::size_t>(row[i].wish)]->frame.left = std::round(left / kRoundedMm) * kRoundedMm;
        }
    }

    const TagRoom& room_;
    const std::vector<TagWish>& wishes_;
    std::vector<TagRow> rows_;
    std::vector<std::optional<TagPlace>> places_;
};

}  // namespace

double leaderClearance(const TagRoom& room) { return room.ringMm + room.casingMm / 2 + kClearMm; }

std::vector<std::optional<TagPlace>> placeTags(const TagRoom& room, const std::vector<TagWish>& wishes) {
    return TagPlacer(room, wishes).place();
}

}  // namespace tiepoint::ui
