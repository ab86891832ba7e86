#include "core/netlist/equality.h"

#include "core/netlist/circuit_graph.h"
#include "core/netlist/graph_match.h"

#include <cassert>

namespace tiepoint {
namespace {

/// By vertex of the second circuit: the first thing that it stands for; -1 where it is another thing.
std::vector<int> thingsOf(const std::vector<int>& vertices, int count) {
    std::vector<int> things(static_cast<std::size_t>(count), -1);
    for (int i = static_cast<int>(vertices.size()); i-- > 0;) {
        if (vertices[i] >= 0) things[vertices[i]] = i;
    }
    return things;
}

std::vector<int> translated(const std::vector<int>& vertices, const std::vector<int>& to,
                            const std::vector<int>& things) {
    std::vector<int> partners;
    for (const int vertex : vertices) partners.push_back(vertex < 0 ? -1 : things[to[vertex]]);
    return partners;
}

}  // namespace

Correspondence compareCircuits(const Netlist& first, const Netlist& second, const Likeness& likeness) {
    assert(likeness.tolerance >= 0 && likeness.tolerance < 1);
    const CircuitGraph a = graphOf(first, likeness), b = graphOf(second, likeness);
    const GraphMatch match = matchGraphs(a, b, likeness.tolerance, likeness.effort);
    if (!match.decided) return {Verdict::Undecided, {}, {}};
    if (!match.to) return {};
    return {Verdict::Equal, translated(a.partVertices, *match.to, thingsOf(b.partVertices, b.size())),
            translated(a.netVertices, *match.to, thingsOf(b.netVertices, b.size()))};
}

}  // namespace tiepoint
