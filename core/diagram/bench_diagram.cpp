#include "core/diagram/bench_diagram.h"

#include "core/netlist/bench_netlist.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace tiepoint {
namespace {

class WayFinder {
public:
    explicit WayFinder(BenchDiagram& sheet) : sheet_(sheet) {}

    void run() {
        const Diagram& diagram = sheet_.diagram;
        for (std::size_t wire = 0; wire < diagram.wires.size(); ++wire) {
            const SheetWire& each = diagram.wires[wire];
            if (each.net < 0) continue;
            add({each.from, each.to, placeAt(each.net, each.from), placeAt(each.net, each.to), static_cast<int>(wire)});
        }
        for (const PlacedPart& part : diagram.parts) addPart(part);
        sheet_.places = count_;
    }

private:
    int placeAt(int net, Point at) {
        const auto [found, isNew] =
            places_.try_emplace({net, std::lround(at.x * 100), std::lround(at.y * 100)}, count_);
        count_ += isNew;
        return found->second;
    }
    void add(SheetWay way) { sheet_.ways.push_back(way); }

    void addPart(const PlacedPart& part) {
        if (!part.symbol) return;
        if (part.leads.size() == 2) {
            const SheetLead &a = part.leads[0], &b = part.leads[1];
            if (a.net < 0 || b.net < 0) return;
            add({a.at, b.at, placeAt(a.net, a.at), placeAt(b.net, b.at), -1, part.part, a.lead});
            return;
        }
        for (const SheetLead& lead : part.leads) {
            if (lead.net < 0) continue;
            constexpr double kIn = 5;
            const Point middle{part.body.left + part.body.width / 2, part.body.top + part.body.height / 2};
            const Point off = middle - lead.at;
            const Point in =
                std::abs(off.x) > std::abs(off.y) ? Point{off.x > 0 ? kIn : -kIn, 0} : Point{0, off.y > 0 ? kIn : -kIn};
            add({lead.at, lead.at + in, placeAt(lead.net, lead.at), count_++, -1, part.part, lead.lead});
        }
    }

    BenchDiagram& sheet_;
    std::map<std::tuple<int, long, long>, int> places_;
    int count_ = 0;
};

/// Into the part by all leads of one terminal.
double terminalCurrent(const Layout& layout, const Snapshot& snapshot, int part, int lead) {
    const PartKind& kind = *layout.bench->parts[part].kind;
    const std::vector<int> first = firstOfTerminal(kind);
    double sum = 0;
    for (int other = 0; other < std::ssize(first); ++other) {
        if (first[other] == lead) sum += snapshot.leadCurrent[layout.leadIndex(part, other)];
    }
    return std::isfinite(sum) ? sum : 0;
}

}  // namespace

std::vector<double> BenchDiagram::currents(const Snapshot& snapshot) const {
    std::vector<double> current(ways.size(), 0);
    if (snapshot.status() != Status::Solved || snapshot.layout != layout) return current;
    std::vector<double> drawn(static_cast<std::size_t>(places), 0);  // what must flow away from the wires at each place
    for (std::size_t way = 0; way < ways.size(); ++way) {
        if (ways[way].part >= 0) current[way] = terminalCurrent(*layout, snapshot, ways[way].part, ways[way].lead);
    }
    for (const PlacedPart& part : diagram.parts) {
        for (const SheetLead& lead : part.leads) {
            if (lead.net < 0) continue;
            for (const SheetWay& way : ways) {
                const bool from = way.from == lead.at, to = way.to == lead.at;
                if (way.wire < 0 || diagram.wires[way.wire].net != lead.net || (!from && !to)) continue;
                drawn[from ? way.fromPlace : way.toPlace] += terminalCurrent(*layout, snapshot, part.part, lead.lead);
                break;
            }
        }
    }
    // From the ends inward: the last open way at a place carries what the place still wants.
    std::vector<std::vector<int>> at(static_cast<std::size_t>(places));
    for (std::size_t way = 0; way < ways.size(); ++way) {
        if (ways[way].wire < 0) continue;
        at[ways[way].fromPlace].push_back(static_cast<int>(way));
        at[ways[way].toPlace].push_back(static_cast<int>(way));
    }
    std::vector<int> open(at.size());
    std::vector<int> ready;
    for (std::size_t place = 0; place < at.size(); ++place) {
        open[place] = static_cast<int>(at[place].size());
        if (open[place] == 1) ready.push_back(static_cast<int>(place));
    }
    std::vector<char> done(ways.size());
    while (!ready.empty()) {
        const int place = ready.back();
        ready.pop_back();
        for (const int way : at[place]) {
            if (done[way]) continue;
            done[way] = 1;
            const bool isTo = ways[way].toPlace == place;
            const int other = isTo ? ways[way].fromPlace : ways[way].toPlace;
            current[way] = isTo ? drawn[place] : -drawn[place];
            drawn[other] += drawn[place];
            if (--open[other] == 1) ready.push_back(other);
        }
    }
    return current;
}

std::shared_ptr<const BenchDiagram> diagramOf(std::shared_ptr<const Layout> layout, const DiagramHints& hints) {
    auto sheet = std::make_shared<BenchDiagram>();
    sheet->netlist = netlistOf(*layout);
    sheet->diagram = layOutDiagram(sheet->netlist, hints);
    sheet->layoutNet.assign(sheet->netlist.nets.size(), -1);
    sheet->sheetNet.assign(static_cast<std::size_t>(layout->netCount), -1);
    for (std::size_t part = 0; part < sheet->netlist.leads.size(); ++part) {
        for (std::size_t lead = 0; lead < sheet->netlist.leads[part].size(); ++lead) {
            const int net = sheet->netlist.leads[part][lead];
            if (net < 0) continue;
            const int own = layout->netOfLead[layout->leadIndex(static_cast<int>(part), static_cast<int>(lead))];
            sheet->layoutNet[net] = own;
            sheet->sheetNet[own] = net;
        }
    }
    sheet->layout = std::move(layout);
    WayFinder(*sheet).run();
    return sheet;
}

std::shared_ptr<const BenchDiagram> diagramOf(std::shared_ptr<const Layout> layout, SymbolStyle style,
                                              const BenchDiagram* before, double sheetRatio) {
    DiagramHints hints = stripOrder(*layout->bench);
    hints.style = style;
    hints.sheetRatio = sheetRatio;
    if (before) {
        const Netlist now = netlistOf(*layout);
        keepOrder(hints, now, before->diagram, before->netlist);
    }
    return diagramOf(std::move(layout), hints);
}

}  // namespace tiepoint
