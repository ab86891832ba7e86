#pragma once
// Equality of circuits by a general graph library (Boost's VF2, L. P. Cordella et al.), on a drawing of its own: parts, their terminals
// labelled by hand from a table of what is interchangeable, and nets. Exponential; for small circuits.

#include "core/netlist/netlist.h"

#include <boost/graph/adjacency_list.hpp>
#include <boost/graph/vf2_sub_graph_iso.hpp>

#include <map>
#include <string>
#include <vector>

namespace tiepoint::test {

using OracleGraph = boost::adjacency_list<boost::vecS, boost::vecS, boost::undirectedS, std::string>;

/// What the terminals of a kind are called, by lead; those of one name are interchangeable, and legs of one metal share a number.
/// Halves of a part that are alike go together: by lead the number of its half, or -1; none: the part has no halves.
struct OracleTerminals {
    std::vector<std::string> names;
    std::vector<int> metal;
    std::vector<int> half = {};
};

inline OracleTerminals oracleTerminals(const Part& part) {
    static const std::map<std::string, OracleTerminals> table = {
        {"resistor", {{"end", "end"}, {0, 1}}},
        {"lamp", {{"end", "end"}, {0, 1}}},
        {"ceramic-capacitor", {{"end", "end"}, {0, 1}}},
        {"inductor", {{"end", "end"}, {0, 1}}},
        {"photoresistor", {{"end", "end"}, {0, 1}}},
        {"thermistor", {{"end", "end"}, {0, 1}}},
        {"motor", {{"end", "end"}, {0, 1}}},
        {"buzzer-passive", {{"end", "end"}, {0, 1}}},
        {"toggle", {{"end", "end"}, {0, 1}}},
        {"led", {{"anode", "cathode"}, {0, 1}}},
        {"diode", {{"anode", "cathode"}, {0, 1}}},
        {"bench-supply", {{"plus", "minus"}, {0, 1}}},
        {"usb-supply", {{"plus", "minus", "minus"}, {0, 1, 1}}},
        {"push-button", {{"pair", "pair", "pair", "pair"}, {0, 0, 1, 1}}},
        {"potentiometer", {{"end", "wiper", "end"}, {0, 1, 2}}},  // its knob in the middle
        {"slide-switch", {{"closed", "common", "open"}, {0, 1, 2}}},
        {"multimeter", {{"red", "black"}, {0, 1}}},
        {"test-npn", {{"emitter", "base", "collector"}, {0, 1, 2}}},
        {"test-star", {{"end", "end", "end"}, {0, 1, 2}}},
        {"test-pair",
         {{"collector", "base", "emitter", "collector", "base", "unused"}, {0, 1, 2, 3, 4, 5}, {0, 0, -1, 1, 1, -1}}},
    };
    const auto known = table.find(part.kind->name);
    OracleTerminals terminals;
    if (known != table.end()) {
        terminals = known->second;
    } else {  // any other kind: each lead for itself
        for (const LeadSpec& lead : part.kind->leads) {
            terminals.metal.push_back(static_cast<int>(terminals.names.size()));
            terminals.names.push_back(lead.name);
        }
    }
    const int position = part.kind->stateIndex("position");
    if (position >= 0 && part.stateValue(position) == 1) std::swap(terminals.names[0], terminals.names[2]);
    return terminals;
}

inline OracleGraph oracleGraph(const Netlist& netlist) {
    std::vector<int> one(netlist.nets.size());
    for (std::size_t net = 0; net < one.size(); ++net) one[net] = static_cast<int>(net);
    const auto joinNets = [&](int a, int b) {
        const int from = one[a], to = one[b];
        for (int& net : one) net = net == from ? to : net;
    };
    std::vector<std::map<int, int>> netOfMetal(netlist.parts.size());
    for (std::size_t part = 0; part < netlist.parts.size(); ++part) {
        const OracleTerminals terminals = oracleTerminals(netlist.parts[part]);
        for (std::size_t lead = 0; lead < terminals.metal.size(); ++lead) {
            const int net = netlist.leads[part][lead];
            auto [known, isNew] = netOfMetal[part].emplace(terminals.metal[lead], net);
            if (!isNew && net >= 0 && known->second >= 0) joinNets(net, known->second);
            if (net >= 0) known->second = net;
        }
    }
    std::map<int, int> uses;
    for (const auto& metals : netOfMetal) {
        for (const auto& [metal, net] : metals) uses[net < 0 ? -1 : one[net]] += 1;
    }
    OracleGraph graph;
    std::map<int, std::size_t> vertexOfNet;
    for (const auto& [net, count] : uses) {
        if (net >= 0 && count > 1) vertexOfNet[net] = boost::add_vertex("net", graph);
    }
    for (std::size_t p = 0; p < netlist.parts.size(); ++p) {
        const Part& part = netlist.parts[p];
        std::string label =
            part.kind->name + " " + std::string(kConditionNames[static_cast<std::size_t>(part.condition)]);
        for (int i = 0; i < std::ssize(part.values); ++i) label += " " + std::to_string(part.value(i));
        for (int i = 0; i < std::ssize(part.state); ++i) {
            if (part.kind->state[i].name != "position") label += " " + std::to_string(part.stateValue(i));
        }
        const auto body = boost::add_vertex(label, graph);
        const OracleTerminals terminals = oracleTerminals(part);
        std::map<int, std::size_t> vertexOfHalf{{-1, body}};
        for (const int half : terminals.half) {
            if (!vertexOfHalf.contains(half)) {
                vertexOfHalf[half] = boost::add_vertex("half", graph);
                boost::add_edge(body, vertexOfHalf[half], graph);
            }
        }
        for (const auto& [metal, net] : netOfMetal[p]) {
            std::size_t lead = 0;
            while (terminals.metal[lead] != metal) ++lead;
            const auto terminal = boost::add_vertex(terminals.names[lead], graph);
            boost::add_edge(vertexOfHalf[terminals.half.empty() ? -1 : terminals.half[lead]], terminal, graph);
            if (net >= 0 && vertexOfNet.contains(one[net])) boost::add_edge(terminal, vertexOfNet[one[net]], graph);
        }
    }
    return graph;
}

inline bool oracleEqual(const Netlist& first, const Netlist& second) {
    const OracleGraph a = oracleGraph(first), b = oracleGraph(second);
    if (boost::num_vertices(a) != boost::num_vertices(b) || boost::num_edges(a) != boost::num_edges(b)) return false;
    const auto found = [](const auto&, const auto&) { return false; };  // the first one is enough
    const auto likeVertices = [&](std::size_t v, std::size_t w) { return a[v] == b[w]; };
    return boost::vf2_graph_iso(a, b, found, boost::vertex_order_by_mult(a), boost::vertices_equivalent(likeVertices));
}

}  // namespace tiepoint::test
