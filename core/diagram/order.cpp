// Method notes. Step II of Sugiyama, Tagawa and Toda (1981): sweeps by barycentre, down and up, each order kept only where it has fewer
// crossings than the best so far, so that ties stay as the hints (the strips) want them. Then sifting: a node, and a chain of nodes without a
// branch, is tried at every place of its layers and stays at the best (Matuszewski, Schönfeld and Molitor, "Using sifting for k-layer
// straightline crossing minimization", GD 1999, from memory). On small circuits the result is compared with all orders in the tests.
// Tried and left: medians (more crossings at ports), more than a dozen beginnings (no gain on small circuits).

#include "core/base/stopping.h"
#include "core/diagram/sheet_graph.h"

#include <algorithm>
#include <cstdint>
#include <numeric>
#include <tuple>

namespace tiepoint {
namespace {

/// An end of an edge along its layer, for comparisons.
struct EdgeEnd {
    int node;
    double port;
};

class LayerOrder {
public:
    explicit LayerOrder(SheetGraph& graph) : graph_(graph), up_(graph.nodes.size()), down_(graph.nodes.size()) {
        for (std::size_t edge = 0; edge < graph.edges.size(); ++edge) {
            down_[graph.edges[edge].from].push_back(static_cast<int>(edge));
            up_[graph.edges[edge].to].push_back(static_cast<int>(edge));
        }
        place_.resize(graph.nodes.size());
        number();
    }

    void run() {
        improve();
        std::vector<std::vector<int>> best = graph_.layers;
        long least = crossingsOf(graph_);
        // From other beginnings too, as many as small sheets can afford.
        constexpr std::size_t kWork = 1500;
        const std::size_t starts = std::min<std::size_t>(12, kWork / (graph_.edges.size() + 1));
        std::uint32_t random = 1;
        for (std::size_t start = 0; start < starts && least > 0; ++start) {
            shuffle(random);
            improve();
            if (const long now = crossingsOf(graph_); now < least) least = now, best = graph_.layers;
        }
        graph_.layers = std::move(best);
        number();
    }

private:
    void shuffle(std::uint32_t& random) {
        for (std::vector<int>& layer : graph_.layers) {
            for (std::size_t i = layer.size(); i > 1; --i) {
                random = random * 1664525u + 1013904223u;
                const std::size_t other = (random >> 16) % i;
                if (graph_.nodes[layer[i - 1]].pin == 0 && graph_.nodes[layer[other]].pin == 0)
                    std::swap(layer[i - 1], layer[other]);
            }
        }
        number();
    }

    void improve() {
        constexpr int kSweeps = 12;
        std::vector<std::vector<int>> best = graph_.layers;
        long least = crossingsOf(graph_);
        for (int sweep = 0; sweep < kSweeps && least > 0; ++sweep) {
            stopIfAsked();
            sweepOnce(sweep % 2 == 0);
            const long now = crossingsOf(graph_);
            if (now < least) least = now, best = graph_.layers;
        }
        graph_.layers = std::move(best);
        number();
        constexpr int kRounds = 6;
        for (int round = 0; round < kRounds && least > 0; ++round) {
            stopIfAsked();
            const long before = least;
            siftChains(least);
            siftNodes(least);
            if (least == before) break;
        }
    }

    void number() {
        for (const auto& layer : graph_.layers) {
            for (std::size_t i = 0; i < layer.size(); ++i) place_[layer[i]] = static_cast<int>(i);
        }
    }

    void sweepOnce(bool downwards) {
        const int count = static_cast<int>(graph_.layers.size());
        for (int step = 1; step < count; ++step) {
            const int layer = downwards ? step : count - 1 - step;
            std::vector<int>& nodes = graph_.layers[layer];
            std::vector<std::pair<double, int>> wished;
            for (const int node : nodes) wished.emplace_back(centre(node, downwards), node);
            std::ranges::stable_sort(wished, [&](const auto& a, const auto& b) {
                const int pinA = graph_.nodes[a.second].pin, pinB = graph_.nodes[b.second].pin;
                return pinA != pinB ? pinA < pinB : pinA == 0 && a.first < b.first;
            });
            for (std::size_t i = 0; i < nodes.size(); ++i) {
                nodes[i] = wished[i].second;
                place_[nodes[i]] = static_cast<int>(i);
            }
        }
    }

    double centre(int node, bool downwards) const {
        const auto& edges = downwards ? up_[node] : down_[node];
        if (edges.empty()) return place_[node];
        double sum = 0;
        for (const int edge : edges) {
            const SheetEdge& each = graph_.edges[edge];
            constexpr double kPortShare = 1e-3;
            sum += downwards ? place_[each.from] + kPortShare * each.fromAcross
                             : place_[each.to] + kPortShare * each.toAcross;
        }
        return sum / static_cast<double>(edges.size());
    }

    /// Crossings of the edges of two nodes of one layer if the first stands before the second.
    long between(int first, int second) const {
        long crossings = 0;
        for (const int a : down_[first]) {
            for (const int b : down_[second]) {
                const SheetEdge &one = graph_.edges[a], &other = graph_.edges[b];
                crossings += isBefore(other.to, other.toAcross, one.to, one.toAcross);
            }
        }
        for (const int a : up_[first]) {
            for (const int b : up_[second]) {
                const SheetEdge &one = graph_.edges[a], &other = graph_.edges[b];
                crossings += isBefore(other.from, other.fromAcross, one.from, one.fromAcross);
            }
        }
        return crossings;
    }
    bool isBefore(int nodeA, double portA, int nodeB, double portB) const {
        return nodeA == nodeB ? portA < portB : place_[nodeA] < place_[nodeB];
    }

    void siftNodes(long& least) {
        for (std::vector<int>& layer : graph_.layers) {
            const std::vector<int> nodes = layer;
            for (const int node : nodes) {
                if (graph_.nodes[node].pin == 0) least += siftNode(layer, node);
            }
        }
    }

    /// Moves the node to its best place; returns the change of crossings.
    long siftNode(std::vector<int>& layer, int node) {
        const int at = place_[node];
        long change = 0, best = 0;
        int where = at;
        for (int i = at - 1; i >= 0 && graph_.nodes[layer[i]].pin == 0; --i) {
            change += between(node, layer[i]) - between(layer[i], node);
            if (change < best) best = change, where = i;
        }
        change = 0;
        for (int i = at + 1; i < std::ssize(layer) && graph_.nodes[layer[i]].pin == 0; ++i) {
            change += between(layer[i], node) - between(node, layer[i]);
            if (change < best) best = change, where = i;
        }
        if (where != at) moveTo(layer, at, where);
        return best;
    }

    void moveTo(std::vector<int>& layer, int from, int to) {
        if (from < to) std::rotate(layer.begin() + from, layer.begin() + from + 1, layer.begin() + to + 1);
        if (from > to) std::rotate(layer.begin() + to, layer.begin() + from, layer.begin() + from + 1);
        for (std::size_t i = 0; i < layer.size(); ++i) place_[layer[i]] = static_cast<int>(i);
    }

    /// Chains without a branch: nodes with at most one edge on either side, joined.
    std::vector<std::vector<int>> chains() const {
        std::vector<std::vector<int>> chains;
        std::vector<char> taken(graph_.nodes.size());
        const auto isLink = [&](int node) {
            return graph_.nodes[node].pin == 0 && up_[node].size() <= 1 && down_[node].size() <= 1;
        };
        for (std::size_t start = 0; start < graph_.nodes.size(); ++start) {
            int node = static_cast<int>(start);
            if (!isLink(node) || taken[node]) continue;
            while (!up_[node].empty() && isLink(graph_.edges[up_[node][0]].from))
                node = graph_.edges[up_[node][0]].from;
            std::vector<int> chain;
            for (;;) {
                taken[node] = 1;
                chain.push_back(node);
                if (down_[node].empty() || !isLink(graph_.edges[down_[node][0]].to)) break;
                node = graph_.edges[down_[node][0]].to;
            }
            if (chain.size() > 1) chains.push_back(std::move(chain));
        }
        return chains;
    }

    /// Each chain as a whole before and behind each other thing of its first layer.
    void siftChains(long& least) {
        // A trial counts all crossings anew: on large sheets there are fewer of them.
        constexpr std::size_t kMostSteps = 60000;
        const std::size_t mostTrials = kMostSteps / (graph_.edges.size() + 1);
        std::size_t trials = 0;
        for (const std::vector<int>& chain : chains()) {
            const int length = static_cast<int>(graph_.layers[graph_.nodes[chain[0]].layer].size());
            std::vector<std::vector<int>> best;
            for (int to = 0; to < length && trials < mostTrials; ++to, ++trials) {
                const std::vector<std::vector<int>> kept = graph_.layers;
                moveChain(chain, to);
                const long now = pinsHold() ? crossingsOf(graph_) : least;
                if (now < least) least = now, best = graph_.layers;
                graph_.layers = kept;
                number();
            }
            if (!best.empty()) graph_.layers = std::move(best), number();
        }
    }

    void moveChain(const std::vector<int>& chain, int to) {
        int beside = -1;
        for (const int node : chain) {
            std::vector<int>& layer = graph_.layers[graph_.nodes[node].layer];
            int where = to;
            if (beside >= 0 || node != chain[0]) {
                // Behind what follows the same neighbour in this layer, as the first of the chain stands.
                where = 0;
                for (std::size_t i = 0; i < layer.size(); ++i) {
                    if (layer[i] != node && centre(layer[i], true) <= centre(node, true)) ++where;
                }
                where = std::min<int>(where, static_cast<int>(layer.size()) - 1);
            }
            moveTo(layer, place_[node], where);
            beside = node;
        }
    }

    bool pinsHold() const {
        return std::ranges::all_of(graph_.layers, [&](const std::vector<int>& layer) {
            return std::ranges::is_sorted(layer, {}, [&](int node) { return graph_.nodes[node].pin; });
        });
    }

    SheetGraph& graph_;
    std::vector<std::vector<int>> up_, down_;
    std::vector<int> place_;
};

}  // namespace

long crossingsOf(const SheetGraph& graph) {
    std::vector<int> place(graph.nodes.size());
    for (const auto& layer : graph.layers) {
        for (std::size_t i = 0; i < layer.size(); ++i) place[layer[i]] = static_cast<int>(i);
    }
    std::vector<int> edges(graph.edges.size());
    std::iota(edges.begin(), edges.end(), 0);
    const auto start = [&](int edge) {
        const SheetEdge& each = graph.edges[edge];
        return std::pair(place[each.from], each.fromAcross);
    };
    const auto end = [&](int edge) {
        const SheetEdge& each = graph.edges[edge];
        return std::pair(place[each.to], each.toAcross);
    };
    std::ranges::sort(edges, {}, [&](int edge) {
        return std::tuple(graph.nodes[graph.edges[edge].from].layer, start(edge), end(edge));
    });
    // Inversions among edges of one gap, by insertion into a sorted list.
    long crossings = 0;
    std::vector<std::pair<int, double>> seen;
    int gap = -1;
    for (std::size_t i = 0; i < edges.size();) {
        const int layer = graph.nodes[graph.edges[edges[i]].from].layer;
        if (layer != gap) gap = layer, seen.clear();
        // Edges from the same port don't cross each other.
        std::size_t same = i;
        while (same < edges.size() && graph.nodes[graph.edges[edges[same]].from].layer == layer &&
               start(edges[same]) == start(edges[i]))
            ++same;
        for (std::size_t k = i; k < same; ++k)
            crossings += seen.end() - std::upper_bound(seen.begin(), seen.end(), end(edges[k]));
        for (std::size_t k = i; k < same; ++k)
            seen.insert(std::upper_bound(seen.begin(), seen.end(), end(edges[k])), end(edges[k]));
        i = same;
    }
    return crossings;
}

void orderLayers(SheetGraph& graph) { LayerOrder(graph).run(); }

}  // namespace tiepoint
