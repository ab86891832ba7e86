#include "examiner/slip_place.h"

#include <algorithm>

namespace tiepoint::examiner {
namespace {

/// Runs over each hole that a part or a jumper is in.
void forHoles(const Part& part, const std::function<void(const Hole&)>& each) {
    for (const auto& lead : part.leads) {
        if (lead) each(*lead);
    }
}
void forHoles(const Jumper& jumper, const std::function<void(const Hole&)>& each) {
    for (const JumperEnd& end : jumper.ends) {
        if (const Hole* hole = std::get_if<Hole>(&end)) each(*hole);
    }
}

struct IdOf {
    std::string operator()(const AddBoard& it) const { return it.board.id; }
    std::string operator()(const AddPart& it) const { return it.part.id; }
    std::string operator()(const AddJumper& it) const { return it.jumper.id; }
    std::string operator()(const Remove& it) const { return it.id; }
    std::string operator()(const ReplaceBoard& it) const { return it.board.id; }
    std::string operator()(const ReplacePart& it) const { return it.part.id; }
    std::string operator()(const ReplaceJumper& it) const { return it.jumper.id; }
    template <class Other>
    std::string operator()(const Other&) const {
        return {};
    }
};

}  // namespace

SlipPlace::SlipPlace(const Layout& layout, const Slip& slip)
    : layout_(layout),
      things_(slip.things.begin(), slip.things.end()),
      holes_(slip.holes.begin(), slip.holes.end()) {
    const Bench& bench = *layout.bench;
    std::set<int> powerNets, powerStrips;
    for (int part = 0; part < std::ssize(bench.parts); ++part) {
        if (!bench.parts[part].kind->isSupply) continue;
        for (int lead = layout.firstLead[part]; lead < layout.firstLead[part + 1]; ++lead) {
            powerNets.insert(layout.netOfLead[lead]);
            if (layout.holeOfLead[lead] >= 0) powerStrips.insert(layout.stripOfHole[layout.holeOfLead[lead]]);
        }
    }
    const auto add = [&](const Hole& hole) {
        const int index = layout.holeIndex(hole);
        if (index < 0) return;
        if (!powerNets.contains(layout.netOfHole(index))) nets_.insert(layout.netOfHole(index));
        const int strip = layout.stripOfHole[index];
        if (!powerStrips.contains(strip)) strips_.insert(strip);
    };
    std::ranges::for_each(slip.holes, add);
    for (const std::string& id : slip.things) {
        if (const Part* part = bench.findPart(id)) forHoles(*part, add);
        if (const Jumper* jumper = bench.findJumper(id)) forHoles(*jumper, add);
    }
}

bool SlipPlace::meets(const Hole& hole) const {
    const int index = layout_.holeIndex(hole);
    return holes_.contains(hole) ||
           (index >= 0 && (nets_.contains(layout_.netOfHole(index)) || strips_.contains(layout_.stripOfHole[index])));
}

bool SlipPlace::standsOn(const std::string& id) const {
    bool found = false;
    const auto look = [&](const Hole& hole) { found = found || meets(hole); };
    if (const Part* part = layout_.bench->findPart(id)) forHoles(*part, look);
    if (const Jumper* jumper = layout_.bench->findJumper(id)) forHoles(*jumper, look);
    return found;
}

bool SlipPlace::isNamedBy(const Finding& finding) const {
    return std::ranges::any_of(finding.parts, [this](const std::string& id) { return things_.contains(id); }) ||
           std::ranges::any_of(finding.holes, [this](const Hole& hole) { return meets(hole); });
}

bool SlipPlace::isToldBy(const Finding& finding) const {
    return isNamedBy(finding) ||
           std::ranges::any_of(finding.parts, [this](const std::string& id) { return standsOn(id); });
}

bool SlipPlace::isTouchedBy(const Edit& edit) const {
    return std::ranges::any_of(edit.operations, [this](const Operation& operation) {
        if (things_.contains(std::visit(IdOf{}, operation))) return true;
        bool found = false;
        const auto look = [&](const Hole& hole) { found = found || meets(hole); };
        if (const auto* added = std::get_if<AddPart>(&operation)) forHoles(added->part, look);
        if (const auto* added = std::get_if<AddJumper>(&operation)) forHoles(added->jumper, look);
        return found;
    });
}

}  // namespace tiepoint::examiner
