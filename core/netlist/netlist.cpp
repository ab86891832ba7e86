#include "core/netlist/netlist.h"

#include "core/base/disjoint_sets.h"
#include "core/base/json_text.h"
#include "core/base/printable.h"
#include "core/bench/validate.h"

#include <fmt/format.h>

#include <algorithm>
#include <unordered_set>

namespace tiepoint {
namespace {

Error wrongNet(ErrorKind kind, std::string pointer, std::string message) {
    return {kind, std::move(message), {std::move(pointer)}, {}};
}

std::string pointerOfLead(const Netlist& netlist, std::size_t part, std::size_t lead) {
    return fmt::format("/parts/{}/leads/{}", part, pointerToken(netlist.parts[part].kind->leads[lead].name));
}

/// By lead of a kind: the number of its terminal among those of the part.
std::vector<int> terminalsOfKind(const PartKind& kind, int& count) {
    std::vector<int> terminal(kind.leads.size(), -1);
    count = 0;
    for (std::size_t lead = 0; lead < terminal.size(); ++lead) {
        if (terminal[lead] >= 0) continue;
        terminal[lead] = count++;
        for (const std::vector<int>& group : kind.joined) {
            if (std::ranges::find(group, static_cast<int>(lead)) == group.end()) continue;
            for (const int member : group) terminal[member] = terminal[lead];
        }
    }
    return terminal;
}

/// Parts as a bench without boards would hold them: validate() of benches knows all that must hold of them.
Result<Done> validateParts(const Netlist& netlist) {
    Bench bare;
    bare.title = netlist.title;
    bare.parts = netlist.parts;
    return validate(bare);
}

Result<Done> validateLeads(const Netlist& netlist) {
    int met = 0;
    for (std::size_t part = 0; part < netlist.parts.size(); ++part) {
        const std::vector<int>& leads = netlist.leads[part];
        if (leads.size() != netlist.parts[part].kind->leads.size()) {
            return wrongNet(ErrorKind::Format, fmt::format("/parts/{}/leads", part),
                            netlist.parts[part].id + " doesn't have the leads of its kind");
        }
        for (std::size_t lead = 0; lead < leads.size(); ++lead) {
            if (leads[lead] < -1 || leads[lead] > met || leads[lead] >= std::ssize(netlist.nets)) {
                return wrongNet(ErrorKind::Reference, pointerOfLead(netlist, part, lead),
                                fmt::format("there is no net number {} yet", leads[lead]));
            }
            if (leads[lead] != met) continue;
            if (!isNetName(netlist.nets[met])) {
                return wrongNet(ErrorKind::Format, pointerOfLead(netlist, part, lead),
                                fmt::format("{} can't name a net: it takes 1 to {} bytes of printable text",
                                            inQuotes(netlist.nets[met]), kLongestNetName));
            }
            ++met;
        }
    }
    if (met == std::ssize(netlist.nets)) return Done{};
    return wrongNet(ErrorKind::Reference, {}, fmt::format("no lead is on the net {}", inQuotes(netlist.nets[met])));
}

}  // namespace

int Netlist::partIndex(std::string_view id) const {
    const auto found = std::ranges::find(parts, id, &Part::id);
    return found == parts.end() ? -1 : static_cast<int>(found - parts.begin());
}

int Netlist::netIndex(std::string_view name) const {
    const auto found = std::ranges::find(nets, name);
    return found == nets.end() ? -1 : static_cast<int>(found - nets.begin());
}

bool isNetName(std::string_view text) {
    return !text.empty() && text.size() <= kLongestNetName && printable(text) == text;
}

int addPart(Netlist& netlist, Part part) {
    netlist.leads.emplace_back(part.leads.size(), -1);
    netlist.parts.push_back(std::move(part));
    return static_cast<int>(netlist.parts.size()) - 1;
}

void renumberNets(Netlist& netlist) {
    std::vector<int> numberOf(netlist.nets.size(), -1);
    std::vector<std::string> names;
    for (std::vector<int>& leads : netlist.leads) {
        for (int& net : leads) {
            if (net < 0) continue;
            if (numberOf[net] < 0) {
                numberOf[net] = static_cast<int>(names.size());
                names.push_back(std::move(netlist.nets[net]));
            }
            net = numberOf[net];
        }
    }
    netlist.nets = std::move(names);
}

Result<Done> validate(const Netlist& netlist) {
    if (netlist.leads.size() != netlist.parts.size())
        return wrongNet(ErrorKind::Format, {}, "the leads of some parts are missing");
    if (auto valid = validateParts(netlist); !valid) return valid;
    for (std::size_t part = 0; part < netlist.parts.size(); ++part) {
        const Part& each = netlist.parts[part];
        const bool placed =
            each.at || std::ranges::any_of(each.leads, [](const auto& hole) { return hole.has_value(); });
        if (placed)
            return wrongNet(ErrorKind::Placement, fmt::format("/parts/{}", part),
                            each.id + " has a place in a circuit without");
    }
    if (auto valid = validateLeads(netlist); !valid) return valid;
    std::unordered_set<std::string_view> names;
    for (const std::string& name : netlist.nets) {
        if (!names.insert(name).second)
            return wrongNet(ErrorKind::Reference, {}, fmt::format("two nets are called {}", inQuotes(name)));
    }
    return Done{};
}

Terminals terminalsOf(const Netlist& netlist) {
    Terminals terminals;
    DisjointSets sets(netlist.nets.size());
    std::vector<int> anyNet;  // by terminal: one of its nets, or -1
    for (std::size_t part = 0; part < netlist.parts.size(); ++part) {
        int count = 0;
        std::vector<int> ofLead = terminalsOfKind(*netlist.parts[part].kind, count);
        const int first = static_cast<int>(anyNet.size());
        terminals.firstOfPart.push_back(first);
        anyNet.resize(anyNet.size() + static_cast<std::size_t>(count), -1);
        for (std::size_t lead = 0; lead < ofLead.size(); ++lead) {
            ofLead[lead] += first;
            const int net = netlist.leads[part][lead];
            int& known = anyNet[ofLead[lead]];
            if (net >= 0 && known >= 0) sets.join(net, known);
            if (net >= 0) known = net;
        }
        terminals.ofLead.push_back(std::move(ofLead));
    }
    terminals.firstOfPart.push_back(static_cast<int>(anyNet.size()));
    for (int net = 0; net < std::ssize(netlist.nets); ++net) terminals.rootOfNet.push_back(sets.root(net));
    for (const int net : anyNet) terminals.netOf.push_back(net < 0 ? -1 : terminals.rootOfNet[net]);
    return terminals;
}

}  // namespace tiepoint
