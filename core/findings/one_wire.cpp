// Nothing returns to minus: current needs a way out and a way home.

#include "core/findings/open_ends.h"
#include "core/findings/rules.h"
#include "core/words/words.h"

#include <algorithm>

namespace tiepoint {

Suspicions findOneWire(const Examination& examination) {
    Suspicions found;
    const auto supplies = supplyNets(examination.layout());
    if (supplies.empty()) return found;
    for (const int light : examination.darkLights()) {
        const OpenCircuit reach = reachOf(examination, light);
        if (!reach.plus || reach.minus) continue;
        const auto isMinus = [&](int net) {
            return std::ranges::any_of(supplies, [&](const SupplyNets& each) {
                return each.minus == net && (reach.group < 0 || each.group == reach.group);
            });
        };
        const std::string text = say("finding.oneWire", {{"light", examination.part(light).id}});
        found.push_back(openSuspicion(examination, light, reach, text, isMinus));
    }
    return found;
}

}  // namespace tiepoint
