#pragma once
// Random networks of switches on a board, and what a search over their graph says of them. The graph knows nothing of boards, nets and
// voltages: a general graph library says which nodes hang together with plus.

#include "support/build_bench.h"

#include <boost/graph/adjacency_list.hpp>
#include <boost/graph/connected_components.hpp>
#include <fmt/format.h>

#include <random>
#include <string>
#include <vector>

namespace tiepoint::test {

/// Nodes by number; node 0 is plus. Every lamp hangs between a node and minus, with a resistor of its own.
struct SwitchNetwork {
    struct Switch {
        bool changeover = false;
        int one = 0, common = 0, other = 0;  ///< a push button joins one and common; a slide common to one, or to other
    };
    int nodes = 1;
    std::vector<Switch> switches;
    std::vector<int> lamps;  ///< the node that each hangs on

    /// By lamp, for positions by switch.
    std::vector<bool> lit(const std::vector<int>& positions) const {
        boost::adjacency_list<boost::vecS, boost::vecS, boost::undirectedS> graph(static_cast<std::size_t>(nodes));
        for (std::size_t s = 0; s < switches.size(); ++s) {
            const Switch& each = switches[s];
            if (each.changeover)
                boost::add_edge(each.common, positions[s] == 0 ? each.one : each.other, graph);
            else if (positions[s] == 1)
                boost::add_edge(each.common, each.one, graph);
        }
        std::vector<int> component(boost::num_vertices(graph));
        boost::connected_components(graph, component.data());
        std::vector<bool> found;
        for (const int lamp : lamps) found.push_back(component[lamp] == component[0]);
        return found;
    }

    /// The network on full boards: a board for the switches, one for the lamps.
    Bench bench() const {
        BenchBuilder builder;
        builder.board("A", "full").board("B", "full", 0, 30);
        builder.part("PS1", "bench-supply", {{"+", "A.top+3"}, {"-", "A.bottom-3"}});
        std::vector<std::string> lastStrip(nodes);  // "A.2": board and column of the upper half
        int wires = 0;
        const auto wire = [&](const std::string& from, const std::string& to) {
            builder.jumper(fmt::format("W{}", ++wires), from, to, "yellow");
        };
        // Row b takes the jumper to the strip before, row c the one to the next.
        const auto hole = [](const std::string& strip, char row) {
            return fmt::format("{}.{}{}", strip[0], row, strip.substr(2));
        };
        const auto hang = [&](int node, const std::string& strip) {
            if (lastStrip[node].empty()) {
                if (node == 0) wire("A.top+5", hole(strip, 'b'));
            } else {
                wire(hole(lastStrip[node], 'c'), hole(strip, 'b'));
            }
            lastStrip[node] = strip;
        };
        for (std::size_t s = 0; s < switches.size(); ++s) {
            const Switch& each = switches[s];
            const int column = 2 + 6 * static_cast<int>(s);
            const std::string id = fmt::format("S{}", s + 1);
            const auto at = [&](char row, int offset) { return fmt::format("A.{}{}", row, column + offset); };
            if (each.changeover) {
                builder.part(id, "slide-switch", {{"a", at('e', 0)}, {"common", at('e', 1)}, {"b", at('e', 2)}});
                hang(each.common, fmt::format("A.{}", column + 1));
                hang(each.other, fmt::format("A.{}", column + 2));
            } else {
                builder.part(id, "push-button",
                             {{"1a", at('e', 0)}, {"1b", at('f', 0)}, {"2a", at('e', 2)}, {"2b", at('f', 2)}});
                hang(each.common, fmt::format("A.{}", column + 2));
            }
            hang(each.one, fmt::format("A.{}", column));
        }
        wire("A.bottom-5", "B.top-5");
        for (std::size_t lamp = 0; lamp < lamps.size(); ++lamp) {
            const int column = 2 + 10 * static_cast<int>(lamp);
            const auto at = [&](char row, int offset) { return fmt::format("B.{}{}", row, column + offset); };
            builder.part(fmt::format("R{}", lamp + 1), "resistor", {{"1", at('d', 0)}, {"2", at('d', 5)}});
            builder.part(fmt::format("D{}", lamp + 1), "led", {{"anode", at('e', 5)}, {"cathode", at('f', 5)}});
            wire(at('j', 5), fmt::format("B.bottom-{}", 3 + 5 * lamp));
            hang(lamps[lamp], fmt::format("B.{}", column));
        }
        wire("B.top-8", "B.bottom-40");
        return builder.build();
    }
};

inline SwitchNetwork randomNetwork(std::mt19937& random, int switches, bool changeovers) {
    constexpr int kLamps = 2;
    const auto any = [&](int below) { return std::uniform_int_distribution<int>(0, below - 1)(random); };
    SwitchNetwork network;
    network.nodes = 2 + any(switches);
    for (int s = 0; s < switches; ++s) {
        SwitchNetwork::Switch each{changeovers && any(2) == 0, any(network.nodes), any(network.nodes),
                                   any(network.nodes)};
        network.switches.push_back(each);
    }
    for (int lamp = 0; lamp < kLamps; ++lamp) network.lamps.push_back(1 + any(network.nodes - 1));
    return network;
}

}  // namespace tiepoint::test
