#include "core/netlist/bench_netlist.h"

#include "core/bench/natural_order.h"

#include <fmt/format.h>

#include <algorithm>
#include <numeric>
#include <unordered_set>

namespace tiepoint {
namespace {

/// Parts in the order in which they lend their names to nets.
std::vector<int> namingOrder(const std::vector<Part>& parts) {
    std::vector<int> order(parts.size());
    std::iota(order.begin(), order.end(), 0);
    std::ranges::sort(order, [&](int a, int b) {
        if (parts[a].kind->isSupply != parts[b].kind->isSupply) return parts[a].kind->isSupply;
        return naturalLess(parts[a].id, parts[b].id);
    });
    return order;
}

class NetNamer {
public:
    NetNamer(const Netlist& netlist, std::vector<std::string> given) : netlist_(netlist), names_(std::move(given)) {}

    std::vector<std::string> run() {
        for (std::string& name : names_) {
            if (!isNetName(name) || !taken_.insert(name).second) name.clear();
        }
        for (const int part : namingOrder(netlist_.parts)) {
            for (std::size_t lead = 0; lead < netlist_.leads[part].size(); ++lead) {
                const int net = netlist_.leads[part][lead];
                if (net >= 0 && names_[net].empty()) names_[net] = freeName(part, lead);
            }
        }
        return std::move(names_);
    }

private:
    std::string freeName(int part, std::size_t lead) {
        const std::string name = netlist_.parts[part].id + '.' + netlist_.parts[part].kind->leads[lead].name;
        std::string free = name;
        for (int number = 2; !taken_.insert(free).second; ++number) free = fmt::format("{} ({})", name, number);
        return free;
    }

    const Netlist& netlist_;
    std::vector<std::string> names_;  // by net; empty: none yet
    std::unordered_set<std::string> taken_;
};

Part withoutPlace(Part part) {
    part.at.reset();
    std::ranges::fill(part.leads, std::nullopt);
    return part;
}

/// By net: whether at least two terminals meet there.
std::vector<char> joiningNets(const Netlist& netlist) {
    const Terminals terminals = terminalsOf(netlist);
    std::vector<int> count(netlist.nets.size(), 0);
    for (const int net : terminals.netOf) {
        if (net >= 0) ++count[net];
    }
    std::vector<char> joins;
    for (const int root : terminals.rootOfNet) joins.push_back(count[root] > 1);
    return joins;
}

}  // namespace

Netlist netlistOf(const Layout& layout, const GivenNetNames& given) {
    const Bench& bench = *layout.bench;
    Netlist netlist;
    netlist.title = bench.title;
    netlist.nets.resize(static_cast<std::size_t>(layout.netCount));
    for (std::size_t part = 0; part < bench.parts.size(); ++part) {
        addPart(netlist, withoutPlace(bench.parts[part]));
        const auto first = layout.netOfLead.begin() + layout.firstLead[part];
        std::copy_n(first, bench.parts[part].leads.size(), netlist.leads.back().begin());
    }
    for (const auto& [net, name] : given) netlist.nets.at(static_cast<std::size_t>(net)) = name;
    const std::vector<char> joins = joiningNets(netlist);
    for (std::vector<int>& leads : netlist.leads) {
        for (int& net : leads) {
            if (net >= 0 && !joins[net]) net = -1;
        }
    }
    renumberNets(netlist);
    netlist.nets = NetNamer(netlist, std::move(netlist.nets)).run();
    return netlist;
}

}  // namespace tiepoint
