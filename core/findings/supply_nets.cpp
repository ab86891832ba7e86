#include "core/findings/supply_nets.h"

#include "core/circuit/element.h"

#include <algorithm>

namespace tiepoint {

std::vector<SupplyNets> supplyNets(const Layout& layout) {
    std::vector<SupplyNets> found;
    for (int index = 0; index < static_cast<int>(layout.bench->parts.size()); ++index) {
        const PartKind& kind = *layout.bench->parts[index].kind;
        if (!kind.isSupply) continue;
        for (const ElementSpec& spec : kind.model) {
            const int plus = kind.leadIndex(spec.from), minus = kind.leadIndex(spec.to);
            if (findElement(spec.element) != &kSupplyElement || plus < 0 || minus < 0) continue;
            const int plusNet = layout.netOfLead[layout.leadIndex(index, plus)];
            const int minusNet = layout.netOfLead[layout.leadIndex(index, minus)];
            if (layout.netUsed[plusNet] && layout.netUsed[minusNet])
                found.push_back({index, plusNet, minusNet, static_cast<int>(found.size())});
        }
    }
    const auto meet = [](const SupplyNets& a, const SupplyNets& b) {
        return a.plus == b.plus || a.plus == b.minus || a.minus == b.plus || a.minus == b.minus;
    };
    for (const SupplyNets& a : found) {
        for (const SupplyNets& b : found) {
            const int from = std::max(a.group, b.group), to = std::min(a.group, b.group);
            if (from == to || !meet(a, b)) continue;
            for (SupplyNets& each : found) each.group = each.group == from ? to : each.group;
        }
    }
    return found;
}

}  // namespace tiepoint
