#include "core/slips/exchangeable.h"

#include "core/netlist/symmetry.h"

#include <algorithm>
#include <set>

namespace tiepoint {
namespace {

bool isSymmetric(const PartKind& kind) {
    return std::ranges::all_of(kind.model, [&](const ElementSpec& spec) { return mayBeExchanged(spec, kind); });
}

/// By lead: the first lead that is one metal with it.
std::vector<int> joinedLeads(const PartKind& kind) {
    std::vector<int> first;
    for (int lead = 0; lead < static_cast<int>(kind.leads.size()); ++lead) first.push_back(lead);
    for (const auto& group : kind.joined) {
        const int least = *std::ranges::min_element(group);
        for (const int lead : group) first[static_cast<std::size_t>(lead)] = least;
    }
    return first;
}

}  // namespace

std::optional<std::pair<int, int>> twoEndsOf(const PartKind& kind) {
    const std::vector<int> leads = joinedLeads(kind);
    const std::set<int> ends(leads.begin(), leads.end());
    if (ends.size() != 2) return std::nullopt;
    return std::pair(*ends.begin(), *ends.rbegin());
}

std::vector<int> terminalsOf(const PartKind& kind) {
    std::vector<int> terminals = joinedLeads(kind);
    const auto ends = twoEndsOf(kind);
    if (ends && isSymmetric(kind)) std::ranges::fill(terminals, ends->first);
    return terminals;
}

bool hasDirection(const PartKind& kind) {
    const std::vector<int> terminals = terminalsOf(kind);
    return std::ranges::any_of(terminals, [&](int terminal) { return terminal != terminals.front(); });
}

}  // namespace tiepoint
