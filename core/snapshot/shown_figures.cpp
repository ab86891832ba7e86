#include "core/snapshot/shown_figures.h"

#include "core/base/disjoint_sets.h"
#include "core/base/display.h"
#include "core/snapshot/readings.h"
#include "core/snapshot/snapshot.h"
#include "core/snapshot/whole_flows.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <optional>
#include <span>
#include <string_view>

namespace tiepoint {
namespace {

constexpr int kAnyDigit = -99;

/// The largest magnitude; 0 of none.
double largestOf(std::span<const double> values) {
    double largest = 0;
    for (const double value : values)
        if (!std::isnan(value)) largest = std::max(largest, std::abs(value));
    return largest;
}

/// The smallest current that is worth a word; 0 without one.
double smallestCurrent(std::span<const double> amperes) {
    double smallest = 0;
    for (const double ampere : amperes) {
        const double size = std::abs(ampere);
        if (size > kNoCurrentAmpere && (smallest == 0 || size < smallest)) smallest = size;
    }
    return smallest;
}

/// The smallest power that isn't next to nothing beside the largest, such as that of a contact; 0 without one.
double smallestPower(std::span<const double> watts) {
    constexpr double kWorthShare = 0.01;
    const double largest = largestOf(watts);
    double smallest = largest;
    for (const double watt : watts)
        if (std::abs(watt) >= kWorthShare * largest) smallest = std::min(smallest, std::abs(watt));
    return smallest;
}

/// The finest digit that meters of a quantity show, where they show any; not finer than a power of ten. So a meter and a card have one figure.
std::optional<int> metersDigit(const Snapshot& snapshot, std::string_view quantity, std::span<const MeterRange> ranges,
                               int notFiner) {
    std::optional<int> finest;
    for (const ElementState element : snapshot.solution.elements()) {
        const ElementSpec& spec = snapshot.layout->bench->parts[element.part].kind->model[element.spec];
        if (!element.closed || spec.reads != quantity || element.currentAmpere == 0) continue;
        const double figure = quantity == "voltage" ? element.powerWatt / element.currentAmpere : element.currentAmpere;
        const auto digit = lastDigit(ranges, figure);
        if (!digit) continue;
        const int shown = std::max(*digit, notFiner);
        if (std::abs(figure) >= std::pow(10.0, shown)) finest = std::min(shown, finest.value_or(shown));
    }
    return finest;
}

/// Whole flows as figures of a scale.
std::vector<Figure> figuresOf(const FigureScale& scale, int nodes, std::vector<FlowEdge> edges) {
    const double step = scale.step();
    for (FlowEdge& edge : edges) edge.flow /= step;
    const auto whole = wholeFlows(nodes, edges);
    std::vector<Figure> figures;
    for (std::size_t e = 0; e < edges.size(); ++e) figures.emplace_back(scale, whole[e], edges[e].flow * step);
    return figures;
}

}  // namespace

ShownFigures::ShownFigures(const Snapshot& snapshot) : snapshot_(snapshot) {
    roundVolts();
    roundCurrents();
    roundPowers();
}

void ShownFigures::roundVolts() {
    const auto& volts = snapshot_.solution.netVoltage;
    constexpr int kThousandth = -3;
    const FigureScale scale =
        scaleFor("V", largestOf(volts), 0, metersDigit(snapshot_, "voltage", kVoltRanges, kThousandth));
    for (const double volt : volts) volts_.push_back(Figure::nearest(scale, volt));
}

/// Nodes are the places where metal meets and the parts; edges are pieces of metal and what leads draw into their part.
void ShownFigures::roundCurrents() {
    const Layout& layout = *snapshot_.layout;
    const auto& injection = snapshot_.solution.leadInjection;
    amperes_ = scaleFor("A", std::max(largestOf(snapshot_.pieceCurrent), largestOf(injection)),
                        smallestCurrent(injection), metersDigit(snapshot_, "current", kAmpereRanges, kAnyDigit));
    const auto pieceCount = static_cast<std::ptrdiff_t>(layout.pieces.size());
    if (snapshot_.status() == Status::None) {
        pieces_.resize(layout.pieces.size());
        drawn_.resize(injection.size());
        return;
    }
    const int joints = static_cast<int>(layout.joints.size());
    std::vector<FlowEdge> edges;
    for (std::size_t piece = 0; piece < layout.pieces.size(); ++piece)
        edges.push_back({layout.pieces[piece].from, layout.pieces[piece].to, snapshot_.pieceCurrent[piece]});
    for (int lead = 0; lead < layout.leadCount(); ++lead)
        edges.push_back({layout.drawJointOf(lead), joints + layout.partOfLead(lead), injection[lead]});
    std::vector<Figure> figures =
        figuresOf(amperes_, joints + static_cast<int>(layout.bench->parts.size()), std::move(edges));
    pieces_.assign(figures.begin(), figures.begin() + pieceCount);
    drawn_.assign(figures.begin() + pieceCount, figures.end());
}

/// In each circuit the parts together take nothing: every part is an edge between two nodes of its circuit.
void ShownFigures::roundPowers() {
    const Layout& layout = *snapshot_.layout;
    const int parts = static_cast<int>(layout.bench->parts.size());
    watts_ = scaleFor("W", largestOf(snapshot_.partPower), smallestPower(snapshot_.partPower));
    if (snapshot_.status() == Status::None) {
        powers_.resize(snapshot_.partPower.size());
        return;
    }
    DisjointSets circuits(static_cast<std::size_t>(layout.netCount + parts));
    for (int lead = 0; lead < layout.leadCount(); ++lead)
        circuits.join(layout.netOfLead[lead], layout.netCount + layout.partOfLead(lead));
    std::vector<FlowEdge> edges;
    for (int part = 0; part < parts; ++part) {
        const int circuit = circuits.root(layout.netCount + part);
        edges.push_back({2 * circuit, 2 * circuit + 1, snapshot_.partPower[part]});
    }
    powers_ = figuresOf(watts_, 2 * (layout.netCount + parts), std::move(edges));
}

Figure ShownFigures::leadVolt(int lead) const { return volts_[snapshot_.layout->netOfLead[lead]]; }

Figure ShownFigures::leadCurrent(int lead) const {
    const int bridge = snapshot_.layout->pieceOfLead[lead];
    return bridge >= 0 ? pieces_[bridge] : drawn_[lead];
}

Figure ShownFigures::jumperCurrent(int jumper) const { return pieces_[snapshot_.layout->pieceOfJumper[jumper]]; }

Figure ShownFigures::largestCurrent() const {
    Figure largest = ampere(0);
    for (const auto* figures : {&pieces_, &drawn_}) {
        for (const Figure& each : *figures)
            if (std::abs(each.steps()) > largest.steps()) largest = each.magnitude();
    }
    return largest;
}

ThroughFigures ShownFigures::through(int part) const {
    const auto& firstLead = snapshot_.layout->firstLead;
    return drawnBy(firstLead[part], firstLead[part + 1], -1);
}

ThroughFigures ShownFigures::atNet(int part, int net) const {
    const Layout& layout = *snapshot_.layout;
    if (part < 0) return drawnBy(0, layout.leadCount(), net);
    return drawnBy(layout.firstLead[part], layout.firstLead[part + 1], net);
}

/// By leads from one to before another, those in a net (-1: in any).
ThroughFigures ShownFigures::drawnBy(int firstLead, int endLead, int net) const {
    if (snapshot_.status() == Status::None) return {};
    ThroughFigures sum{ampere(0), ampere(0)};
    for (int lead = firstLead; lead < endLead; ++lead) {
        if (net >= 0 && snapshot_.layout->netOfLead[lead] != net) continue;
        Figure& way = drawn_[lead].exact() > 0 ? sum.in : sum.out;
        way = way + drawn_[lead].magnitude();
    }
    return sum;
}

}  // namespace tiepoint
