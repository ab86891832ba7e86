#include "ui/sheet/glide.h"

#include <cmath>
#include <map>
#include <set>

namespace tiepoint::ui {
namespace {

/// Leads of parts by their ids: what a net is, whatever it is called.
using JoinedLeads = std::set<std::pair<std::string, int>>;

std::map<JoinedLeads, int> netsByLeads(const Netlist& netlist) {
    std::vector<JoinedLeads> joined(netlist.nets.size());
    for (std::size_t part = 0; part < netlist.parts.size(); ++part) {
        for (std::size_t lead = 0; lead < netlist.leads[part].size(); ++lead) {
            if (const int net = netlist.leads[part][lead]; net >= 0)
                joined[static_cast<std::size_t>(net)].emplace(netlist.parts[part].id, static_cast<int>(lead));
        }
    }
    std::map<JoinedLeads, int> nets;
    for (std::size_t net = 0; net < joined.size(); ++net) nets.emplace(std::move(joined[net]), static_cast<int>(net));
    return nets;
}

std::map<int, std::vector<int>> wiresByNet(const Diagram& diagram) {
    std::map<int, std::vector<int>> wires;
    for (std::size_t i = 0; i < diagram.wires.size(); ++i) wires[diagram.wires[i].net].push_back(static_cast<int>(i));
    return wires;
}

bool runsLevel(const SheetWire& wire) { return std::abs(wire.from.x - wire.to.x) > std::abs(wire.from.y - wire.to.y); }

Point between(Point before, Point now, double share) { return before * (1 - share) + now * share; }

/// Moves the wires of the nets that are drawn alike on both.
void moveWires(const BenchDiagram& before, const BenchDiagram& now, double share, SheetBetween& result,
               Diagram& diagram) {
    result.isNew.assign(now.diagram.wires.size(), 1);
    const auto oldNets = netsByLeads(before.netlist), newNets = netsByLeads(now.netlist);
    const auto oldWires = wiresByNet(before.diagram), newWires = wiresByNet(now.diagram);
    for (const auto& [leads, net] : newNets) {
        const auto old = oldNets.find(leads);
        if (old == oldNets.end() || !oldWires.contains(old->second) || !newWires.contains(net)) continue;
        const std::vector<int>&from = oldWires.at(old->second), &to = newWires.at(net);
        bool alike = from.size() == to.size();
        for (std::size_t i = 0; alike && i < to.size(); ++i)
            alike = runsLevel(before.diagram.wires[static_cast<std::size_t>(from[i])]) ==
                    runsLevel(now.diagram.wires[static_cast<std::size_t>(to[i])]);
        for (std::size_t i = 0; alike && i < to.size(); ++i) {
            const SheetWire& was = before.diagram.wires[static_cast<std::size_t>(from[i])];
            SheetWire& wire = diagram.wires[static_cast<std::size_t>(to[i])];
            wire.from = between(was.from, wire.from, share);
            wire.to = between(was.to, wire.to, share);
            result.isNew[static_cast<std::size_t>(to[i])] = 0;
        }
    }
}

}  // namespace

SheetBetween betweenSheets(const BenchDiagram& before, const BenchDiagram& now, double share) {
    SheetBetween result;
    auto moving = std::make_shared<BenchDiagram>(now);
    std::vector<Point> offs(now.diagram.parts.size());
    for (std::size_t i = 0; i < offs.size(); ++i) {
        PlacedPart& part = moving->diagram.parts[i];
        const int old = before.netlist.partIndex(now.netlist.parts[i].id);
        if (old < 0) continue;
        const Point off = (before.diagram.parts[static_cast<std::size_t>(old)].pose.at - part.pose.at) * (1 - share);
        offs[i] = off;
        part.pose.at = part.pose.at + off;
        part.body.left += off.x, part.body.top += off.y;
        for (SheetLead& lead : part.leads) lead.at = lead.at + off;
    }
    for (SheetWord& word : moving->diagram.words) {
        word.frame.left += offs[static_cast<std::size_t>(word.part)].x;
        word.frame.top += offs[static_cast<std::size_t>(word.part)].y;
    }
    moving->diagram.width = before.diagram.width * (1 - share) + now.diagram.width * share;
    moving->diagram.height = before.diagram.height * (1 - share) + now.diagram.height * share;
    moveWires(before, now, share, result, moving->diagram);
    result.sheet = std::move(moving);
    return result;
}

}  // namespace tiepoint::ui
