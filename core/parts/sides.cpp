#include "core/parts/sides.h"

#include <algorithm>

namespace tiepoint {

std::vector<int> sidesOf(const PartKind& kind) {
    std::vector<int> sides;
    for (int lead = 0; lead < static_cast<int>(kind.leads.size()); ++lead) {
        const bool joined = std::ranges::any_of(kind.joined, [&](const std::vector<int>& group) {
            return std::ranges::find(group, lead) != group.end() && group.front() != lead;
        });
        if (!joined) sides.push_back(lead);
    }
    return sides;
}

}  // namespace tiepoint
