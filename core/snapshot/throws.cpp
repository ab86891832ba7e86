#include "core/snapshot/throws.h"

#include "core/circuit/element.h"

#include <algorithm>

namespace tiepoint {

bool isSwitch(const PartKind& kind) {
    return !kind.isSupply && std::ranges::any_of(kind.model, [](const ElementSpec& spec) {
        return findElement(spec.element) == &kContactElement;
    });
}

std::vector<Throw> throwsOf(const Bench& bench) {
    std::vector<Throw> found;
    for (int index = 0; index < static_cast<int>(bench.parts.size()); ++index) {
        const PartKind& kind = *bench.parts[index].kind;
        if (!isSwitch(kind)) continue;
        if (std::ranges::any_of(kind.model, &ElementSpec::whenHeld)) found.push_back({index, Throw::kHeld, 2});
        for (int s = 0; s < static_cast<int>(kind.state.size()); ++s) {
            const ValueSpec& spec = kind.state[s];
            if (spec.type == ValueType::Choice) found.push_back({index, s, static_cast<int>(spec.choices.size())});
            if (spec.type == ValueType::Switch) found.push_back({index, s, 2});
        }
    }
    return found;
}

Digits digitsOf(const std::vector<Throw>& throws, const Bench& bench, const Inputs& inputs) {
    Digits digits;
    for (const Throw& each : throws) {
        const Part& part = bench.parts[each.part];
        digits.push_back(each.isCap() ? inputs.held.contains(part.id) : static_cast<int>(part.stateValue(each.state)));
    }
    return digits;
}

std::string positionInWords(const Throw& each, const Bench& bench, int digit) {
    if (each.isCap()) return digit != 0 ? "pressed" : "released";
    const ValueSpec& spec = bench.parts[each.part].kind->state[each.state];
    if (spec.type == ValueType::Choice) return spec.choices[digit].label;
    return digit != 0 ? "closed" : "open";
}

}  // namespace tiepoint
