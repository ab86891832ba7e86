#include "core/slips/ground.h"

#include "core/edit/placement.h"

#include <fmt/format.h>

#include <algorithm>
#include <cassert>
#include <cstdlib>
#include <unordered_set>

namespace tiepoint {
namespace {

template <class Thing>
Thing* thingOf(std::vector<Thing>& things, const std::string& id) {
    const auto found = std::ranges::find(things, id, &Thing::id);
    return found == things.end() ? nullptr : &*found;
}

/// The change carried out on a bench that holds what it touches; nothing is judged.
Bench carriedOut(Bench bench, const BenchChange& change) {
    std::erase_if(bench.jumpers, [&](const Jumper& jumper) {
        return std::ranges::any_of(change.removed, [&](const Jumper& gone) { return gone.id == jumper.id; });
    });
    for (const PlacedLead& each : change.leads)
        thingOf(bench.parts, each.part)->leads[static_cast<std::size_t>(each.lead)] = each.to;
    for (const PlacedEnd& each : change.ends)
        thingOf(bench.jumpers, each.jumper)->ends[static_cast<std::size_t>(each.end)] = each.to;
    bench.jumpers.insert(bench.jumpers.end(), change.added.begin(), change.added.end());
    return bench;
}

/// Common practice: red for plus, black for minus, another colour between.
int colourSuiting(const std::array<JumperEnd, 2>& ends) {
    for (const JumperEnd& end : ends) {
        const Hole* hole = std::get_if<Hole>(&end);
        if (hole != nullptr && isRail(hole->line))
            return findJumperColour(hole->line == Line::TopPlus || hole->line == Line::BottomPlus ? "red" : "black");
    }
    return findJumperColour("yellow");
}

}  // namespace

Ground::Ground(std::shared_ptr<const Layout> layout)
    : layout_(std::move(layout)),
      circuit_(*layout_),
      near_(*layout_->bench) {
    for (int b = 0; b < static_cast<int>(bench().boards.size()); ++b)
        boards_.emplace(bench().boards[static_cast<std::size_t>(b)].id, b);
    indexTips();
    findFreeIds();
}

void Ground::findFreeIds() {
    constexpr std::size_t kMostAtOnce = 4;  // the rails of a board
    std::unordered_set<std::string_view> taken;
    const auto add = [&](const auto& things) {
        for (const auto& thing : things) taken.insert(thing.id);
    };
    add(bench().boards), add(bench().parts), add(bench().jumpers), add(bench().notes), add(bench().pinned);
    for (int number = 1; freeIds_.size() < kMostAtOnce; ++number) {
        std::string id = fmt::format("W{}", number);
        if (!taken.contains(id)) freeIds_.push_back(std::move(id));
    }
}

int Ground::holeIndex(const Hole& hole) const {
    const auto found = boards_.find(hole.board);
    if (found == boards_.end()) return -1;
    const auto b = static_cast<std::size_t>(found->second);
    const Board& board = bench().boards[b];
    return board.kind->has(hole.line, hole.number)
               ? layout_->boardFirstHole[b] + board.kind->holeIndex(hole.line, hole.number)
               : -1;
}

const Board& Ground::boardOf(const Hole& hole) const {
    const auto found = boards_.find(hole.board);
    assert(found != boards_.end());
    return bench().boards[static_cast<std::size_t>(found->second)];
}

int Ground::boardIndexOf(int hole) const {
    return static_cast<int>(std::ranges::upper_bound(layout_->boardFirstHole, hole) - layout_->boardFirstHole.begin()) -
           1;
}

void Ground::addTip(Tip tip, std::vector<int>& ofThing) {
    tip.strip = stripOf(tip.hole);
    const int index = static_cast<int>(tips_.size());
    ofThing.push_back(index);
    tipsIn_[static_cast<std::size_t>(tip.strip)].push_back(index);
    tips_.push_back(tip);
}

void Ground::indexTips() {
    tipsIn_.resize(layout_->netOfStrip.size());
    tipsOfPart_.resize(bench().parts.size());
    tipsOfJumper_.resize(bench().jumpers.size());
    for (int p = 0; p < static_cast<int>(bench().parts.size()); ++p) {
        const bool alone = part(p).kind->package->reach != Reach::Rigid;
        for (int lead = 0; lead < static_cast<int>(part(p).leads.size()); ++lead) {
            const int hole = layout_->holeOfLead[static_cast<std::size_t>(layout_->leadIndex(p, lead))];
            if (hole >= 0) addTip({false, p, lead, hole, -1, alone}, tipsOfPart_[static_cast<std::size_t>(p)]);
        }
    }
    for (int j = 0; j < static_cast<int>(bench().jumpers.size()); ++j) {
        for (int end = 0; end < 2; ++end) {
            const Hole* hole = std::get_if<Hole>(&jumper(j).ends[static_cast<std::size_t>(end)]);
            if (hole == nullptr) continue;
            addTip({true, j, end, holeIndex(*hole), -1, true}, tipsOfJumper_[static_cast<std::size_t>(j)]);
        }
    }
}

std::vector<Hole> Ground::freeIn(const Hole& hole, std::size_t most) const {
    std::vector<Hole> free;
    const int own = holeIndex(hole);
    if (own < 0) return free;
    const int strip = stripOf(own);
    const auto look = [&](Line line, int number) {
        const Hole other{hole.board, line, number};
        const int index = holeIndex(other);
        ++work_;
        if (index >= 0 && free.size() < most && stripOf(index) == strip && isFree(index)) free.push_back(other);
    };
    if (isRail(hole.line)) {
        constexpr int kFarthest = 12;  // a hand that wants the rail takes a hole nearby
        look(hole.line, hole.number);
        for (int away = 1; away <= kFarthest; ++away) {
            look(hole.line, hole.number - away);
            look(hole.line, hole.number + away);
        }
        return free;
    }
    const int row = static_cast<int>(hole.line);
    look(hole.line, hole.number);
    for (int away = 1; away < kRowCount / 2; ++away) {
        if (row - away >= 0) look(static_cast<Line>(row - away), hole.number);
        if (row + away < kRowCount) look(static_cast<Line>(row + away), hole.number);
    }
    return free;
}

BenchChange Ground::joining(const std::vector<std::array<JumperEnd, 2>>& places) const {
    assert(places.size() <= freeIds_.size());
    BenchChange change;
    for (std::size_t i = 0; i < places.size(); ++i) {
        Jumper jumper;
        jumper.id = freeIds_[i];
        jumper.ends = {places[i][0], places[i][1]};
        jumper.colour = colourSuiting(places[i]);
        change.added.push_back(std::move(jumper));
    }
    return change;
}

BenchChange Ground::moved(const Tip& tip, const Hole& to) const {
    BenchChange change;
    if (tip.jumper)
        change.ends.push_back({idOf(tip), tip.lead, to});
    else
        change.leads.push_back({idOf(tip), tip.lead, to});
    return change;
}

bool Ground::canBuild(const BenchChange& change) const {
    ++work_;
    if (change.leads.empty() && change.ends.empty() && change.added.empty()) return true;
    const Bench about = near_.benchAbout(change, work_);
    return !refusalOfChange(about, carriedOut(about, change));
}

}  // namespace tiepoint
