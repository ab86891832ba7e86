// The loop of a light is open: nothing comes from plus, or its circuit reaches no supply at all.

#include "core/findings/open_ends.h"
#include "core/findings/rules.h"
#include "core/words/words.h"

#include <algorithm>

namespace tiepoint {

Suspicions findOpenLoops(const Examination& examination) {
    Suspicions found;
    const auto supplies = supplyNets(examination.layout());
    for (const int light : examination.darkLights()) {
        const OpenCircuit reach = reachOf(examination, light);
        if (reach.plus) continue;
        const auto isPlus = [&](int net) {
            return std::ranges::any_of(supplies, [&](const SupplyNets& each) {
                return each.plus == net && (reach.group < 0 || each.group == reach.group);
            });
        };
        const std::string text =
            say(reach.minus ? "finding.openLoop" : "finding.openLoop.both", {{"light", examination.part(light).id}});
        found.push_back(openSuspicion(examination, light, reach, text, isPlus));
    }
    return found;
}

}  // namespace tiepoint
