// On one side of the gap a button's two strips are three columns apart, astride it two: one side can keep its strip, the other comes to
// lie beside it. That one gets a jumper to where its legs were.

#include "core/findings/turn_astride.h"

#include "core/edit/holes.h"
#include "core/edit/placement.h"
#include "core/findings/joining.h"
#include "core/words/words.h"

#include <fmt/ranges.h>

#include <algorithm>
#include <array>
#include <cstdlib>
#include <map>
#include <optional>
#include <string>
#include <tuple>
#include <utility>

namespace tiepoint {
namespace {

constexpr std::size_t kMostPlaces = 4;
/// Columns to the left and right of its legs in which a place is sought.
constexpr int kReach = 3;

struct Place {
    std::size_t jumpers = 0;
    int columnsJumped = 0;
    int column = 0;  ///< of the anchor, to order what is equal otherwise
    Mend mend;
};

class Search {
public:
    Search(const Layout& layout, int part) : layout_(layout), bench_(*layout.bench), part_(part) {
        const PartKind& kind = *button().kind;
        sides_ = {joinedTo(kind, kind.leadIndex(kind.model.front().from())),
                  joinedTo(kind, kind.leadIndex(kind.model.front().to()))};
        for (const auto& hole : button().leads)
            if (hole) wanted_.insert_or_assign(stripOf(*hole), *hole);
    }

    std::vector<Mend> mends() {
        const bool bothUsed =
            std::ranges::all_of(wanted_, [&](const auto& each) { return isUsedByOthers(each.first); });
        if (wanted_.size() != 2 || !bothUsed || isRail(wanted_.begin()->second.line)) return {};
        const Hole first = wanted_.begin()->second, last = wanted_.rbegin()->second;
        const auto [from, to] = std::minmax(first.number, last.number);
        for (int column = from - kReach; column <= to + kReach; ++column)
            for (const Line row : {Line::E, Line::F})
                for (int turns = 0; turns < 4; ++turns) tryAt({first.board, row, column}, turns, first, last);
        std::ranges::stable_sort(places_, {}, [](const Place& place) {
            return std::tuple(place.jumpers, place.columnsJumped, place.column);
        });
        std::vector<Mend> mends;
        for (std::size_t i = 0; i < std::min(kMostPlaces, places_.size()); ++i)
            mends.push_back(std::move(places_[i].mend));
        return mends;
    }

private:
    const Part& button() const { return bench_.parts[part_]; }
    int stripOf(const Hole& hole) const { return layout_.stripOfHole[layout_.holeIndex(hole)]; }

    bool isUsedByOthers(int strip) const {
        for (int index = 0; index < layout_.holeCount(); ++index) {
            if (layout_.stripOfHole[index] != strip || layout_.jointOfHole[index] < 0) continue;
            const auto& own = button().leads;
            if (std::ranges::find(own, std::optional(layout_.holeAt(index))) == own.end()) return true;
        }
        return false;
    }

    void tryAt(const Hole& anchor, int turns, const Hole& first, const Hole& last) {
        if (!holeExists(bench_, anchor)) return;
        const Part astride = placedAt(bench_, button(), anchor, turns);
        const auto isAtGap = [](const std::optional<Hole>& hole) {
            return hole && (hole->line == Line::E || hole->line == Line::F);
        };
        if (!std::ranges::all_of(astride.leads, isAtGap) || refusal(bench_, astride)) return;
        tryJoined(astride, {first, last});
        tryJoined(astride, {last, first});
    }

    /// With each side joined to the strip of its hole.
    void tryJoined(const Part& astride, const std::array<Hole, 2>& ends) {
        Place place;
        place.column = astride.leads.front()->number;
        place.mend.edit = {say("history.turn", {{"thing", astride.id}}), {ReplacePart{astride}}};
        std::vector<std::string> joins;
        for (std::size_t side = 0; side < sides_.size(); ++side) {
            if (!meetsOnly(astride, sides_[side], ends[side])) return;
            if (meets(astride, sides_[side], ends[side])) continue;
            const auto join = joinOf(astride, sides_[side], ends[side], place.mend.edit);
            if (!join) return;
            const Jumper& jumper = std::get<AddJumper>(join->edit.operations.front()).jumper;
            place.columnsJumped +=
                std::abs(std::get<Hole>(jumper.ends[0]).number - std::get<Hole>(jumper.ends[1]).number);
            joins.push_back(say("mend.joinWith", {{"one", nameOf(jumper.ends[0])}, {"other", nameOf(jumper.ends[1])}}));
            place.mend.edit.operations.push_back(join->edit.operations.front());
        }
        place.jumpers = joins.size();
        place.mend.text = joins.empty() ? say("mend.turnAstride", {{"part", astride.id}})
                                        : say("mend.turnAstrideJoin",
                                              {{"part", astride.id}, {"joins", sayList(joins, "mend.joinMore")}});
        places_.push_back(std::move(place));
    }

    std::string nameOf(const JumperEnd& end) const { return holeName(bench_, std::get<Hole>(end)); }

    /// Whether legs of a side are in no strip that anything else is in, except the one wanted.
    bool meetsOnly(const Part& astride, const std::vector<int>& side, const Hole& wanted) const {
        return std::ranges::all_of(side, [&](int lead) {
            const int strip = stripOf(*astride.leads[lead]);
            return strip == stripOf(wanted) || !isUsedByOthers(strip);
        });
    }
    bool meets(const Part& astride, const std::vector<int>& side, const Hole& wanted) const {
        return std::ranges::any_of(side, [&](int lead) { return stripOf(*astride.leads[lead]) == stripOf(wanted); });
    }

    /// A jumper from the leg on the wanted hole's side of the gap, along one row where that is free.
    std::optional<Mend> joinOf(const Part& astride, const std::vector<int>& side, const Hole& wanted,
                               const Edit& before) const {
        const auto moved = apply(bench_, before);
        if (!moved) return std::nullopt;
        const auto isUpper = [](const Hole& hole) { return hole.line <= Line::E; };
        for (const int lead : side) {
            const Hole& leg = *astride.leads[lead];
            if (isUpper(leg) != isUpper(wanted)) continue;
            const auto from = nearestFreeInStrip(moved->bench, leg);
            if (!from) return std::nullopt;
            return jumperMend(moved->bench, *from, {wanted.board, from->line, wanted.number});
        }
        return std::nullopt;
    }

    const Layout& layout_;
    const Bench& bench_;
    int part_;
    std::array<std::vector<int>, 2> sides_;
    std::map<int, Hole> wanted_;  ///< by strip: a hole of the button's legs
    std::vector<Place> places_;
};

}  // namespace

std::vector<int> joinedTo(const PartKind& kind, int lead) {
    for (const std::vector<int>& group : kind.joined)
        if (std::ranges::find(group, lead) != group.end()) return group;
    return {lead};
}

std::vector<Mend> astrideMends(const Layout& layout, int part) {
    const Part& button = layout.bench->parts[part];
    return button.kind->hasCap && button.kind->model.size() == 1 ? Search(layout, part).mends() : std::vector<Mend>();
}

}  // namespace tiepoint
