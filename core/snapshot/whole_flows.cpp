// Two ways, the second where the first misses the bound.
//
// 1. Loops. A spanning tree takes the largest flows; each edge outside of it closes one loop, whose flow is rounded to the nearest whole
//    number, and edges of the tree are sums of loops. So branches side by side are rounded each for itself, equal ones equally, and
//    where they meet stands what is printed on them, added up. With n branches of the same sign such a sum may be off by n / 2.
// 2. Cycles, where some sum is off by more than one. The edges that aren't whole yet have no end (a node can't have just one of them,
//    since its flows add up to nothing), so they hold a cycle. Pushing flow round it until one of them is whole leaves all others
//    between the same two whole numbers; after at most one push for each edge all are whole. That every network of flows has such a
//    rounding is the integrality theorem of Ford and Fulkerson (Flows in Networks, 1962; from memory).
//
// Both reckon in whole numbers of a fine grain, so that no sum is ever a matter of rounding.

#include "core/snapshot/whole_flows.h"

#include "core/base/disjoint_sets.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <numeric>

namespace tiepoint {
namespace {

using Whole = std::int64_t;
constexpr Whole kGrains = 1 << 16;  ///< of one

Whole nearestWhole(Whole grains) {
    const Whole half = kGrains / 2;
    return grains >= 0 ? (grains + half) / kGrains : -((half - grains) / kGrains);
}

/// A spanning forest of a network, by which flows outside of it decide those inside.
class FlowForest {
public:
    FlowForest(int nodes, std::span<const FlowEdge> edges)
        : edges_(edges),
          inForest_(edges.size(), 0),
          at_(static_cast<std::size_t>(nodes)) {
        growFrom(nodes);
        orderFromRoots(nodes);
    }

    bool has(std::size_t edge) const { return inForest_[edge] != 0; }

    /// Sets the flows inside so that every node is balanced.
    void complete(std::vector<Whole>& flows) const {
        std::vector<Whole> leaving(at_.size(), 0);
        for (std::size_t e = 0; e < edges_.size(); ++e) {
            if (inForest_[e]) continue;
            leaving[edges_[e].from] += flows[e];
            leaving[edges_[e].to] -= flows[e];
        }
        for (auto node = order_.rbegin(); node != order_.rend(); ++node) {
            const int edge = toParent_[*node];
            if (edge < 0) continue;
            const bool outwards = edges_[edge].from == *node;  // what leaves otherwise has to come from the parent
            flows[edge] = outwards ? -leaving[*node] : leaving[*node];
            leaving[outwards ? edges_[edge].to : edges_[edge].from] += leaving[*node];
        }
    }

private:
    /// The largest flows first; of equal ones the first.
    void growFrom(int nodes) {
        std::vector<std::pair<Whole, int>> order;
        for (std::size_t e = 0; e < edges_.size(); ++e)
            order.emplace_back(-std::llround(std::abs(edges_[e].flow) * kGrains), static_cast<int>(e));
        std::ranges::sort(order);
        DisjointSets trees(static_cast<std::size_t>(nodes));
        for (const auto& [flow, e] : order) {
            if (!trees.join(edges_[e].from, edges_[e].to)) continue;
            inForest_[e] = 1;
            at_[edges_[e].from].push_back(e);
            at_[edges_[e].to].push_back(e);
        }
    }

    void orderFromRoots(int nodes) {
        toParent_.assign(at_.size(), -1);
        std::vector<char> seen(at_.size(), 0);
        for (int root = 0; root < nodes; ++root) {
            if (seen[root]) continue;
            seen[root] = 1;
            order_.push_back(root);
            for (std::size_t next = order_.size() - 1; next < order_.size(); ++next) {
                const int node = order_[next];
                for (const int edge : at_[node]) {
                    const int other = edges_[edge].from == node ? edges_[edge].to : edges_[edge].from;
                    if (seen[other]) continue;
                    seen[other] = 1;
                    toParent_[other] = edge;
                    order_.push_back(other);
                }
            }
        }
    }

    std::span<const FlowEdge> edges_;
    std::vector<char> inForest_;
    std::vector<std::vector<int>> at_;  ///< by node: edges of the forest
    std::vector<int> order_;            ///< nodes, parents first
    std::vector<int> toParent_;         ///< by node: edge, or -1 at roots
};

/// Makes balanced flows whole, cycle by cycle.
class CycleRounding {
public:
    CycleRounding(int nodes, std::span<const FlowEdge> edges, std::vector<Whole>& grains)
        : edges_(edges),
          grains_(grains),
          at_(static_cast<std::size_t>(nodes)),
          stepOf_(static_cast<std::size_t>(nodes), -1) {
        for (int e = 0; e < static_cast<int>(edges.size()); ++e) {
            if (edges[e].from == edges[e].to) {
                grains_[e] = nearestWhole(grains_[e]) * kGrains;
                continue;
            }
            at_[edges[e].from].push_back(e);
            at_[edges[e].to].push_back(e);
        }
    }

    void run() {
        for (int start = 0; start < static_cast<int>(at_.size()); ++start) {
            while (partOf(start, -1) >= 0) followFrom(start);
        }
    }

private:
    struct Step {
        int node, edge;
    };

    /// How far above the whole number below it.
    Whole over(int edge) const { return ((grains_[edge] % kGrains) + kGrains) % kGrains; }

    /// An edge at a node that isn't whole, other than the one that led there; -1 without one.
    int partOf(int node, int but) {
        std::erase_if(at_[node], [this](int edge) { return over(edge) == 0; });
        const auto found = std::ranges::find_if(at_[node], [but](int edge) { return edge != but; });
        return found == at_[node].end() ? -1 : *found;
    }

    /// Walks until a node comes up again, and pushes round that cycle.
    void followFrom(int start) {
        std::vector<Step> path;
        int node = start, last = -1;
        while (stepOf_[node] < 0) {
            const int edge = partOf(node, last);
            stepOf_[node] = static_cast<int>(path.size());
            path.push_back({node, edge});
            node = edges_[edge].from == node ? edges_[edge].to : edges_[edge].from;
            last = edge;
        }
        push(std::span(path).subspan(static_cast<std::size_t>(stepOf_[node])));
        for (const Step& step : path) stepOf_[step.node] = -1;
    }

    void push(std::span<const Step> cycle) {
        Whole with = kGrains, against = kGrains;  // room either way until an edge is whole
        for (const auto& [node, edge] : cycle) {
            const bool along = edges_[edge].from == node;
            with = std::min(with, along ? kGrains - over(edge) : over(edge));
            against = std::min(against, along ? over(edge) : kGrains - over(edge));
        }
        const Whole amount = with <= against ? with : -against;
        for (const auto& [node, edge] : cycle) grains_[edge] += edges_[edge].from == node ? amount : -amount;
    }

    std::span<const FlowEdge> edges_;
    std::vector<Whole>& grains_;
    std::vector<std::vector<int>> at_;  ///< by node: edges that may not be whole yet
    std::vector<int> stepOf_;           ///< by node: its place on the path, or -1
};

}  // namespace

std::vector<std::int64_t> wholeFlows(int nodes, std::span<const FlowEdge> edges) {
    const FlowForest forest(nodes, edges);
    std::vector<Whole> grains(edges.size(), 0), whole(edges.size(), 0);
    for (std::size_t e = 0; e < edges.size(); ++e) {
        if (!forest.has(e)) grains[e] = std::llround(edges[e].flow * kGrains);
    }
    forest.complete(grains);
    for (std::size_t e = 0; e < edges.size(); ++e) {
        if (!forest.has(e)) whole[e] = nearestWhole(grains[e]);
    }
    forest.complete(whole);
    const auto misses = [&](std::size_t e) { return std::abs(whole[e] * kGrains - grains[e]) > kGrains; };
    bool far = false;
    for (std::size_t e = 0; e < edges.size(); ++e) far = far || misses(e);
    if (!far) return whole;
    CycleRounding(nodes, edges, grains).run();
    std::ranges::transform(grains, whole.begin(), [](Whole each) { return each / kGrains; });
    return whole;
}

}  // namespace tiepoint
