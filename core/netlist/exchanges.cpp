// Asked of the digest of circuits: the part with a marker at each terminal is still the same circuit with its terminals permuted, or not.

#include "core/netlist/exchanges.h"

#include "core/netlist/equality.h"

#include <algorithm>
#include <numeric>

namespace tiepoint {
namespace {

/// The part with its terminals on nets in that order, each told apart by a resistor of its own value.
Netlist marked(const Part& part, const std::vector<int>& nets) {
    Netlist netlist;
    const PartKind& marker = usualResistor();
    for (std::size_t net = 0; net < nets.size(); ++net) {
        netlist.nets.push_back(std::to_string(net));
        Part resistor = makePart(marker, "M" + std::to_string(net));
        resistor.values[resistanceValue(marker)] = static_cast<double>(net + 1);
        netlist.leads[addPart(netlist, std::move(resistor))][0] = static_cast<int>(net);
    }
    const int index = addPart(netlist, part);
    const Terminals terminals = terminalsOf(netlist);
    for (std::size_t lead = 0; lead < part.leads.size(); ++lead)
        netlist.leads[index][lead] = nets[terminals.ofLead[index][lead] - terminals.firstOfPart[index]];
    return netlist;
}

int terminalCount(const Part& part) {
    Netlist alone;
    return terminalsOf((addPart(alone, part), alone)).countOf(0);
}

}  // namespace

std::vector<std::vector<int>> exchangesOf(const Part& part, const Likeness& likeness) {
    Part plain = makePart(*part.kind, "X");
    plain.values = part.values;
    plain.state = part.state;
    std::vector<int> order(static_cast<std::size_t>(terminalCount(part)));
    std::iota(order.begin(), order.end(), 0);
    std::vector<std::vector<int>> exchanges{order};
    if (std::ssize(order) > kMostExchangedTerminals) return exchanges;
    Likeness exact;
    exact.states = likeness.states;
    const std::uint64_t digest = canonicalHash(marked(plain, order), exact);
    while (std::ranges::next_permutation(order).found) {
        if (canonicalHash(marked(plain, order), exact) == digest) exchanges.push_back(order);
    }
    return exchanges;
}

}  // namespace tiepoint
