#include "examiner/netlist.h"

#include <algorithm>
#include <cassert>

namespace tiepoint::examiner {

Member& Netlist::add(const char* kindName, std::vector<int> nodes) {
    const PartKind& kind = *findKind(kindName);
    assert(nodes.size() == kind.leads.size());
    const auto alike =
        std::ranges::count_if(members, [&](const Member& member) { return member.part.kind->prefix == kind.prefix; });
    members.push_back({makePart(kind, kind.prefix + std::to_string(alike + 1)), std::move(nodes), false});
    return members.back();
}

int Netlist::countOf(const char* kind) const {
    return static_cast<int>(
        std::ranges::count_if(members, [&](const Member& member) { return member.part.kind->name == kind; }));
}

void setValue(Part& part, const char* name, double to) {
    const int index = part.kind->valueIndex(name);
    assert(index >= 0);
    part.values[index] = to;
}

void setState(Part& part, const char* name, double to) {
    const int index = part.kind->stateIndex(name);
    assert(index >= 0);
    part.state[index] = to;
}

}  // namespace tiepoint::examiner
