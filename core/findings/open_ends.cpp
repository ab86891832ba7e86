#include "core/findings/open_ends.h"

#include "core/edit/holes.h"
#include "core/findings/figure_words.h"
#include "core/meter/meter.h"
#include "core/words/words.h"

#include <algorithm>
#include <map>

namespace tiepoint {

OpenCircuit reachOf(const Examination& examination, int light) {
    const Layout& layout = examination.layout();
    const auto near = examination.netsNear(light);
    const auto supplies = supplyNets(layout);
    OpenCircuit reach;
    std::map<int, std::pair<bool, bool>> reached;  // by group: plus, minus
    for (int part = 0; part < examination.partCount(); ++part) {
        if (examination.part(part).kind->isSupply || looksOn(examination.part(part))) continue;
        const int first = layout.firstLead[part], end = layout.firstLead[part + 1];
        const auto isNear = [&](int net) { return near[net] != 0; };
        const bool belongs =
            part == light || std::any_of(layout.netOfLead.begin() + first, layout.netOfLead.begin() + end, isNear);
        for (int lead = first; belongs && lead < end; ++lead) {
            for (const SupplyNets& supply : supplies) {
                if (layout.netOfLead[lead] == supply.plus) reached[supply.group].first = true;
                if (layout.netOfLead[lead] == supply.minus) reached[supply.group].second = true;
            }
        }
    }
    for (const auto& [group, ends] : reached) {
        if (reach.group >= 0 && reach.plus + reach.minus >= ends.first + ends.second) continue;
        reach.plus = ends.first;
        reach.minus = ends.second;
        reach.group = group;
    }
    for (const Joint& joint : layout.joints) {
        if (joint.hole >= 0 && near[joint.net]) reach.holes.push_back(layout.holeAt(joint.hole));
    }
    return reach;
}

Suspicion openSuspicion(const Examination& examination, int light, const OpenCircuit& reach, std::string_view text,
                        const std::function<bool(int)>& missing) {
    Suspicion found;
    found.finding.parts = {examination.part(light).id};
    found.finding.holes = holesOf(examination.part(light));
    found.finding.text = text;
    addFigure(found.finding, "current now", examination.mostCurrent(light));
    found.darkens = found.finding.parts;
    found.proposals = bridgeMends(examination, reach.holes, missing);
    if (!found.proposals.empty()) {
        const auto& jumper = std::get<AddJumper>(found.proposals.front().edit.operations.front()).jumper;
        const Hole& from = std::get<Hole>(jumper.ends[0]);
        const Hole& to = std::get<Hole>(jumper.ends[1]);
        found.finding.holes = {from, to};
        if (found.finding.text.ends_with('.')) found.finding.text.pop_back();
        found.finding.text = say("finding.gap.nearest", {{"sentence", found.finding.text},
                                                         {"one", holeName(examination.bench(), from)},
                                                         {"other", holeName(examination.bench(), to)}});
    }
    return found;
}

}  // namespace tiepoint
