#include "core/diagram/component_graph.h"

#include "core/diagram/block.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <tuple>

namespace tiepoint {
namespace {

constexpr double kReturnRoom = 10;  // over the return wire, for its volts

class GraphMaker {
public:
    GraphMaker(const Netlist& netlist, const DiagramHints& hints, SheetFlow flow, const SheetRanks& ranks,
               const std::vector<double>& key, int component)
        : netlist_(netlist),
          hints_(hints),
          flow_(flow),
          ranks_(ranks),
          key_(key) {
        for (std::size_t part = 0; part < netlist.parts.size(); ++part) {
            if (ranks.component[part] == component) parts_.push_back(static_cast<int>(part));
        }
        std::ranges::sort(parts_, {}, [&](int part) { return key[part]; });
        leadOrder_.resize(netlist.parts.size());
        flip_.resize(netlist.parts.size());
    }

    ComponentGraph run() {
        build();
        orderLayers(graph_);
        if (orderBoxes()) build(true), orderLayers(graph_);
        turnOver();
        placeAcross(graph_);
        stretchSupply();
        stackSupplies();
        return {std::move(blocks_), std::move(graph_)};
    }

private:
    bool isBeside(int part) const { return flow_ == SheetFlow::Rightward && ranks_.supplies[part]; }

    void build(bool again = false) {
        std::vector<std::vector<int>> keptOrder = graph_.layers;
        graph_ = {};
        blocks_.clear();
        nodeOfNet_.assign(netlist_.nets.size(), -1);
        for (const int part : parts_) addPart(part);
        for (std::size_t net = 0; net < netlist_.nets.size(); ++net) {
            if (nodeOfNet_[net] >= 0) continue;
            std::vector<double> keys;
            double tie = 0;  // so that no order depends on how nets are numbered
            for (const SheetBlock& block : blocks_) {
                for (const SheetPort& port : block.ports) {
                    if (port.net != static_cast<int>(net)) continue;
                    keys.push_back(key_[block.part]);
                    constexpr double kLead = 0.01;
                    tie += (key_[block.part] + kLead * port.lead) * static_cast<double>(keys.size());
                }
            }
            if (keys.empty()) continue;
            std::ranges::sort(keys);
            constexpr double kTie = 1e-9;
            nodeOfNet_[net] = addNode({SheetNode::Kind::Net, ranks_.netRank[net], -1, static_cast<int>(net),
                                       keys[(keys.size() - 1) / 2] + kTie * tie, 0, 0, 0});
        }
        for (std::size_t block = 0; block < blocks_.size(); ++block) {
            for (const SheetPort& port : blocks_[block].ports) addChain(static_cast<int>(block), port);
        }
        fillLayers();
        // Nodes are made in the same order again, so that an order found before still names them.
        if (again && keptOrder.size() == graph_.layers.size()) graph_.layers = std::move(keptOrder);
    }

    int addNode(const SheetNode& node) {
        graph_.nodes.push_back(node);
        return static_cast<int>(graph_.nodes.size()) - 1;
    }

    void addPart(int part) {
        const BlockWish wish{flow_,           hints_.style, isBeside(part), flip_[part] != 0, ranks_.isAfter[part],
                             leadOrder_[part]};
        blocks_.push_back(makeBlock(netlist_, part, wish));
        const SheetBlock& block = blocks_.back();
        const bool first = flow_ == SheetFlow::Downward && ranks_.supplies[part];
        addNode({SheetNode::Kind::Part, ranks_.partRank[part], static_cast<int>(blocks_.size()) - 1, -1, key_[part],
                 first ? -1 : 0, block.low, block.high});
    }

    /// From a port through all layers between to its net.
    void addChain(int block, const SheetPort& port) {
        const bool supply = ranks_.supplies[blocks_[block].part] != 0;
        int pin = 0;
        if (supply && flow_ == SheetFlow::Downward) pin = -1;
        if (supply && flow_ == SheetFlow::Rightward && ranks_.isReturn[port.net]) pin = 1;
        const int end = graph_.nodes[nodeOfNet_[port.net]].layer;
        int node = block;  // nodes of parts come first, in the order of the blocks
        double across = port.across;
        int layer = graph_.nodes[node].layer;
        const int step = end > layer ? 1 : -1;
        while (layer != end) {
            layer += step;
            const int next = layer == end ? nodeOfNet_[port.net]
                                          : addNode({SheetNode::Kind::Through, layer, -1, port.net,
                                                     graph_.nodes[block].key, pin, pin > 0 ? kReturnRoom : 0.5, 0.5});
            if (step > 0) {
                graph_.edges.push_back({node, next, across, 0});
            } else {
                graph_.edges.push_back({next, node, 0, across});
            }
            node = next;
            across = 0;
        }
    }

    void fillLayers() {
        int last = 0;
        for (const SheetNode& node : graph_.nodes) last = std::max(last, node.layer);
        graph_.layers.assign(static_cast<std::size_t>(last + 1), {});
        for (std::size_t node = 0; node < graph_.nodes.size(); ++node)
            graph_.layers[graph_.nodes[node].layer].push_back(static_cast<int>(node));
        for (auto& layer : graph_.layers) {
            std::ranges::stable_sort(
                layer, {}, [&](int node) { return std::tuple(graph_.nodes[node].pin, graph_.nodes[node].key); });
        }
    }

    /// Puts the leads of boxes into the order of what they are joined to. Returns whether there is one.
    bool orderBoxes() {
        std::vector<double> place(graph_.nodes.size());
        for (const auto& layer : graph_.layers) {
            for (std::size_t i = 0; i < layer.size(); ++i)
                place[layer[i]] = static_cast<double>(i) / static_cast<double>(layer.size());
        }
        bool any = false;
        for (std::size_t block = 0; block < blocks_.size(); ++block) {
            const SheetBlock& each = blocks_[block];
            if (each.symbol) continue;
            any = true;
            leadOrder_[each.part].assign(netlist_.leads[each.part].size(), 0);
            for (const SheetEdge& edge : graph_.edges) {
                const bool from = edge.from == static_cast<int>(block), to = edge.to == static_cast<int>(block);
                if (!from && !to) continue;
                const double across = from ? edge.fromAcross : edge.toAcross;
                for (const SheetPort& candidate : each.ports) {
                    if (candidate.across == across && candidate.after == from)
                        leadOrder_[each.part][candidate.lead] = place[from ? edge.to : edge.from];
                }
            }
        }
        return any;
    }

    /// Turns symbols with several leads on one side over where that saves crossings.
    void turnOver() {
        const SheetGraph unturned = graph_;
        const long before = crossingsOf(graph_);
        long least = before;
        bool any = false;
        for (std::size_t block = 0; block < blocks_.size() && least > 0; ++block) {
            if (!blocks_[block].symbol || blocks_[block].ports.size() < 3) continue;
            const auto mirror = [&] {
                for (SheetEdge& edge : graph_.edges) {
                    if (edge.from == static_cast<int>(block)) edge.fromAcross = -edge.fromAcross;
                    if (edge.to == static_cast<int>(block)) edge.toAcross = -edge.toAcross;
                }
            };
            mirror();
            if (const long now = crossingsOf(graph_); now < least) {
                least = now;
                flip_[blocks_[block].part] ^= 1;
                any = true;
            } else {
                mirror();
            }
        }
        if (!any) return;
        // Wires that turn round a symbol needn't turn round its mirror image as they did.
        const auto blocks = blocks_;
        build(true);
        orderLayers(graph_);
        if (crossingsOf(graph_) > before) blocks_ = blocks, graph_ = unturned;
    }

    /// One supply, and parts in one row: each net joins two leads.
    bool isLoop() const {
        std::vector<int> leads(netlist_.nets.size());
        int supplies = 0;
        for (const SheetBlock& block : blocks_) {
            supplies += isBeside(block.part);
            if (block.ports.size() != 2) return false;
            for (const SheetPort& port : block.ports) {
                if (port.net < 0) return false;
                ++leads[port.net];
            }
        }
        return supplies == 1 && std::ranges::all_of(leads, [](int count) { return count == 0 || count == 2; });
    }
    /// The wires back of a loop stand below everything else: they may always stand lower.
    void lowerReturn(double by) {
        for (SheetNode& node : graph_.nodes) {
            if (node.pin > 0) node.across += by;
        }
    }

    /// A supply alone in its layer stands in the middle between its two wires and reaches for both, so that they stay straight.
    void stretchSupply() {
        for (std::size_t node = 0; node < blocks_.size(); ++node) {
            SheetBlock& block = blocks_[node];
            SheetNode& placed = graph_.nodes[node];
            if (!isBeside(block.part) || graph_.layers[placed.layer].size() != 1 || block.ports.size() != 2) continue;
            std::array<SheetEdge*, 2> edges{};
            for (SheetEdge& edge : graph_.edges) {
                if (edge.from == static_cast<int>(node)) edges[edge.fromAcross > 0] = &edge;
            }
            if (!edges[0] || !edges[1] || block.ports[0].across * block.ports[1].across >= 0) continue;
            const double low = graph_.nodes[edges[0]->to].across;
            double high = graph_.nodes[edges[1]->to].across;
            const double reach = std::abs(block.ports[0].across - block.ports[1].across);
            if (high < low + reach && graph_.nodes[edges[1]->to].pin > 0 && isLoop()) {
                lowerReturn(low + reach - high);
                high = low + reach;
            }
            if (high - low < reach) continue;
            placed.across = std::round(low + high) / 2;
            block.inner.clear();
            for (SheetPort& port : block.ports) {
                const double end = (port.across < 0 ? low : high) - placed.across;
                for (const SheetLead& lead : block.leads) {
                    if (lead.lead == port.lead) block.inner.push_back({port.net, lead.at, {lead.at.x, end}});
                }
                edges[port.across > 0]->fromAcross = end;
                port.across = end;
            }
        }
    }

    /// Supplies in a row stand one below the other: what joins two neighbours, and nothing else, runs straight from the one to the other.
    void stackSupplies() {
        for (const std::vector<int>& layer : graph_.layers) {
            for (std::size_t i = 1; i < layer.size(); ++i) joinNeighbours(layer[i - 1], layer[i]);
        }
    }
    void joinNeighbours(int above, int below) {
        if (above >= std::ssize(blocks_) || below >= std::ssize(blocks_)) return;
        SheetBlock &upper = blocks_[above], &lower = blocks_[below];
        if (!isBeside(upper.part) || !isBeside(lower.part)) return;
        for (const SheetPort& port : upper.ports) {
            const auto other = std::ranges::find(lower.ports, port.net, &SheetPort::net);
            if (other == lower.ports.end() || usesOf(port.net) != 2 || port.across < 0 || other->across > 0) continue;
            const SheetLead from = leadOf(upper, port.lead), to = leadOf(lower, other->lead);
            if (from.at.x != to.at.x) continue;
            const double down = graph_.nodes[below].across - graph_.nodes[above].across;
            const int net = port.net;
            takePort(above, net);
            takePort(below, net);
            upper.inner.push_back({net, from.at, {to.at.x, to.at.y + down}});
            return;
        }
    }
    int usesOf(int net) const {
        int uses = 0;
        for (const SheetBlock& block : blocks_)
            uses += static_cast<int>(std::ranges::count(block.ports, net, &SheetPort::net));
        return uses;
    }
    static SheetLead leadOf(const SheetBlock& block, int lead) {
        return *std::ranges::find(block.leads, lead, &SheetLead::lead);
    }
    /// Takes a net's only port from a block, with its wires.
    void takePort(int block, int net) {
        std::erase_if(blocks_[block].ports, [&](const SheetPort& port) { return port.net == net; });
        std::erase_if(blocks_[block].inner, [&](const InnerWire& wire) { return wire.net == net; });
        const int end = nodeOfNet_[net];
        std::erase_if(graph_.edges, [&](const SheetEdge& edge) { return edge.from == block && edge.to == end; });
    }

    const Netlist& netlist_;
    const DiagramHints& hints_;
    SheetFlow flow_;
    const SheetRanks& ranks_;
    const std::vector<double>& key_;
    std::vector<int> parts_;
    std::vector<std::vector<double>> leadOrder_;  // by part
    std::vector<char> flip_;                      // by part
    std::vector<SheetBlock> blocks_;
    SheetGraph graph_;
    std::vector<int> nodeOfNet_;
};

}  // namespace

ComponentGraph graphOfComponent(const Netlist& netlist, const DiagramHints& hints, SheetFlow flow,
                                const SheetRanks& ranks, const std::vector<double>& key, int component) {
    return GraphMaker(netlist, hints, flow, ranks, key, component).run();
}

}  // namespace tiepoint
