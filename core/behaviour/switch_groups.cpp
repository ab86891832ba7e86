// Parts that share a net which no supply holds are one circuit. Circuits that bridge the same two supplies apart from each other close a
// loop together, so all circuits that reach nets of more than one lot of supplies are one group.
//
// The inner resistance of a supply couples all that it feeds. That is left to the one position in which everything is thrown, where
// it is felt most.

#include "core/behaviour/switch_groups.h"

#include "core/base/disjoint_sets.h"
#include "core/behaviour/supply_nets.h"

#include <map>

namespace tiepoint {
namespace {

/// The circuits of a bench, as sets of its parts.
class Circuits {
public:
    explicit Circuits(const Layout& layout)
        : layout_(layout),
          joined_(layout.bench->parts.size()),
          lotOfNet_(layout.netCount, kHeldByNone) {
        for (const SupplyNets& supply : supplyNets(layout))
            lotOfNet_[supply.plus] = lotOfNet_[supply.minus] = supply.group;
        joinByNets();
        joinBridges();
    }

    int of(int part) { return joined_.root(part); }

private:
    static constexpr int kHeldByNone = -1;

    template <class Visit>
    void forEachLead(Visit visit) {
        for (int part = 0; part < static_cast<int>(layout_.bench->parts.size()); ++part) {
            if (layout_.bench->parts[part].kind->isSupply) continue;
            for (int lead = layout_.firstLead[part]; lead < layout_.firstLead[part + 1]; ++lead)
                visit(part, layout_.netOfLead[lead]);
        }
    }

    void joinByNets() {
        std::vector<int> firstIn(layout_.netCount, -1);
        forEachLead([&](int part, int net) {
            if (lotOfNet_[net] != kHeldByNone) return;
            if (firstIn[net] < 0)
                firstIn[net] = part;
            else
                joined_.join(firstIn[net], part);
        });
    }

    void joinBridges() {
        std::map<int, int> lotOf;  // by circuit
        int bridge = -1;
        forEachLead([&](int part, int net) {
            if (lotOfNet_[net] == kHeldByNone) return;
            const int lot = lotOf.try_emplace(of(part), lotOfNet_[net]).first->second;
            if (lot == lotOfNet_[net]) return;
            if (bridge < 0)
                bridge = part;
            else
                joined_.join(bridge, part);
        });
    }

    const Layout& layout_;
    DisjointSets joined_;
    std::vector<int> lotOfNet_;  ///< the lot of supplies that holds a net
};

}  // namespace

std::vector<int> circuitsOf(const Layout& layout) {
    Circuits circuits(layout);
    std::vector<int> roots;
    roots.reserve(layout.bench->parts.size());
    for (int part = 0; part < static_cast<int>(layout.bench->parts.size()); ++part) roots.push_back(circuits.of(part));
    return roots;
}

std::vector<int> switchGroups(const Layout& layout, const std::vector<Throw>& all) {
    const std::vector<int> circuits = circuitsOf(layout);
    std::map<int, int> numberOf;
    std::vector<int> groups;
    groups.reserve(all.size());
    for (const Throw& each : all)
        groups.push_back(numberOf.try_emplace(circuits[each.part], static_cast<int>(numberOf.size())).first->second);
    return groups;
}

}  // namespace tiepoint
