#include "core/bench/condition.h"

#include "core/bench/bench.h"

#include <algorithm>

namespace tiepoint {

int untouchedLead(const Part& part) {
    if (part.condition != Condition::DryContact) return -1;
    const auto first = std::ranges::find_if(part.leads, [](const auto& hole) { return hole.has_value(); });
    return first == part.leads.end() ? -1 : static_cast<int>(first - part.leads.begin());
}

bool isSound(const Bench& bench) {
    const auto sound = [](const auto& thing) { return thing.condition == Condition::Sound; };
    return std::ranges::all_of(bench.parts, sound) && std::ranges::all_of(bench.jumpers, sound);
}

Bench soundOf(Bench bench) {
    for (Part& part : bench.parts) part.condition = Condition::Sound;
    for (Jumper& jumper : bench.jumpers) jumper.condition = Condition::Sound;
    return bench;
}

}  // namespace tiepoint
