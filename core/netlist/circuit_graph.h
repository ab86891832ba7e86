#pragma once
// A circuit as a coloured graph, so that two circuits are equal exactly if their graphs are. Built from the models of the kinds alone: which
// ends may be exchanged follows from them. The head of circuit_graph.cpp says how.

#include "core/netlist/likeness.h"
#include "core/netlist/netlist.h"

#include <cstdint>
#include <span>
#include <vector>

namespace tiepoint {

struct CircuitGraph {
    struct Arc {
        int to;
        std::uint64_t role;  ///< what the edge means: leads to a plus, to either end, belongs to, ...
    };
    std::vector<int> firstArc;  ///< by vertex, with one entry more at the end
    std::vector<Arc> arcs;
    std::vector<std::uint64_t> colours;  ///< by vertex: a digest of what it is by itself
    std::vector<int> firstFigure;        ///< by vertex, with one entry more at the end
    std::vector<double> figures;         ///< numbers that are alike within a tolerance; none where the tolerance is 0
    std::vector<int> partVertices;       ///< by part: its vertex, or -1 where it doesn't count
    std::vector<int> netVertices;        ///< by net: its vertex, or -1 where it joins nothing or stands inside a chain

    int size() const { return static_cast<int>(colours.size()); }
    std::span<const Arc> arcsOf(int vertex) const {
        return std::span(arcs).subspan(firstArc[vertex], firstArc[vertex + 1] - firstArc[vertex]);
    }
    std::span<const double> figuresOf(int vertex) const {
        return std::span(figures).subspan(firstFigure[vertex], firstFigure[vertex + 1] - firstFigure[vertex]);
    }
};

CircuitGraph graphOf(const Netlist& netlist, const Likeness& likeness);

}  // namespace tiepoint
