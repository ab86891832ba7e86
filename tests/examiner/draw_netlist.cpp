#include "examiner/draw_netlist.h"

#include "examiner/channel.h"

#include <algorithm>
#include <array>
#include <optional>

namespace tiepoint::examiner {
namespace {

void addSource(Chance& chance, Netlist& netlist, std::optional<int> ground, int parts) {
    const int plus = netlist.addNode(), minus = ground.value_or(-1) >= 0 ? *ground : netlist.addNode();
    const bool large = parts > 14;
    Source source{static_cast<int>(netlist.members.size()), plus, minus, 5, 0.4};
    switch (chance.weighted(std::array{4.0, 2.0, large ? 0.5 : 2.0, large ? 0.2 : 1.2})) {
        case 0: {
            Part& part = netlist.add("bench-supply", {plus, minus}).part;
            source.volt = chance.oneOf(std::array{3.3, 4.5, 5.0, 5.0, 5.0, 6.0, 9.0, 12.0});
            const double limit =
                large ? chance.oneOf(std::array{0.8, 1.0}) : chance.oneOf(std::array{0.2, 0.5, 0.5, 1.0});
            source.mostAmpere = 0.7 * limit;
            setValue(part, "voltage", source.volt);
            setValue(part, "currentLimit", limit);
            break;
        }
        case 1:
            netlist.add("usb-supply", {plus, minus, minus});
            break;
        case 2: {
            const int cells = chance.oneOf(std::array{2, 3, 3, 4, 4, 6});
            setValue(netlist.add("cells", {plus, minus}).part, "count", cells);
            source.volt = 1.6 * cells;
            source.mostAmpere = 0.12;
            break;
        }
        default:
            netlist.add("block-9v", {plus, minus});
            source.volt = 9.2;
            source.mostAmpere = 0.1;
    }
    netlist.sources.push_back(source);
}

void addParked(Chance& chance, Netlist& netlist) {
    const auto node = [&] { return netlist.addNode(); };
    switch (chance.below(5)) {
        case 0:
            netlist.add("resistor", {node(), node()});
            break;
        case 1:
            netlist.add("led", {node(), node()});
            break;
        case 2:
            netlist.add("diode", {node(), node()});
            break;
        case 3:
            netlist.add("toggle", {node(), node()});
            break;
        default: {
            const int one = node(), two = node();
            netlist.add("push-button", {one, one, two, two});
        }
    }
    netlist.members.back().parked = true;
}

}  // namespace

Netlist drawNetlist(Chance& chance, int parts) {
    Netlist netlist;
    addSource(chance, netlist, {}, parts);
    if (parts > 5 && chance.happens(0.25)) {
        const std::optional<int> ground = chance.happens(0.6) ? std::optional(netlist.sources[0].minus) : std::nullopt;
        addSource(chance, netlist, ground, parts);
    }
    std::size_t next = 0;
    const auto hasRoom = [](const Source& source) { return source.drawnAmpere < source.mostAmpere - 0.03; };
    while (static_cast<int>(netlist.members.size()) < parts || next < netlist.sources.size()) {
        if (std::ranges::none_of(netlist.sources, hasRoom)) break;
        Source& source = netlist.sources[next++ % netlist.sources.size()];
        if (hasRoom(source)) source.drawnAmpere += Channel(chance, netlist, source).draw();
    }
    if (chance.happens(0.15)) addParked(chance, netlist);
    if (chance.happens(0.05)) addParked(chance, netlist);
    if (chance.happens(0.12)) netlist.idleJumpers = 1;
    return netlist;
}

}  // namespace tiepoint::examiner
