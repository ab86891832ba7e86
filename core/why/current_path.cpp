#include "core/why/current_path.h"

#include "core/base/disjoint_sets.h"
#include "core/behaviour/supply_nets.h"
#include "core/circuit/element.h"
#include "core/snapshot/solved_loop.h"

#include <map>

namespace tiepoint {
double CurrentPath::sourceVolt() const {
    double volt = 0;
    for (const PathLink& source : sources) volt -= source.volt;
    return volt;
}

CurrentPath pathThrough(const Snapshot& snapshot, int part) {
    CurrentPath path;
    const auto loop = loopThrough(snapshot, part);
    if (!loop) return path;
    const auto& volts = snapshot.solution.netVoltage;
    for (const LoopPart& each : loop->parts) {
        const PathLink link{each.part, each.ampere, volts[each.fromNet] - volts[each.toNet],
                            snapshot.shown().volt(each.fromNet) - snapshot.shown().volt(each.toNet),
                            snapshot.shown().through(each.part).most()};
        // A supply may be driven backwards: then it is one more part across which voltage lies.
        const bool isSource = each.part == loop->source() || snapshot.layout->bench->parts[each.part].kind->isSupply;
        const bool lifts = isSource && !(link.volt > 0);
        (lifts ? path.sources : path.links).push_back(link);
    }
    return path;
}

std::vector<SupplyReach> reachWithout(const Snapshot& snapshot, int part) {
    const Layout& layout = *snapshot.layout;
    DisjointSets joined(static_cast<std::size_t>(layout.netCount));  // nets first, then nodes inside parts
    std::map<std::pair<int, std::string>, int> inner;
    for (const ElementState element : snapshot.solution.elements()) {
        const PartKind& kind = *layout.bench->parts[element.part].kind;
        if (element.part == part || kind.isSupply || !element.closed) continue;
        const auto node = [&](const std::string& name) {
            const int lead = kind.leadIndex(name);
            if (lead >= 0) return layout.netOfLead[layout.leadIndex(element.part, lead)];
            const auto [place, added] = inner.try_emplace({element.part, name}, -1);
            if (added) place->second = joined.add();
            return place->second;
        };
        const ElementSpec& spec = kind.model[element.spec];
        for (const JoinedTerminals& each : joinedBy(spec, layout.bench->parts[element.part], element.told)) {
            const int from = node(spec.between[each.from]), to = node(spec.between[each.to]);
            joined.join(from, to);
        }
    }
    std::vector<SupplyReach> reach(layout.netCount);
    for (const SupplyNets& supply : supplyNets(layout)) {
        for (int net = 0; net < layout.netCount; ++net) {
            reach[net].plus = reach[net].plus || joined.areJoined(net, supply.plus);
            reach[net].minus = reach[net].minus || joined.areJoined(net, supply.minus);
        }
    }
    return reach;
}

}  // namespace tiepoint
