#include "core/diagram/component.h"

#include "core/diagram/block.h"
#include "core/diagram/channel.h"
#include "core/diagram/component_graph.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <set>

namespace tiepoint {
namespace {

constexpr double kTrack = 3;        // between tracks
constexpr double kChannelEdge = 2;  // between a track and the parts
constexpr double kLeastChannel = 4;
constexpr double kTagChannel = kSheetTagWidthMm + 3;  // so that the volts of a net have room in a row of parts

/// Gives the layers of a circuit their places along the current, routes the wires between them and draws all of it.
class ComponentDrawing {
public:
    ComponentDrawing(ComponentGraph component, SheetFlow flow)
        : blocks_(std::move(component.blocks)),
          graph_(std::move(component.graph)),
          flow_(flow) {}

    /// Adds what it draws, from 0,0 on.
    void draw(Diagram& diagram) {
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

    std::vector<SheetBlock> blocks_;
    SheetGraph graph_;
    SheetFlow flow_;
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
    ComponentDrawing drawing(graphOfComponent(netlist, hints, flow, ranks, key, component), flow);
    drawing.draw(diagram);
    return drawing.size();
}

}  // namespace tiepoint
