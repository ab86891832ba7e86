#include "core/diagram/component.h"

#include "core/diagram/block.h"
#include "core/diagram/channel.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <map>
#include <set>
#include <tuple>

namespace tiepoint {
namespace {

constexpr double kTrack = 3;        // between tracks
constexpr double kChannelEdge = 2;  // between a track and the parts
constexpr double kLeastChannel = 4;
constexpr double kTagChannel = kSheetTagWidthMm + 3;  // so that the volts of a net have room in a row of parts
constexpr double kReturnRoom = 10;                    // over the return wire, for its volts

/// One circuit of the sheet.
class ComponentLayout {
public:
    ComponentLayout(const Netlist& netlist, const DiagramHints& hints, SheetFlow flow, const SheetRanks& ranks,
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

    /// Adds what it draws, from 0,0 on.
    void draw(Diagram& diagram) {
        build();
        orderLayers(graph_);
        if (orderBoxes()) build(true), orderLayers(graph_);
        turnOver();
        placeAcross(graph_);
        stretchSupply();
        low_ = std::numeric_limits<double>::max(), high_ = std::numeric_limits<double>::lowest();
        for (const SheetNode& node : graph_.nodes) {
            low_ = std::min(low_, node.across - node.low);
            high_ = std::max(high_, node.across + node.high);
        }
        route();
        emit(diagram);
    }

    Point size() const { return size_; }

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
        long least = crossingsOf(graph_);
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
        build(true);
        orderLayers(graph_);
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

    /// Channels where nets stand, bands where parts stand; gives every layer its place along.
    void route() {
        const int layers = static_cast<int>(graph_.layers.size());
        channels_.assign(static_cast<std::size_t>(layers), {});
        runs_.assign(static_cast<std::size_t>(layers), {});
        start_.assign(static_cast<std::size_t>(layers) + 1, 0);
        double free = high_ + kTrack;
        for (int layer = 0; layer < layers; ++layer) {
            double thick = 0;
            if (layer % 2 == 0) {
                collectRuns(layer);
                channels_[layer] = routeChannel(runs_[layer], free);
                for (const ChannelBar& bar : channels_[layer].bars) high_ = std::max(high_, bar.high);
                thick = runs_[layer].empty() ? 0 : std::max(kLeastChannel, leastChannel(layer));
                if (channels_[layer].tracks > 0)
                    thick = std::max(thick, 2 * kChannelEdge + kTrack * (channels_[layer].tracks - 1));
            } else {
                double before = 0, after = 0;
                for (const int node : graph_.layers[layer]) {
                    if (graph_.nodes[node].kind != SheetNode::Kind::Part) continue;
                    before = std::max(before, blocks_[graph_.nodes[node].block].before);
                    after = std::max(after, blocks_[graph_.nodes[node].block].after);
                }
                middle_[layer] = start_[layer] + before;
                thick = before + after;
            }
            start_[layer + 1] = start_[layer] + thick;
        }
    }

    /// Rightward, a net in a row of parts needs room for its volts; before and behind everything there is room enough.
    double leastChannel(int layer) const {
        if (flow_ == SheetFlow::Downward) return kTrack;
        const bool inside = layer > 0 && layer + 1 < std::ssize(graph_.layers);
        return inside && channels_[layer].tracks * kTrack < kTagChannel ? kTagChannel : kLeastChannel;
    }

    void collectRuns(int layer) {
        std::map<int, int> runOfNode;
        for (const int node : graph_.layers[layer]) {
            runOfNode[node] = static_cast<int>(runs_[layer].size());
            runs_[layer].push_back({graph_.nodes[node].net, {}, {}});
        }
        for (const SheetEdge& edge : graph_.edges) {
            if (graph_.nodes[edge.to].layer == layer)
                addEnd(runs_[layer][runOfNode[edge.to]].before, graph_.nodes[edge.from].across + edge.fromAcross);
            if (graph_.nodes[edge.from].layer == layer)
                addEnd(runs_[layer][runOfNode[edge.from]].after, graph_.nodes[edge.to].across + edge.toAcross);
        }
        std::erase_if(runs_[layer], [](const ChannelRun& run) { return run.before.empty() && run.after.empty(); });
    }
    static void addEnd(std::vector<double>& ends, double at) {
        if (std::ranges::find(ends, at) == ends.end()) ends.push_back(at);
    }

    Point at(double along, double across) const { return onSheet(flow_, {along, across - low_}); }

    void wire(Diagram& diagram, int net, double alongA, double acrossA, double alongB, double acrossB) const {
        if (alongA == alongB && acrossA == acrossB) return;
        diagram.wires.push_back({net, at(alongA, acrossA), at(alongB, acrossB)});
    }

    void emit(Diagram& diagram) {
        for (std::size_t node = 0; node < graph_.nodes.size(); ++node) {
            if (graph_.nodes[node].kind == SheetNode::Kind::Part) emitBlock(diagram, static_cast<int>(node));
            if (graph_.nodes[node].kind == SheetNode::Kind::Through && graph_.nodes[node].layer % 2 == 1) {
                const int layer = graph_.nodes[node].layer;
                wire(diagram, graph_.nodes[node].net, start_[layer], graph_.nodes[node].across, start_[layer + 1],
                     graph_.nodes[node].across);
            }
        }
        for (std::size_t layer = 0; layer < channels_.size(); layer += 2) emitChannel(diagram, static_cast<int>(layer));
        size_ = onSheet(flow_, {start_.back(), high_ - low_});
    }

    void emitBlock(Diagram& diagram, int node) {
        const SheetNode& placed = graph_.nodes[node];
        const SheetBlock& block = blocks_[placed.block];
        const double along = middle_[placed.layer], across = placed.across;
        const Point origin = at(along, across);
        PlacedPart part{block.part, block.symbol, block.pose, {}, block.leads};
        part.pose.at = origin;
        if (flow_ == SheetFlow::Downward) part.pose.along = !part.pose.along;
        const Point corner = at(along + block.body.left, across + block.body.top);
        const Point extent = onSheet(flow_, {block.body.width, block.body.height});
        part.body = {corner.x, corner.y, extent.x, extent.y};
        for (SheetLead& lead : part.leads) lead.at = at(along + lead.at.x, across + lead.at.y);
        for (const InnerWire& inner : block.inner)
            wire(diagram, inner.net, along + inner.from.x, across + inner.from.y, along + inner.to.x,
                 across + inner.to.y);
        for (const SheetPort& port : block.ports) {
            wire(diagram, port.net, along + port.along, across + port.across,
                 start_[placed.layer + (port.after ? 1 : 0)], across + port.across);
        }
        for (const Point& end : block.openEnds) diagram.openEnds.push_back(at(along + end.x, across + end.y));
        for (SheetWord word : block.words) {
            word.frame.left += origin.x, word.frame.top += origin.y;
            diagram.words.push_back(std::move(word));
        }
        diagram.parts[block.part] = std::move(part);
    }

    void emitChannel(Diagram& diagram, int layer) {
        const RoutedChannel& channel = channels_[layer];
        const double top = start_[layer], bottom = start_[layer + 1];
        const double used = kTrack * std::max(0, channel.tracks - 1);
        const auto trackAlong = [&](int track) { return std::round((top + bottom - used)) / 2 + kTrack * track; };
        std::vector<char> routed(runs_[layer].size());
        for (const ChannelBar& bar : channel.bars) {
            routed[bar.run] = 1;
            const int net = runs_[layer][bar.run].net;
            const double along = trackAlong(bar.track);
            std::set<double> stops(bar.before.begin(), bar.before.end());
            stops.insert(bar.after.begin(), bar.after.end());
            stops.insert(bar.links.begin(), bar.links.end());
            for (auto stop = stops.begin(); std::next(stop) != stops.end(); ++stop)
                wire(diagram, net, along, *stop, along, *std::next(stop));
            for (const double end : bar.before) wire(diagram, net, top, end, along, end);
            for (const double end : bar.after) wire(diagram, net, along, end, bottom, end);
            for (const ChannelBar& other : channel.bars) {
                if (other.run != bar.run || other.track <= bar.track) continue;
                for (const double link : bar.links) wire(diagram, net, along, link, trackAlong(other.track), link);
            }
        }
        for (std::size_t run = 0; run < routed.size(); ++run) {
            const ChannelRun& each = runs_[layer][run];
            if (routed[run] || each.before.empty() || each.after.empty()) continue;
            wire(diagram, each.net, top, each.before[0], bottom, each.after[0]);
        }
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
    std::vector<std::vector<ChannelRun>> runs_;
    std::vector<RoutedChannel> channels_;
    std::vector<double> start_;
    std::map<int, double> middle_;
    double low_ = 0, high_ = 0;
    Point size_;
};

}  // namespace

Point drawComponent(Diagram& diagram, const Netlist& netlist, const DiagramHints& hints, SheetFlow flow,
                    const SheetRanks& ranks, const std::vector<double>& key, int component) {
    ComponentLayout layout(netlist, hints, flow, ranks, key, component);
    layout.draw(diagram);
    return layout.size();
}

}  // namespace tiepoint
