#include "core/diagram/sheet_reader.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <numeric>

namespace tiepoint::test {
namespace {

constexpr double kSame = 1e-6;

bool samePoint(Point a, Point b) { return std::abs(a.x - b.x) < kSame && std::abs(a.y - b.y) < kSame; }
bool liesOn(Point at, const SheetWire& wire) { return distanceToStretch(at, wire.from, wire.to) < kSame; }

class Groups {
public:
    explicit Groups(std::size_t count) : root_(count) { std::iota(root_.begin(), root_.end(), 0); }
    int of(int thing) {
        while (root_[static_cast<std::size_t>(thing)] != thing) thing = root_[static_cast<std::size_t>(thing)];
        return thing;
    }
    void join(int a, int b) { root_[static_cast<std::size_t>(of(a))] = of(b); }

private:
    std::vector<int> root_;
};

bool meet(const Rect& a, const Rect& b) {
    return a.left < b.right() - kSame && b.left < a.right() - kSame && a.top < b.bottom() - kSame &&
           b.top < a.bottom() - kSame;
}
Rect roomOf(const SheetWire& wire) {
    constexpr double kHalf = 0.2;
    const auto [x0, x1] = std::minmax(wire.from.x, wire.to.x);
    const auto [y0, y1] = std::minmax(wire.from.y, wire.to.y);
    const bool level = x1 - x0 > y1 - y0;
    return level ? Rect{x0, y0 - kHalf, x1 - x0, 2 * kHalf} : Rect{x0 - kHalf, y0, 2 * kHalf, y1 - y0};
}

}  // namespace

ReadSheet readSheet(const Diagram& diagram) {
    ReadSheet read;
    std::vector<Point> tips;
    for (const PlacedPart& part : diagram.parts) {
        for (const SheetLead& lead : part.leads) {
            read.leads.emplace_back(part.part, lead.lead);
            tips.push_back(lead.at);
        }
    }
    const int wires = static_cast<int>(diagram.wires.size());
    Groups groups(diagram.wires.size() + tips.size());
    for (int a = 0; a < wires; ++a) {
        for (int b = 0; b < a; ++b) {
            const SheetWire &one = diagram.wires[static_cast<std::size_t>(a)],
                            &other = diagram.wires[static_cast<std::size_t>(b)];
            if (liesOn(one.from, other) || liesOn(one.to, other) || liesOn(other.from, one) || liesOn(other.to, one))
                groups.join(a, b);
        }
    }
    for (std::size_t tip = 0; tip < tips.size(); ++tip) {
        for (int wire = 0; wire < wires; ++wire) {
            if (liesOn(tips[tip], diagram.wires[static_cast<std::size_t>(wire)]))
                groups.join(wires + static_cast<int>(tip), wire);
        }
        for (std::size_t other = 0; other < tip; ++other) {
            if (samePoint(tips[tip], tips[other]))
                groups.join(wires + static_cast<int>(tip), wires + static_cast<int>(other));
        }
    }
    for (std::size_t tip = 0; tip < tips.size(); ++tip) read.net.push_back(groups.of(wires + static_cast<int>(tip)));
    return read;
}

std::string misread(const Netlist& netlist, const Diagram& diagram) {
    const Terminals terminals = terminalsOf(netlist);
    const ReadSheet read = readSheet(diagram);
    std::map<std::pair<int, int>, int> drawn;
    for (std::size_t i = 0; i < read.leads.size(); ++i) drawn[read.leads[i]] = read.net[i];
    std::map<int, int> sheetOfNet, netOfSheet;
    std::map<int, int> uses;
    for (const int net : terminals.netOf) ++uses[net];
    for (std::size_t part = 0; part < netlist.parts.size(); ++part) {
        const std::vector<int> first = firstOfTerminal(*netlist.parts[part].kind);
        for (std::size_t lead = 0; lead < first.size(); ++lead) {
            if (first[lead] != static_cast<int>(lead)) continue;
            const auto found = drawn.find({static_cast<int>(part), static_cast<int>(lead)});
            if (found == drawn.end()) return fmt::format("{} lead {} isn't drawn", netlist.parts[part].id, lead);
            int net = terminals.netOf[static_cast<std::size_t>(terminals.ofLead[part][lead])];
            if (net >= 0 && uses[net] < 2) net = -1;
            if (net < 0) net = -2 - static_cast<int>(drawn.size()) - found->first.first * 100 - found->first.second;
            const auto there = sheetOfNet.try_emplace(net, found->second).first;
            const auto back = netOfSheet.try_emplace(found->second, net).first;
            if (there->second != found->second || back->second != net)
                return fmt::format("{} lead {} is drawn into another net", netlist.parts[part].id, lead);
        }
    }
    // Dots: exactly where three or more ways meet.
    for (const SheetDot& dot : diagram.dots) {
        int ways = 0;
        for (const SheetWire& wire : diagram.wires) {
            if (samePoint(dot.at, wire.from) || samePoint(dot.at, wire.to)) {
                ++ways;
            } else if (liesOn(dot.at, wire)) {
                ways += 2;
            }
        }
        for (const PlacedPart& part : diagram.parts) {
            ways += static_cast<int>(
                std::ranges::count_if(part.leads, [&](const SheetLead& lead) { return samePoint(lead.at, dot.at); }));
        }
        if (ways < 3) return fmt::format("a dot at {}, {} joins {} ways", dot.at.x, dot.at.y, ways);
    }
    for (const SheetWire& wire : diagram.wires) {
        for (const SheetWire& other : diagram.wires) {
            for (const Point end : {wire.from, wire.to}) {
                const bool inside = liesOn(end, other) && !samePoint(end, other.from) && !samePoint(end, other.to);
                if (inside &&
                    std::ranges::none_of(diagram.dots, [&](const SheetDot& dot) { return samePoint(dot.at, end); }))
                    return fmt::format("no dot where wires join at {}, {}", end.x, end.y);
            }
        }
    }
    return {};
}

std::string overlap(const Diagram& diagram) {
    struct Thing {
        std::string name;
        Rect room;
    };
    std::vector<Thing> things;
    for (const PlacedPart& part : diagram.parts) {
        if (!(part.body == Rect{})) things.push_back({fmt::format("part {}", part.part), part.body});
    }
    const std::size_t bodies = things.size();
    for (const SheetWord& word : diagram.words)
        things.push_back({fmt::format("word {} of {}", word.text, word.part), word.frame});
    for (const SheetTag& tag : diagram.tags) things.push_back({fmt::format("tag of {}", tag.net), tag.frame});
    for (std::size_t a = 0; a < things.size(); ++a) {
        const Rect& room = things[a].room;
        if (room.left < 0 || room.top < 0 || room.right() > diagram.width || room.bottom() > diagram.height)
            return things[a].name + " lies off the sheet";
        for (std::size_t b = 0; b < a; ++b) {
            // The names of a box's leads, its id and its value stand inside of it.
            const bool inBox = b < bodies && a >= bodies && room.left >= things[b].room.left &&
                               room.right() <= things[b].room.right() && room.top >= things[b].room.top &&
                               room.bottom() <= things[b].room.bottom();
            if (!inBox && meet(room, things[b].room)) return things[a].name + " lies over " + things[b].name;
        }
    }
    for (const SheetWire& wire : diagram.wires) {
        if (std::abs(wire.from.x - wire.to.x) > kSame && std::abs(wire.from.y - wire.to.y) > kSame)
            return "a wire runs aslant";
        for (const Thing& thing : things) {
            if (meet(roomOf(wire), thing.room))
                return fmt::format("a wire of net {} at {}, {} runs over {}", wire.net, wire.from.x, wire.from.y,
                                   thing.name);
        }
    }
    return {};
}

int countedCrossings(const Diagram& diagram) {
    int crossings = 0;
    for (std::size_t a = 0; a < diagram.wires.size(); ++a) {
        for (std::size_t b = 0; b < a; ++b) {
            const SheetWire &one = diagram.wires[a], &other = diagram.wires[b];
            if (one.net == other.net) continue;
            const auto side = [](const SheetWire& wire, Point at) {
                const Point along = wire.to - wire.from, off = at - wire.from;
                const double turn = along.x * off.y - along.y * off.x;
                return turn > kSame ? 1 : turn < -kSame ? -1 : 0;
            };
            crossings +=
                side(one, other.from) * side(one, other.to) < 0 && side(other, one.from) * side(other, one.to) < 0;
        }
    }
    return crossings;
}

}  // namespace tiepoint::test
