// Method notes. The layout is that of Sugiyama, Tagawa and Toda (1981): layers (ranks.cpp), few crossings (order.cpp), places along the layers
// (coordinates.cpp, after Brandes and Köpf 2001), and, in the place of their straight lines, orthogonal wires with ports (channel.cpp). A net is
// one bar across the current; from it a plumb wire runs to each lead. So a series is a straight line, parallel parts lie side by side, and
// wires of different nets meet at right angles only. Both flows, rightward and downward, are laid out, and the one that fills the sheet
// better is taken. Circuits that nothing joins are laid out each for itself.

#include "core/bench/natural_order.h"
#include "core/diagram/component.h"
#include "core/diagram/sheet_parts.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace tiepoint {
namespace {

constexpr double kMargin = 4;
constexpr double kBetweenCircuits = 8;

/// By part: its number in the order that the hints want; ids settle ties.
std::vector<double> keysOf(const Netlist& netlist, const DiagramHints& hints) {
    std::vector<int> order(netlist.parts.size());
    std::iota(order.begin(), order.end(), 0);
    const auto wish = [&](int part) {
        return static_cast<std::size_t>(part) < hints.order.size() ? hints.order[part] : 0.0;
    };
    std::ranges::sort(order, [&](int a, int b) {
        return wish(a) != wish(b) ? wish(a) < wish(b) : naturalLess(netlist.parts[a].id, netlist.parts[b].id);
    });
    std::vector<double> keys(order.size());
    for (std::size_t i = 0; i < order.size(); ++i) keys[order[i]] = static_cast<double>(i);
    return keys;
}

Diagram layOutFlow(const Netlist& netlist, const DiagramHints& hints, SheetFlow flow) {
    const std::vector<double> keys = keysOf(netlist, hints);
    const SheetRanks ranks = rankCircuit(netlist, keys, flow == SheetFlow::Rightward);
    Diagram diagram;
    diagram.flow = flow;
    diagram.parts.resize(netlist.parts.size());
    double along = kMargin, breadth = 0, row = kMargin, rowHeight = 0;
    for (int component = 0; component < ranks.components; ++component) {
        Diagram own;
        own.parts.resize(netlist.parts.size());
        const Point size = drawComponent(own, netlist, hints, flow, ranks, keys, component);
        constexpr double kBreadest = 240;
        if (along > kMargin && along + size.x > kBreadest)
            row += rowHeight + kBetweenCircuits, along = kMargin, rowHeight = 0;
        addMoved(diagram, own, {along, row});
        along += size.x + kBetweenCircuits;
        rowHeight = std::max(rowHeight, size.y);
        breadth = std::max(breadth, along);
    }
    diagram.width = std::max(breadth - kBetweenCircuits + kMargin, 2 * kMargin);
    diagram.height = row + rowHeight + kMargin;
    finishSheet(diagram);
    return diagram;
}

double fit(const Diagram& diagram, double ratio) {
    return std::min(ratio / std::max(diagram.width, 1.0), 1 / std::max(diagram.height, 1.0));
}

/// The same with a number for every piece of metal, and without nets that join nothing.
Netlist joinedMetal(const Netlist& netlist) {
    const Terminals terminals = terminalsOf(netlist);
    std::vector<int> uses(netlist.nets.size(), 0);
    for (const int net : terminals.netOf) {
        if (net >= 0) ++uses[net];
    }
    Netlist joined = netlist;
    for (std::size_t part = 0; part < joined.leads.size(); ++part) {
        for (std::size_t lead = 0; lead < joined.leads[part].size(); ++lead) {
            const int net = terminals.netOf[terminals.ofLead[part][lead]];
            joined.leads[part][lead] = net >= 0 && uses[net] > 1 ? net : -1;
        }
    }
    return joined;
}

}  // namespace

Diagram layOutDiagram(const Netlist& whole, const DiagramHints& hints) {
    const Netlist netlist = joinedMetal(whole);
    if (hints.flow) return layOutFlow(netlist, hints, *hints.flow);
    Diagram rightward = layOutFlow(netlist, hints, SheetFlow::Rightward);
    Diagram downward = layOutFlow(netlist, hints, SheetFlow::Downward);
    // Fewer crossings first; then the larger picture.
    constexpr double kCrossing = 0.9;
    const double right = fit(rightward, hints.sheetRatio) * std::pow(kCrossing, rightward.crossings);
    const double down = fit(downward, hints.sheetRatio) * std::pow(kCrossing, downward.crossings);
    return right >= down ? rightward : downward;
}

}  // namespace tiepoint
