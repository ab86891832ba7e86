#include "core/snapshot/throws.h"

#include "core/circuit/element.h"
#include "core/words/words.h"

#include <fmt/format.h>

#include <algorithm>

namespace tiepoint {

namespace {

/// The digit of the place at which a knob stands; the one after the last where it stands at none of them.
int knobPlace(const Throw& knob, const Part& part) {
    const double now = part.stateValue(knob.state);
    int place = 0;
    while (place < knob.values && knob.stateAt(place, now) != now) ++place;
    return place;
}

}  // namespace

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

std::vector<Throw> knobsOf(const Bench& bench) {
    constexpr int kPlaces = 3;
    std::vector<Throw> found;
    for (int index = 0; index < static_cast<int>(bench.parts.size()); ++index) {
        const PartKind& kind = *bench.parts[index].kind;
        for (int s = 0; s < static_cast<int>(kind.state.size()); ++s) {
            const ValueSpec& spec = kind.state[s];
            if (spec.type == ValueType::Number && !spec.remembered)
                found.push_back({index, s, kPlaces, true, spec.minimum, spec.maximum});
        }
    }
    return found;
}

double Throw::stateAt(int digit, double now) const {
    if (!isKnob) return digit;
    return digit == values ? now : least + (most - least) * digit / (values - 1);
}

Digits digitsOf(const std::vector<Throw>& throws, const Bench& bench, const Inputs& inputs) {
    Digits digits;
    for (const Throw& each : throws) {
        const Part& part = bench.parts[each.part];
        if (each.isCap())
            digits.push_back(inputs.held.contains(part.id));
        else
            digits.push_back(each.isKnob ? knobPlace(each, part) : static_cast<int>(part.stateValue(each.state)));
    }
    return digits;
}

std::string positionInWords(const Throw& each, const Bench& bench, int digit) {
    if (each.isCap()) return say(digit != 0 ? "throw.pressed" : "throw.released");
    const Part& part = bench.parts[each.part];
    if (each.isKnob) {
        const double value = each.stateAt(digit, part.stateValue(each.state));
        const double percent = 100 * (value - each.least) / (each.most - each.least);
        return say("throw.turned", {{"percent", fmt::format("{:.0f}", percent)}});
    }
    const ValueSpec& spec = part.kind->state[each.state];
    if (spec.type == ValueType::Choice) return spec.choices[digit].label;
    return say(digit != 0 ? "throw.closed" : "throw.open");
}

}  // namespace tiepoint
