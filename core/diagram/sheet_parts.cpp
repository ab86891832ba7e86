#include "core/diagram/sheet_parts.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>

namespace tiepoint {
namespace {

using PlaceKey = std::tuple<int, long, long>;  // net and place in hundredths of a millimetre

PlaceKey keyOf(int net, Point at) { return {net, std::lround(at.x * 100), std::lround(at.y * 100)}; }
bool isLevel(const SheetWire& wire) { return std::abs(wire.from.y - wire.to.y) < 1e-6; }

/// Joins two pieces where nothing else meets and the way goes straight on.
void joinStraight(Diagram& diagram) {
    std::map<PlaceKey, std::vector<int>> ends;
    for (std::size_t i = 0; i < diagram.wires.size(); ++i) {
        ends[keyOf(diagram.wires[i].net, diagram.wires[i].from)].push_back(static_cast<int>(i));
        ends[keyOf(diagram.wires[i].net, diagram.wires[i].to)].push_back(static_cast<int>(i));
    }
    for (const PlacedPart& part : diagram.parts) {
        for (const SheetLead& lead : part.leads) {
            if (const auto found = ends.find(keyOf(lead.net, lead.at)); found != ends.end())
                found->second.push_back(-1);
        }
    }
    std::vector<char> gone(diagram.wires.size());
    for (auto& [key, list] : ends) {
        if (list.size() != 2 || list[0] < 0 || list[1] < 0 || list[0] == list[1]) continue;
        const int keep = list[0], drop = list[1];
        SheetWire &a = diagram.wires[keep], &b = diagram.wires[drop];
        if (isLevel(a) != isLevel(b)) continue;
        const bool aFrom = keyOf(a.net, a.from) == key, bFrom = keyOf(b.net, b.from) == key;
        const Point far = bFrom ? b.to : b.from;
        (aFrom ? a.from : a.to) = far;
        gone[drop] = 1;
        for (int& other : ends[keyOf(b.net, far)]) {
            if (other == drop) other = keep;
        }
    }
    std::vector<SheetWire> kept;
    for (std::size_t i = 0; i < gone.size(); ++i) {
        if (!gone[i]) kept.push_back(diagram.wires[i]);
    }
    diagram.wires = std::move(kept);
}

void findDots(Diagram& diagram) {
    std::map<PlaceKey, int> ways;
    std::map<PlaceKey, Point> places;
    const auto count = [&](int net, Point at) {
        ++ways[keyOf(net, at)];
        places[keyOf(net, at)] = at;
    };
    for (const SheetWire& wire : diagram.wires) count(wire.net, wire.from), count(wire.net, wire.to);
    for (const PlacedPart& part : diagram.parts) {
        for (const SheetLead& lead : part.leads) count(lead.net, lead.at);
    }
    for (const auto& [key, number] : ways) {
        if (number >= 3 && std::get<0>(key) >= 0) diagram.dots.push_back({std::get<0>(key), places[key]});
    }
}

int countCrossings(const Diagram& diagram) {
    int crossings = 0;
    for (const SheetWire& level : diagram.wires) {
        if (!isLevel(level)) continue;
        const auto [left, right] = std::minmax(level.from.x, level.to.x);
        for (const SheetWire& plumb : diagram.wires) {
            if (isLevel(plumb) || plumb.net == level.net) continue;
            const auto [top, bottom] = std::minmax(plumb.from.y, plumb.to.y);
            crossings += plumb.from.x > left && plumb.from.x < right && level.from.y > top && level.from.y < bottom;
        }
    }
    return crossings;
}

bool overlaps(const Rect& a, const Rect& b, double room) {
    return a.left < b.right() + room && b.left < a.right() + room && a.top < b.bottom() + room &&
           b.top < a.bottom() + room;
}

class TagPlacer {
public:
    explicit TagPlacer(Diagram& diagram) : diagram_(diagram) {}

    void run() {
        std::map<int, std::vector<const SheetWire*>> wires;
        for (const SheetWire& wire : diagram_.wires) {
            if (wire.net >= 0) wires[wire.net].push_back(&wire);
        }
        for (auto& [net, list] : wires) {
            std::ranges::stable_sort(list, {}, [](const SheetWire* wire) {
                return std::pair(isLevel(*wire) ? 0 : 1, -length(wire->to - wire->from));
            });
            placeTag(net, list);
        }
    }

private:
    static constexpr double kStub = 3;

    void placeTag(int net, const std::vector<const SheetWire*>& wires) {
        for (const double stub : {kStub, 2 * kStub, 4 * kStub}) {
            for (const SheetWire* wire : wires) {
                for (const double share : {0.5, 0.3, 0.7, 0.15, 0.85, 0.05, 0.95}) {
                    const Point node = wire->from + (wire->to - wire->from) * share;
                    if (placeAt(net, node, isLevel(*wire), stub)) return;
                }
            }
        }
    }

    bool placeAt(int net, Point node, bool level, double stub) {
        for (const bool first : {true, false}) {
            for (const double lean : {0.5, 0.15, 0.85}) {
                const SheetTag tag{net, node, frameBeside(node, level, first, stub, lean)};
                if (!isFree(tag)) continue;
                diagram_.tags.push_back(tag);
                return true;
            }
        }
        return false;
    }

    /// `lean`: where along the tag's side its stub meets it.
    static Rect frameBeside(Point node, bool level, bool first, double stub, double lean) {
        if (level) {
            return {node.x - kSheetTagWidthMm * lean, first ? node.y - stub - kSheetTagHeightMm : node.y + stub,
                    kSheetTagWidthMm, kSheetTagHeightMm};
        }
        return {first ? node.x - stub - kSheetTagWidthMm : node.x + stub, node.y - kSheetTagHeightMm * lean,
                kSheetTagWidthMm, kSheetTagHeightMm};
    }

    bool isFree(const SheetTag& tag) const {
        constexpr double kRoom = 0.8;
        const Rect& frame = tag.frame;
        if (frame.left < 0.5 || frame.top < 0.5 || frame.right() > diagram_.width - 0.5 ||
            frame.bottom() > diagram_.height - 0.5)
            return false;
        const Rect node{tag.node.x - 0.6, tag.node.y - 0.6, 1.2, 1.2};
        const bool beside = frame.top < tag.node.y && frame.bottom() > tag.node.y;
        const Rect stub =
            beside ? Rect{std::min(tag.node.x, frame.left), tag.node.y - 0.2, std::abs(frame.left - tag.node.x), 0.4}
                   : Rect{tag.node.x - 0.2, std::min(tag.node.y, frame.top), 0.4, std::abs(frame.top - tag.node.y)};
        const auto meets = [&](const Rect& other, double room) {
            return overlaps(frame, other, room) || overlaps(node, other, 0.4) || overlaps(stub, other, 0.4);
        };
        for (const PlacedPart& part : diagram_.parts) {
            if (meets(part.body, kRoom)) return false;
        }
        for (const SheetWord& word : diagram_.words) {
            if (meets(word.frame, kRoom)) return false;
        }
        for (const SheetTag& other : diagram_.tags) {
            if (meets(other.frame, kRoom) || overlaps(frame, {other.node.x - 0.6, other.node.y - 0.6, 1.2, 1.2}, 0.4))
                return false;
        }
        for (const SheetDot& dot : diagram_.dots) {
            if (overlaps(node, {dot.at.x - 0.7, dot.at.y - 0.7, 1.4, 1.4}, 0.3)) return false;
        }
        return std::ranges::none_of(diagram_.wires, [&](const SheetWire& wire) {
            const auto [x0, x1] = std::minmax(wire.from.x, wire.to.x);
            const auto [y0, y1] = std::minmax(wire.from.y, wire.to.y);
            const Rect line{x0, y0, x1 - x0, y1 - y0};
            return overlaps(frame, line, kRoom) ||
                   (wire.net != tag.net && (overlaps(stub, line, 0.4) || overlaps(node, line, 0.4)));
        });
    }

    Diagram& diagram_;
};

template <class Rectangle>
void moveRect(Rectangle& rect, Point by) {
    rect.left += by.x, rect.top += by.y;
}

}  // namespace

void addMoved(Diagram& diagram, const Diagram& other, Point by) {
    for (PlacedPart part : other.parts) {
        if (part.leads.empty() && part.body == Rect{}) continue;
        part.pose.at = part.pose.at + by;
        moveRect(part.body, by);
        for (SheetLead& lead : part.leads) lead.at = lead.at + by;
        diagram.parts[part.part] = std::move(part);
    }
    for (const SheetWire& wire : other.wires) diagram.wires.push_back({wire.net, wire.from + by, wire.to + by});
    for (const Point& end : other.openEnds) diagram.openEnds.push_back(end + by);
    for (SheetWord word : other.words) {
        moveRect(word.frame, by);
        diagram.words.push_back(std::move(word));
    }
}

void finishSheet(Diagram& diagram) {
    joinStraight(diagram);
    findDots(diagram);
    diagram.crossings = countCrossings(diagram);
    TagPlacer(diagram).run();
}

}  // namespace tiepoint
