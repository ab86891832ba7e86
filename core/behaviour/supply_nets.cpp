#include "core/behaviour/supply_nets.h"

#include "core/base/disjoint_sets.h"
#include "core/circuit/element.h"

namespace tiepoint {

std::vector<SupplyNets> supplyNets(const Layout& layout) {
    std::vector<SupplyNets> found;
    for (int index = 0; index < static_cast<int>(layout.bench->parts.size()); ++index) {
        const PartKind& kind = *layout.bench->parts[index].kind;
        if (!kind.isSupply) continue;
        for (const ElementSpec& spec : kind.model) {
            const int plus = kind.leadIndex(spec.from()), minus = kind.leadIndex(spec.to());
            if (!drives(kind, spec) || plus < 0 || minus < 0) continue;
            const int plusNet = layout.netOfLead[layout.leadIndex(index, plus)];
            const int minusNet = layout.netOfLead[layout.leadIndex(index, minus)];
            if (layout.netUsed[plusNet] && layout.netUsed[minusNet])
                found.push_back({index, plusNet, minusNet, static_cast<int>(found.size())});
        }
    }
    DisjointSets joined(found.size());
    const auto meet = [](const SupplyNets& a, const SupplyNets& b) {
        return a.plus == b.plus || a.plus == b.minus || a.minus == b.plus || a.minus == b.minus;
    };
    for (const SupplyNets& a : found) {
        for (const SupplyNets& b : found) {
            if (meet(a, b)) joined.join(a.group, b.group);
        }
    }
    for (SupplyNets& each : found) each.group = joined.root(each.group);
    return found;
}

}  // namespace tiepoint
