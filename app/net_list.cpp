#include "app/net_list.h"

#include <fmt/format.h>

#include <algorithm>

namespace tiepoint::app {
namespace {

/// Members by the layout's net number, empty nets included.
std::vector<NetMembers> allNets(const Layout& layout) {
    const Bench& bench = *layout.bench;
    std::vector<NetMembers> nets(layout.netCount);
    for (int net = 0; net < layout.netCount; ++net) nets[net].net = net;
    for (int hole = 0; hole < layout.holeCount(); ++hole) {
        if (layout.jointOfHole[hole] >= 0) nets[layout.netOfHole(hole)].holes.push_back(toString(layout.holeAt(hole)));
    }
    for (int part = 0; part < static_cast<int>(bench.parts.size()); ++part) {
        const PartKind& kind = *bench.parts[part].kind;
        for (int lead = 0; lead < static_cast<int>(kind.leads.size()); ++lead) {
            const int net = layout.netOfLead[layout.leadIndex(part, lead)];
            nets[net].leads.push_back(bench.parts[part].id + '.' + kind.leads[lead].name);
        }
    }
    for (std::size_t jumper = 0; jumper < bench.jumpers.size(); ++jumper) {
        nets[layout.joints[layout.jumperJoints[jumper][0]].net].jumpers.push_back(bench.jumpers[jumper].id);
    }
    return nets;
}

}  // namespace

std::vector<NetMembers> netMembers(const Layout& layout) {
    auto nets = allNets(layout);
    std::erase_if(nets, [](const NetMembers& net) { return net.leads.empty() && net.jumpers.empty(); });
    return nets;
}

void writeMembers(JsonWriter& json, const NetMembers& members) {
    json.texts("holes", members.holes).texts("leads", members.leads).texts("jumpers", members.jumpers);
}

std::string membersText(const NetMembers& members) {
    std::string text;
    for (const auto* list : {&members.holes, &members.leads, &members.jumpers}) {
        if (list->empty()) continue;
        text += fmt::format("{}{}", text.empty() ? "" : "   ", fmt::join(*list, " "));
    }
    return text;
}

}  // namespace tiepoint::app
