#include "core/findings/neighbourhood.h"

#include "core/meter/meter.h"

#include <algorithm>

namespace tiepoint {
namespace {

/// The strips that one part or jumper joins.
using Ends = std::vector<int>;

Ends endsOf(const Layout& layout, int part) {
    Ends ends;
    for (int lead = layout.firstLead[part]; lead < layout.firstLead[part + 1]; ++lead) {
        if (layout.holeOfLead[lead] >= 0) ends.push_back(layout.stripOfHole[layout.holeOfLead[lead]]);
    }
    return ends;
}

Ends endsOf(const Layout& layout, const Jumper& jumper) {
    Ends ends;
    for (const JumperEnd& end : jumper.ends) {
        if (const Hole* hole = std::get_if<Hole>(&end)) ends.push_back(layout.stripOfHole[layout.holeIndex(*hole)]);
    }
    return ends;
}

}  // namespace

Neighbourhood::Neighbourhood(const Layout& layout, int part)
    : layout_(layout),
      hub_(layout.netOfStrip.size(), 0),
      near_(layout.netOfStrip.size(), 0) {
    markHubs();
    reach(part);
}

void Neighbourhood::markHubs() {
    for (const Joint& joint : layout_.joints) {
        if (joint.hole < 0) continue;
        const bool supply = joint.lead >= 0 && layout_.bench->parts[layout_.partOfLead(joint.lead)].kind->isSupply;
        if (supply || isRail(layout_.holeAt(joint.hole).line)) hub_[layout_.stripOfHole[joint.hole]] = 1;
    }
}

void Neighbourhood::reach(int start) {
    const Bench& bench = *layout_.bench;
    std::vector<Ends> things;
    for (int part = 0; part < static_cast<int>(bench.parts.size()); ++part) {
        const bool joins = !bench.parts[part].kind->isSupply && !looksOn(bench.parts[part]);
        things.push_back(joins ? endsOf(layout_, part) : Ends());
    }
    for (const Jumper& jumper : bench.jumpers) things.push_back(endsOf(layout_, jumper));
    std::vector<std::vector<std::size_t>> thingsIn(hub_.size());
    for (std::size_t thing = 0; thing < things.size(); ++thing) {
        for (const int strip : things[thing]) thingsIn[strip].push_back(thing);
    }
    std::vector<char> seen(things.size(), 0);
    std::vector<std::size_t> open{static_cast<std::size_t>(start)};
    seen[static_cast<std::size_t>(start)] = 1;
    while (!open.empty()) {
        const std::size_t at = open.back();
        open.pop_back();
        for (const int strip : things[at]) {
            if (hub_[strip] || near_[strip]) continue;
            near_[strip] = 1;
            for (const std::size_t thing : thingsIn[strip]) {
                if (!seen[thing]) open.push_back(thing);
                seen[thing] = 1;
            }
        }
    }
}

bool Neighbourhood::isHub(const Hole& hole) const {
    return isRail(hole.line) || hub_[layout_.stripOfHole[layout_.holeIndex(hole)]];
}

bool Neighbourhood::holds(const Hole& hole) const { return near_[layout_.stripOfHole[layout_.holeIndex(hole)]] != 0; }

bool Neighbourhood::concerns(const std::vector<Hole>& holes) const {
    return std::ranges::any_of(holes, [this](const Hole& hole) { return holds(hole); }) ||
           std::ranges::all_of(holes, [this](const Hole& hole) { return isHub(hole); });
}

}  // namespace tiepoint
