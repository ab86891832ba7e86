#include "core/slips/bench_change.h"

#include <algorithm>
#include <cassert>

namespace tiepoint {
namespace {

/// The things of one list that a change touches, as they will be.
template <class Thing>
class Changed {
public:
    explicit Changed(const std::vector<Thing>& things) : things_(things) {}

    Thing& at(const std::string& id) {
        const auto known = std::ranges::find(changed_, id, &Thing::id);
        if (known != changed_.end()) return *known;
        const auto found = std::ranges::find(things_, id, &Thing::id);
        assert(found != things_.end());
        return changed_.emplace_back(*found);
    }
    const std::vector<Thing>& all() const { return changed_; }

private:
    const std::vector<Thing>& things_;
    std::vector<Thing> changed_;
};

Setting& settingOf(Part& part, const SetFigure& figure) {
    return (figure.state ? part.state : part.values)[static_cast<std::size_t>(figure.index)];
}

void addMissing(std::vector<std::string>& ids, const std::string& id) {
    if (std::ranges::find(ids, id) == ids.end()) ids.push_back(id);
}

}  // namespace

BenchChange inverseOf(const Bench& bench, const BenchChange& change) {
    BenchChange back;
    for (const PlacedLead& each : change.leads) {
        const auto& from = bench.findPart(each.part)->leads[static_cast<std::size_t>(each.lead)];
        back.leads.push_back({each.part, each.lead, from});
    }
    for (const PlacedEnd& each : change.ends) {
        const auto& from = bench.findJumper(each.jumper)->ends[static_cast<std::size_t>(each.end)];
        back.ends.push_back({each.jumper, each.end, from});
    }
    for (const SetFigure& each : change.figures) {
        const Part& part = *bench.findPart(each.part);
        const double was = each.state ? part.stateValue(each.index) : part.value(each.index);
        back.figures.push_back({each.part, each.state, each.index, was});
    }
    for (const SetRails& each : change.rails) back.rails.push_back({each.board, bench.findBoard(each.board)->rails});
    for (const SetCondition& each : change.conditions) {
        const Part* part = bench.findPart(each.id);
        back.conditions.push_back({each.id, part ? part->condition : bench.findJumper(each.id)->condition});
    }
    back.added = change.removed;
    back.removed = change.added;
    return back;
}

Edit editOf(const Bench& bench, const BenchChange& change, std::string name) {
    Changed<Part> parts(bench.parts);
    Changed<Jumper> jumpers(bench.jumpers);
    Changed<Board> boards(bench.boards);
    for (const PlacedLead& each : change.leads)
        parts.at(each.part).leads[static_cast<std::size_t>(each.lead)] = each.to;
    for (const SetFigure& each : change.figures) settingOf(parts.at(each.part), each) = each.to;
    for (const PlacedEnd& each : change.ends)
        jumpers.at(each.jumper).ends[static_cast<std::size_t>(each.end)] = each.to;
    for (const SetRails& each : change.rails) boards.at(each.board).rails = each.to;
    for (const SetCondition& each : change.conditions)
        (bench.findPart(each.id) ? parts.at(each.id).condition : jumpers.at(each.id).condition) = each.to;
    Edit edit{std::move(name), {}};
    for (const Board& board : boards.all()) edit.operations.emplace_back(ReplaceBoard{board});
    for (const Jumper& jumper : change.removed) edit.operations.emplace_back(Remove{jumper.id});
    for (const Part& part : parts.all()) edit.operations.emplace_back(ReplacePart{part});
    for (const Jumper& jumper : jumpers.all()) edit.operations.emplace_back(ReplaceJumper{jumper});
    for (const Jumper& jumper : change.added) edit.operations.emplace_back(AddJumper{jumper});
    return edit;
}

std::vector<std::string> idsOf(const BenchChange& change) {
    std::vector<std::string> ids;
    for (const PlacedLead& each : change.leads) addMissing(ids, each.part);
    for (const PlacedEnd& each : change.ends) addMissing(ids, each.jumper);
    for (const SetFigure& each : change.figures) addMissing(ids, each.part);
    for (const SetCondition& each : change.conditions) addMissing(ids, each.id);
    for (const Jumper& each : change.added) addMissing(ids, each.id);
    for (const Jumper& each : change.removed) addMissing(ids, each.id);
    if (ids.empty()) {
        for (const SetRails& each : change.rails) addMissing(ids, each.board);
    }
    return ids;
}

}  // namespace tiepoint
