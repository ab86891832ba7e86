// Method notes. After Brandes and Köpf, "Fast and simple horizontal coordinate assignment" (GD 2001, LNCS 2265, 31-44): each node is aligned
// with a median neighbour, four times (down or up, left or right), conflicts with wires that pass layers are decided for the wires, and
// each alignment is compacted. Two changes. Nodes are as broad as their words and wires end at ports, so a block keeps its ports in line
// and its members shifted (as Rüegg, Schulze, Carstens and von Hanxleden, GD 2015, from memory). And of the four layouts the one with the
// fewest bends is taken instead of their mean, which would bend all: an orthogonal wire is straight or it isn't. Blocks then move as far as
// their neighbours let them towards the median of what they are joined to.

#include "core/diagram/sheet_graph.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>
#include <set>

namespace tiepoint {
namespace {

constexpr double kGap = 2;     // between neighbours, with what they reach
constexpr double kBend = 12;   // what a bend costs, in millimetres of wire
constexpr double kNetGap = 4;  // between nets of one layer

struct Neighbour {
    int node, edge;
    double here, there;  // ports
};

class Placement {
public:
    explicit Placement(SheetGraph& graph) : graph_(graph), up_(size()), down_(size()), place_(size()) {
        for (const auto& layer : graph.layers) {
            for (std::size_t i = 0; i < layer.size(); ++i) place_[layer[i]] = static_cast<int>(i);
        }
        for (std::size_t edge = 0; edge < graph.edges.size(); ++edge) {
            const SheetEdge& each = graph.edges[edge];
            down_[each.from].push_back({each.to, static_cast<int>(edge), each.fromAcross, each.toAcross});
            up_[each.to].push_back({each.from, static_cast<int>(edge), each.toAcross, each.fromAcross});
        }
        for (auto* side : {&up_, &down_}) {
            for (auto& list : *side) {
                std::ranges::sort(list, {},
                                  [&](const Neighbour& n) { return std::tuple(place_[n.node], n.there, n.here); });
            }
        }
        markConflicts();
    }

    void run() {
        double least = std::numeric_limits<double>::max();
        std::vector<double> best(size());
        for (const bool downwards : {true, false}) {
            for (const bool rightwards : {true, false}) {
                align(downwards, rightwards);
                compact();
                relax();
                const double cost = costOf();
                if (cost < least) least = cost, best = across_;
            }
        }
        const double lowest = size() ? *std::ranges::min_element(best) : 0;
        for (std::size_t i = 0; i < size(); ++i) graph_.nodes[i].across = std::round((best[i] - lowest) * 2) / 2;
    }

private:
    std::size_t size() const { return graph_.nodes.size(); }
    double separation(int first, int second) const {
        const SheetNode &a = graph_.nodes[first], &b = graph_.nodes[second];
        return a.kind == SheetNode::Kind::Net && b.kind == SheetNode::Kind::Net ? kNetGap : a.high + kGap + b.low;
    }
    bool passes(int node) const { return graph_.nodes[node].kind == SheetNode::Kind::Through; }

    /// Edges that cross one between two nodes that only pass: the latter stays straight.
    void markConflicts() {
        marked_.assign(graph_.edges.size(), 0);
        for (std::size_t layer = 0; layer + 1 < graph_.layers.size(); ++layer) {
            std::vector<int> all;
            for (const int node : graph_.layers[layer]) {
                for (const Neighbour& n : down_[node]) all.push_back(n.edge);
            }
            for (const int inner : all) {
                const SheetEdge& a = graph_.edges[inner];
                if (!passes(a.from) || !passes(a.to)) continue;
                for (const int other : all) {
                    const SheetEdge& b = graph_.edges[other];
                    if (passes(b.from) && passes(b.to)) continue;
                    if ((place_[a.from] - place_[b.from]) * (place_[a.to] - place_[b.to]) < 0) marked_[other] = 1;
                }
            }
        }
    }

    void align(bool downwards, bool rightwards) {
        root_.resize(size());
        std::iota(root_.begin(), root_.end(), 0);
        next_ = root_;
        shift_.assign(size(), 0);
        const int layers = static_cast<int>(graph_.layers.size());
        for (int step = 1; step < layers; ++step) {
            const int layer = downwards ? step : layers - 1 - step;
            std::vector<int> nodes = graph_.layers[layer];
            if (!rightwards) std::ranges::reverse(nodes);
            int reached = rightwards ? -1 : std::numeric_limits<int>::max();
            for (const int node : nodes) alignNode(node, downwards ? up_[node] : down_[node], rightwards, reached);
        }
    }

    void alignNode(int node, const std::vector<Neighbour>& list, bool rightwards, int& reached) {
        if (list.empty()) return;
        const std::size_t low = (list.size() - 1) / 2, high = list.size() / 2;
        for (const std::size_t middle : rightwards ? std::array{low, high} : std::array{high, low}) {
            const Neighbour& n = list[middle];
            const int at = place_[n.node];
            if (next_[node] != node || marked_[n.edge] || (rightwards ? reached >= at : reached <= at)) continue;
            next_[n.node] = node;
            root_[node] = root_[n.node];
            shift_[node] = shift_[n.node] + n.there - n.here;
            next_[node] = root_[node];
            reached = at;
        }
    }

    /// Blocks as far to the start as their order lets them.
    void compact() {
        block_.assign(size(), 0);
        std::vector<std::vector<std::pair<int, double>>> behind(size());
        std::vector<int> open(size(), 0);
        for (const auto& layer : graph_.layers) {
            for (std::size_t i = 1; i < layer.size(); ++i) {
                const int a = layer[i - 1], b = layer[i];
                behind[root_[a]].emplace_back(root_[b], shift_[a] + separation(a, b) - shift_[b]);
                ++open[root_[b]];
            }
        }
        std::vector<int> ready;
        order_.clear();
        for (std::size_t node = 0; node < size(); ++node) {
            if (root_[node] == static_cast<int>(node) && open[node] == 0) ready.push_back(static_cast<int>(node));
        }
        while (!ready.empty()) {
            const int block = ready.back();
            ready.pop_back();
            order_.push_back(block);
            for (const auto& [other, apart] : behind[block]) {
                block_[other] = std::max(block_[other], block_[block] + apart);
                if (--open[other] == 0) ready.push_back(other);
            }
        }
        members_.assign(size(), {});
        for (std::size_t node = 0; node < size(); ++node) members_[root_[node]].push_back(static_cast<int>(node));
        spread();
    }

    void spread() {
        across_.resize(size());
        for (std::size_t node = 0; node < size(); ++node) across_[node] = block_[root_[node]] + shift_[node];
    }

    void relax() {
        constexpr int kRounds = 8;
        for (int round = 0; round < kRounds; ++round) {
            if (round % 2 == 0) {
                for (auto block = order_.rbegin(); block != order_.rend(); ++block) relaxBlock(*block);
            } else {
                for (const int block : order_) relaxBlock(block);
            }
        }
    }

    void relaxBlock(int block) {
        double low = -1e9, high = 1e9;
        std::vector<double> wishes;
        for (const int node : members_[block]) {
            const auto& layer = graph_.layers[graph_.nodes[node].layer];
            const int at = place_[node];
            if (at > 0) low = std::max(low, across_[layer[at - 1]] + separation(layer[at - 1], node) - shift_[node]);
            if (at + 1 < std::ssize(layer))
                high = std::min(high, across_[layer[at + 1]] - separation(node, layer[at + 1]) - shift_[node]);
            for (const auto* list : {&up_[node], &down_[node]}) {
                for (const Neighbour& n : *list) {
                    if (root_[n.node] != block) wishes.push_back(across_[n.node] + n.there - n.here - shift_[node]);
                }
            }
        }
        if (wishes.empty() || low > high) return;
        block_[block] = bestOf(wishes, low, high);
        for (const int node : members_[block]) across_[node] = block_[block] + shift_[node];
    }

    /// The place that costs least of those that are wished for: as few bends and as short ways as can be. The median where several do.
    static double bestOf(std::vector<double>& wishes, double low, double high) {
        std::ranges::sort(wishes);
        const auto whole = [&](double wish) { return std::clamp(std::round(wish * 2) / 2, low, high); };
        double best = whole(wishes[(wishes.size() - 1) / 2]);
        const auto cost = [&](double at) {
            double sum = 0;
            for (const double wish : wishes) sum += std::abs(at - wish) + (std::abs(at - wish) > 0.1 ? kBend : 0);
            return sum;
        };
        double least = cost(best);
        for (const double wish : wishes) {
            const double at = whole(wish), now = cost(at);
            if (now < least - 1e-9) least = now, best = at;
        }
        return best;
    }

    double costOf() const {
        constexpr double kBreadth = 2;
        double cost = 0, low = 1e9, high = -1e9;
        for (const SheetEdge& edge : graph_.edges) {
            const double off = std::abs(across_[edge.from] + edge.fromAcross - across_[edge.to] - edge.toAcross);
            cost += off + (off > 0.1 ? kBend : 0);
        }
        for (std::size_t node = 0; node < size(); ++node) {
            low = std::min(low, across_[node] - graph_.nodes[node].low);
            high = std::max(high, across_[node] + graph_.nodes[node].high);
        }
        return cost + kBreadth * (high - low);
    }

    SheetGraph& graph_;
    std::vector<std::vector<Neighbour>> up_, down_;
    std::vector<int> place_;
    std::vector<char> marked_;
    std::vector<int> root_, next_, order_;
    std::vector<double> shift_, block_, across_;  // by node; block_ by root
    std::vector<std::vector<int>> members_;
};

}  // namespace

void placeAcross(SheetGraph& graph) { Placement(graph).run(); }

}  // namespace tiepoint
