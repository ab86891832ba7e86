#include "core/doctor/observation.h"

#include "core/bench/natural_order.h"
#include "core/circuit/element.h"
#include "core/doctor/observation_words.h"

#include <fmt/format.h>

#include <algorithm>

namespace tiepoint {
namespace {

const Part& partOfThrow(const Bench& plan, const Throw& each) {
    return plan.parts[static_cast<std::size_t>(each.part)];
}

/// What a latched switch is called in a position: "b", "closed".
std::string settingName(const Bench& plan, const Throw& each, int digit) {
    const ValueSpec& spec = partOfThrow(plan, each).kind->state[static_cast<std::size_t>(each.state)];
    if (spec.type == ValueType::Choice) return spec.choices[static_cast<std::size_t>(digit)].name;
    return digit != 0 ? "closed" : "open";
}

Error unknownHold(const std::string& word, const char* reason) {
    return {ErrorKind::Reference, fmt::format("--hold {}: {}", word, reason), {}, {}};
}

/// Sets one digit by a word such as "S1" or "S2=b".
Result<Done> holdOne(const Bench& plan, const std::vector<Throw>& throws, const std::string& word, Digits& digits) {
    const std::size_t sign = word.find('=');
    const std::string id = word.substr(0, sign);
    if (plan.partIndex(id) < 0) return unknownHold(word, "the bench has no part of that id");
    const auto index = static_cast<std::size_t>(plan.partIndex(id));
    for (std::size_t t = 0; t < throws.size(); ++t) {
        if (static_cast<std::size_t>(throws[t].part) != index || throws[t].isCap() != (sign == std::string::npos))
            continue;
        if (throws[t].isCap()) {
            digits[t] = 1;
            return Done{};
        }
        for (int digit = 0; digit < throws[t].values; ++digit) {
            if (settingName(plan, throws[t], digit) != word.substr(sign + 1)) continue;
            digits[t] = digit;
            return Done{};
        }
    }
    return sign == std::string::npos
               ? unknownHold(word, fmt::format("a {} can't be pressed", plan.parts[index].kind->label).c_str())
               : unknownHold(word, "it has no such position");
}

bool areOneMetal(const PartKind& kind, int one, int other) {
    return one == other || std::ranges::any_of(kind.joined, [&](const std::vector<int>& group) {
               return std::ranges::count(group, one) + std::ranges::count(group, other) == 2;
           });
}

}  // namespace

Digits restOf(const Bench& plan) { return digitsOf(throwsOf(plan), plan, {}); }

std::vector<std::string> holdsOf(const Bench& plan, const Digits& digits) {
    std::vector<std::string> holds;
    const std::vector<Throw> throws = throwsOf(plan);
    const Digits rest = restOf(plan);
    for (std::size_t t = 0; t < throws.size(); ++t) {
        if (digits[t] == rest[t]) continue;
        const std::string& id = partOfThrow(plan, throws[t]).id;
        holds.push_back(throws[t].isCap() ? id : id + "=" + settingName(plan, throws[t], digits[t]));
    }
    return holds;
}

Result<Digits> readHolds(const Bench& plan, const std::vector<std::string>& holds) {
    Digits digits = restOf(plan);
    const std::vector<Throw> throws = throwsOf(plan);
    for (const std::string& word : holds) {
        if (word == "none") continue;
        if (const auto held = holdOne(plan, throws, word, digits); !held) return held.error();
    }
    return digits;
}

std::string positionInWords(const Bench& plan, const Digits& digits) {
    std::string words;
    const std::vector<Throw> throws = throwsOf(plan);
    const Digits rest = restOf(plan);
    for (std::size_t t = 0; t < throws.size(); ++t) {
        if (digits[t] == rest[t]) continue;
        words += fmt::format("{}{} {}", words.empty() ? "with " : ", ", partOfThrow(plan, throws[t]).id,
                             positionInWords(throws[t], plan, digits[t]));
    }
    return words;
}

std::optional<Hole> usualBlackTip(const Bench& plan) {
    const auto minus = minusOfFirstSupply(plan);
    if (!minus) return std::nullopt;
    const Part& supply = plan.parts[static_cast<std::size_t>(minus->part)];
    if (const auto& hole = supply.leads[static_cast<std::size_t>(minus->lead)]) return hole;
    for (const Jumper& jumper : plan.jumpers) {
        for (const int end : {0, 1}) {
            const Socket* socket = std::get_if<Socket>(&jumper.ends[static_cast<std::size_t>(end)]);
            const Hole* hole = std::get_if<Hole>(&jumper.ends[static_cast<std::size_t>(1 - end)]);
            if (socket && hole && socket->part == supply.id && areOneMetal(*supply.kind, socket->lead, minus->lead))
                return *hole;
        }
    }
    return std::nullopt;
}

std::optional<SupplyMinus> minusOfFirstSupply(const Bench& plan) {
    std::optional<SupplyMinus> first;
    for (int p = 0; p < static_cast<int>(plan.parts.size()); ++p) {
        const Part& part = plan.parts[static_cast<std::size_t>(p)];
        if (!part.kind->isSupply ||
            (first && !naturalLess(part.id, plan.parts[static_cast<std::size_t>(first->part)].id)))
            continue;
        const auto source =
            std::ranges::find_if(part.kind->model, [&](const ElementSpec& spec) { return drives(*part.kind, spec); });
        if (source == part.kind->model.end()) continue;
        const int lead = part.kind->leadIndex(source->to());
        const bool socket = part.kind->leads[static_cast<std::size_t>(lead)].socket;
        if (socket || part.leads[static_cast<std::size_t>(lead)]) first = SupplyMinus{p, lead};
    }
    return first;
}

}  // namespace tiepoint
