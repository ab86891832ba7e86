#include "core/judge/concern.h"

#include <algorithm>

namespace tiepoint {

Concern::Concern(const Ground& ground, const std::vector<int>& amiss)
    : ground_(ground),
      near_(static_cast<std::size_t>(ground.layout().netCount), 0),
      supply_(static_cast<std::size_t>(ground.layout().netCount), 0) {
    const Layout& layout = ground.layout();
    std::vector<int> meeting(near_.size(), 0);
    for (int part = 0; part < static_cast<int>(ground.bench().parts.size()); ++part) {
        for (int lead = layout.firstLead[part]; lead < layout.firstLead[part + 1]; ++lead) {
            ++meeting[layout.netOfLead[lead]];
            if (ground.part(part).kind->isSupply) supply_[layout.netOfLead[lead]] = 1;
        }
    }
    for (std::size_t net = 0; net < near_.size(); ++net) {
        // What meets nothing may be what is missing elsewhere.
        near_[net] = supply_[net] == 0 && meeting[net] <= 1;
    }
    for (const int part : amiss) {
        amiss_.insert(ground.part(part).id);
        everything_ = everything_ || ground.part(part).kind->isSupply;
        bool onSupplies = true;
        for (int lead = layout.firstLead[part]; lead < layout.firstLead[part + 1]; ++lead)
            onSupplies = onSupplies && supply_[layout.netOfLead[lead]] != 0;
        // Metal of supplies reaches everywhere; only a part that lies in nothing else has to do with all of it.
        for (int lead = layout.firstLead[part]; lead < layout.firstLead[part + 1]; ++lead)
            if (onSupplies || supply_[layout.netOfLead[lead]] == 0) near_[layout.netOfLead[lead]] = 1;
    }
    reachStrips(amiss);
}

/// A column that a jumper joins to the wrong rail has become one with it; the way there is short of rails.
void Concern::reachStrips(const std::vector<int>& amiss) {
    nearStrip_.assign(ground_.layout().netOfStrip.size(), 0);
    std::vector<int> open;
    const auto reach = [&](const Tip& tip) {
        if (nearStrip_[tip.strip] != 0 || isRail(ground_.holeAt(tip.hole).line)) return;
        nearStrip_[tip.strip] = 1;
        open.push_back(tip.strip);
    };
    for (const int part : amiss)
        for (const int tip : ground_.tipsOfPart(part)) reach(ground_.tips()[tip]);
    while (!open.empty()) {
        const int strip = open.back();
        open.pop_back();
        for (const int index : ground_.tipsIn(strip)) {
            const Tip& tip = ground_.tips()[index];
            if (!tip.jumper) continue;
            for (const int other : ground_.tipsOfJumper(tip.thing)) reach(ground_.tips()[other]);
        }
    }
}

bool Concern::isNear(const Hole& hole) const {
    const int index = ground_.holeIndex(hole);
    return index >= 0 && (near_[ground_.layout().netOfHole(index)] != 0 || nearStrip_[ground_.stripOf(index)] != 0);
}

bool Concern::isNear(const JumperEnd& end) const {
    const Hole* hole = std::get_if<Hole>(&end);
    return hole == nullptr || isNear(*hole);
}

bool Concern::isNearLeadsOf(std::string_view id) const {
    const int part = ground_.bench().partIndex(id);
    if (part < 0) return isNearEndsOf(id);
    const Layout& layout = ground_.layout();
    if (ground_.part(part).kind->isSupply) return true;
    for (int lead = layout.firstLead[part]; lead < layout.firstLead[part + 1]; ++lead)
        if (near_[layout.netOfLead[lead]] != 0) return true;
    return amiss_.contains(id);
}

bool Concern::isNearEndsOf(std::string_view id) const {
    const Jumper* jumper = ground_.bench().findJumper(id);
    return jumper == nullptr || std::ranges::any_of(jumper->ends, [&](const JumperEnd& end) { return isNear(end); });
}

bool Concern::touches(const BenchChange& change) const {
    if (everything_ || !change.rails.empty() || !change.removed.empty()) return true;
    const auto joins = [&](const Jumper& jumper) {
        return std::ranges::any_of(jumper.ends, [&](const JumperEnd& end) { return isNear(end); });
    };
    return std::ranges::any_of(change.leads,
                               [&](const PlacedLead& each) {
                                   return amiss_.contains(each.part) || isNearLeadsOf(each.part) ||
                                          (each.to && isNear(*each.to));
                               }) ||
           std::ranges::any_of(change.ends,
                               [&](const PlacedEnd& each) { return isNearEndsOf(each.jumper) || isNear(each.to); }) ||
           std::ranges::any_of(change.figures, [&](const SetFigure& each) { return isNearLeadsOf(each.part); }) ||
           std::ranges::any_of(change.conditions, [&](const SetCondition& each) { return isNearLeadsOf(each.id); }) ||
           std::ranges::any_of(change.added, joins);
}

}  // namespace tiepoint
