// Values, supplies and dials set or taken wrongly.
#include "core/parts/preferred.h"
#include "examiner/hands.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace tiepoint::examiner {
namespace {

using Maybe = std::optional<Slip>;

std::optional<Part> partWithValue(const Bench& bench, Chance& chance, const char* value, bool supply) {
    return pick(bench.parts, chance,
                [&](const Part& part) { return part.kind->valueIndex(value) >= 0 && part.kind->isSupply == supply; });
}

Maybe valueSet(const Bench& bench, Part part, const char* value, double to) {
    const int index = part.kind->valueIndex(value);
    const ValueSpec& spec = part.kind->values[index];
    if (spec.type == ValueType::Number && (to < spec.minimum || to > spec.maximum)) return {};
    if (to == part.value(index)) return {};
    part.values[index] = to;
    return changedPart(
        bench, part,
        fmt::format("{}: {} {:g} in place of {:g}", part.id, value, to, bench.findPart(part.id)->value(index)));
}

Maybe stateSet(const Bench& bench, Part part, const char* state, double to) {
    const int index = part.kind->stateIndex(state);
    if (to == part.stateValue(index)) return {};
    part.state[index] = to;
    return changedPart(bench, part, fmt::format("{}: {} {:g}", part.id, state, to));
}

Maybe tenTimesOff(const Bench& bench, Chance& chance) {
    const auto part = partWithValue(bench, chance, "resistance", false);
    if (!part) return {};
    const double ohm = part->value(part->kind->valueIndex("resistance"));
    return valueSet(bench, *part, "resistance", ohm * chance.oneOf(std::array{0.1, 10.0, 10.0, 100.0}));
}

/// A band taken for another: brown, red and orange (1, 2, 3), blue, violet and grey (6, 7, 8) look alike in poor light.
Maybe lookAlike(const Bench& bench, Chance& chance) {
    const auto part = pick(bench.parts, chance, [](const Part& each) { return each.kind->name == "resistor"; });
    if (!part) return {};
    const double ohm = part->value(part->kind->valueIndex("resistance"));
    const double power = std::floor(std::log10(ohm) + 1e-9) - 1;
    const int digits = static_cast<int>(std::lround(ohm / std::pow(10.0, power)));
    const auto alike = [&](int digit) {
        static constexpr std::array kAlike{0, 2, 3, 2, 4, 5, 7, 6, 7, 9};
        return digit == 2 && chance.happens(0.5) ? 1 : kAlike[digit];
    };
    const int way = chance.below(3);
    if (way == 2) return valueSet(bench, *part, "resistance", ohm * (chance.happens(0.5) ? 10 : 0.1));
    const int read = way == 0 ? 10 * alike(digits / 10) + digits % 10 : 10 * (digits / 10) + alike(digits % 10);
    const double wrong = read * std::pow(10.0, power);
    // What lies in no drawer can't be taken out of one.
    if (std::abs(nearestPreferred("E24", wrong) / wrong - 1) > 1e-6) return {};
    return valueSet(bench, *part, "resistance", wrong);
}

std::optional<Part> anySupply(const Bench& bench, Chance& chance) {
    return pick(bench.parts, chance, [](const Part& part) { return part.kind->isSupply; });
}

Maybe supplyOff(const Bench& bench, Chance& chance) {
    const auto part = anySupply(bench, chance);
    if (!part) return {};
    return stateSet(bench, *part, "on", 0);
}

Maybe wrongVolts(const Bench& bench, Chance& chance) {
    const auto part = pick(bench.parts, chance, [](const Part& each) { return each.kind->name == "bench-supply"; });
    if (!part) return {};
    return valueSet(bench, *part, "voltage", chance.oneOf(std::array{0.0, 0.5, 1.5, 3.3, 9.0, 12.0, 15.0, 24.0}));
}

Maybe weakSupply(const Bench& bench, Chance& chance) {
    const auto part = partWithValue(bench, chance, "condition", true);
    if (!part) return {};
    return valueSet(bench, *part, "condition", chance.happens(0.7) ? 2 : 1);
}

Maybe fewerCells(const Bench& bench, Chance& chance) {
    const auto part = partWithValue(bench, chance, "count", true);
    if (!part) return {};
    return valueSet(bench, *part, "count", chance.oneOf(std::array{1.0, 2.0, 3.0, 4.0, 6.0, 8.0}));
}

Maybe limitTooSmall(const Bench& bench, Chance& chance) {
    const auto part = partWithValue(bench, chance, "currentLimit", true);
    if (!part) return {};
    return valueSet(bench, *part, "currentLimit", chance.oneOf(std::array{0.001, 0.002, 0.005, 0.01, 0.02}));
}

Maybe wrongDial(const Bench& bench, Chance& chance) {
    const auto part = pick(bench.parts, chance, [](const Part& each) { return each.kind->stateIndex("dial") >= 0; });
    if (!part) return {};
    const auto& choices = part->kind->state[part->kind->stateIndex("dial")].choices;
    return stateSet(bench, *part, "dial", chance.below(static_cast<int>(choices.size())));
}

}  // namespace

std::vector<SlipKind> settingSlips() {
    return {
        {"value ten times off", 3, tenTimesOff}, {"look-alike value", 2, lookAlike},
        {"supply off", 1.5, supplyOff},          {"wrong volts", 2, wrongVolts},
        {"supply weak", 1.5, weakSupply},        {"cells too few or many", 1, fewerCells},
        {"limit too small", 1.5, limitTooSmall}, {"meter's dial", 2, wrongDial},
    };
}

}  // namespace tiepoint::examiner
