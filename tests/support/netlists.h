#pragma once
// Circuits without places for tests, written as people say them, and made anew in another guise.

#include "core/netlist/netlist.h"
#include "support/test_catalogue.h"

#include <algorithm>
#include <initializer_list>
#include <map>
#include <numeric>
#include <random>
#include <stdexcept>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace tiepoint::test {

/// Adds parts whose leads go to named nets, in the order of the kind's leads; "" hangs.
class NetlistBuilder {
public:
    NetlistBuilder& part(std::string_view kindName, const std::vector<std::string>& nets,
                         std::initializer_list<std::pair<std::string_view, double>> settings = {}) {
        const PartKind* kind = testCatalogue().find(kindName);
        if (!kind || nets.size() > kind->leads.size()) throw std::invalid_argument(std::string(kindName));
        Part part = makePart(*kind, kind->prefix + std::to_string(++number_));
        for (const auto& [name, value] : settings) {
            const int at = kind->valueIndex(name), state = kind->stateIndex(name);
            if (at < 0 && state < 0) throw std::invalid_argument(std::string(name));
            (at >= 0 ? part.values[at] : part.state[state]) = value;
        }
        const int index = addPart(netlist_, std::move(part));
        for (std::size_t lead = 0; lead < nets.size(); ++lead) netlist_.leads[index][lead] = netOf(nets[lead]);
        return *this;
    }
    NetlistBuilder& resistor(const std::string& a, const std::string& b, double ohm = 330) {
        return part("resistor", {a, b}, {{"resistance", ohm}});
    }
    Netlist build() const {
        Netlist built = netlist_;
        renumberNets(built);
        return built;
    }

private:
    int netOf(const std::string& name) {
        if (name.empty()) return -1;
        const auto [found, isNew] = nets_.emplace(name, static_cast<int>(netlist_.nets.size()));
        if (isNew) netlist_.nets.push_back(name);
        return found->second;
    }

    Netlist netlist_;
    std::map<std::string, int> nets_;
    int number_ = 0;
};

/// The same circuit with other ids, names, numbers of nets and order of parts.
inline Netlist disguised(const Netlist& netlist, std::mt19937& random) {
    const auto shuffled = [&](std::size_t count) {
        std::vector<int> order(count);
        std::iota(order.begin(), order.end(), 0);
        std::shuffle(order.begin(), order.end(), random);
        return order;
    };
    const std::vector<int> order = shuffled(netlist.parts.size()), numbers = shuffled(netlist.nets.size());
    Netlist other;
    for (std::size_t net = 0; net < netlist.nets.size(); ++net) other.nets.push_back("n" + std::to_string(net));
    for (const int part : order) {
        Part copy = netlist.parts[part];
        copy.id = "X" + std::to_string(other.parts.size() + 1);
        std::vector<int> leads = netlist.leads[part];
        for (int& net : leads) net = net < 0 ? net : numbers[net];
        addPart(other, std::move(copy));
        other.leads.back() = std::move(leads);
    }
    renumberNets(other);
    return other;
}

}  // namespace tiepoint::test
