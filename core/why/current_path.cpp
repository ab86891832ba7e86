#include "core/why/current_path.h"

#include "core/base/disjoint_sets.h"
#include "core/findings/supply_nets.h"
#include "core/snapshot/readings.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace tiepoint {
namespace {

/// What every part draws out of every net.
class Draws {
public:
    explicit Draws(const Snapshot& snapshot) : snapshot_(snapshot) {
        const Layout& layout = *snapshot.layout;
        byPart_.resize(layout.bench->parts.size());
        for (int part = 0; part < static_cast<int>(byPart_.size()); ++part) {
            for (int lead = layout.firstLead[part]; lead < layout.firstLead[part + 1]; ++lead) {
                byPart_[part][layout.netOfLead[lead]] += snapshot.solution.leadInjection[lead];
            }
        }
    }

    /// The net through which most current enters (sign 1) or leaves (sign -1) a part, or -1.
    int door(int part, double sign) const {
        int found = -1;
        double most = kNoCurrentAmpere;
        for (const auto& [net, ampere] : byPart_[part]) {
            if (sign * ampere <= most) continue;
            most = sign * ampere;
            found = net;
        }
        return found;
    }

    /// The part that takes most current out of a net (sign 1), or gives most into it (sign -1), or -1.
    int busiest(int net, double sign) const {
        int found = -1;
        double most = kNoCurrentAmpere;
        for (int part = 0; part < static_cast<int>(byPart_.size()); ++part) {
            const auto here = byPart_[part].find(net);
            if (here == byPart_[part].end() || sign * here->second <= most) continue;
            most = sign * here->second;
            found = part;
        }
        return found;
    }

    PathLink link(int part) const {
        const int from = door(part, 1), to = door(part, -1);
        return {part, byPart_[part].at(from), snapshot_.solution.netVoltage[from], snapshot_.solution.netVoltage[to]};
    }

    bool passes(int part) const { return door(part, 1) >= 0 && door(part, -1) >= 0; }

private:
    const Snapshot& snapshot_;
    std::vector<std::map<int, double>> byPart_;
};

/// Parts met from a part on, up to a supply, which is not among them. sign 1: with the current.
std::vector<int> walk(const Snapshot& snapshot, const Draws& draws, int start, double sign, int& supply) {
    const Bench& bench = *snapshot.layout->bench;
    std::vector<int> met;
    std::vector<char> seen(bench.parts.size(), 0);
    for (int at = start; !seen[at];) {
        seen[at] = 1;
        const int net = draws.door(at, -sign);
        const int next = net < 0 ? -1 : draws.busiest(net, sign);
        if (next < 0 || !draws.passes(next)) break;
        if (bench.parts[next].kind->isSupply) {
            supply = next;
            break;
        }
        met.push_back(next);
        at = next;
    }
    return met;
}

}  // namespace

CurrentPath pathThrough(const Snapshot& snapshot, int part) {
    CurrentPath path;
    if (snapshot.status() != Status::Solved) return path;
    const Draws draws(snapshot);
    if (!draws.passes(part)) return path;
    std::vector<int> parts;
    if (snapshot.layout->bench->parts[part].kind->isSupply) {
        parts = walk(snapshot, draws, part, 1, path.supply);
    } else {
        parts = walk(snapshot, draws, part, -1, path.supply);
        std::ranges::reverse(parts);
        parts.push_back(part);
        std::ranges::copy(walk(snapshot, draws, part, 1, path.supply), std::back_inserter(parts));
    }
    for (const int each : parts) path.links.push_back(draws.link(each));
    if (path.supply >= 0) {
        const PathLink source = draws.link(path.supply);
        path.supplyVolt = std::abs(source.volt());
    }
    return path;
}

std::vector<SupplyReach> reachWithout(const Snapshot& snapshot, int part) {
    const Layout& layout = *snapshot.layout;
    DisjointSets joined(static_cast<std::size_t>(layout.netCount));  // nets first, then nodes inside parts
    std::map<std::pair<int, std::string>, int> inner;
    for (const ElementState& element : snapshot.solution.elements) {
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
        const int from = node(spec.from), to = node(spec.to);
        joined.join(from, to);
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
