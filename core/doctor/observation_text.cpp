// Observations as one word of text, both ways, and in words.

#include "core/base/capital.h"
#include "core/base/quantity.h"
#include "core/bench/describe.h"
#include "core/doctor/observation_words.h"
#include "core/edit/holes.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

namespace tiepoint {
namespace {

constexpr std::string_view kAsPlanned = "as planned", kNotAsPlanned = "not as planned", kMissing = "missing",
                           kAlways = "always lit", kTooHot = "hot", kGlows = "glows", kBeeps = "beeps",
                           kSilent = "silent", kJumper = "jumper", kNoJumper = "no jumper";
constexpr std::array<std::string_view, 3> kShines = {"dark", "dim", "lit"};
constexpr double kMostVolts = 1000;

Error unreadable(std::string_view text, std::string reason) {
    return {ErrorKind::Format, fmt::format("--saw {}: {}", text, reason), {}, {}};
}

std::optional<Hole> planHole(const Bench& plan, std::string_view text) {
    auto hole = parseHole(text);
    return hole && holeExists(plan, *hole) ? hole : std::nullopt;
}

std::optional<double> voltsOf(std::string_view text) {
    double value = 0;
    const auto end = std::from_chars(text.data(), text.data() + text.size(), value);
    if (end.ec == std::errc() && end.ptr == text.data() + text.size())
        return std::isfinite(value) && std::abs(value) <= kMostVolts ? std::optional(value) : std::nullopt;
    const auto typed = parseQuantity(text, "V");
    return typed && std::abs(*typed) <= kMostVolts ? typed : std::nullopt;
}

using What = decltype(Observation::what);

std::optional<What> readBetween(const Bench& plan, std::string_view places, std::string_view seen) {
    const std::size_t wave = places.find('~');
    const auto one = planHole(plan, places.substr(0, wave)), other = planHole(plan, places.substr(wave + 1));
    if (!one || !other) return std::nullopt;
    if (seen == kBeeps || seen == kSilent) return HeardBeep{*one, *other, seen == kBeeps};
    if (seen == kJumper || seen == kNoJumper) return SawExtra{*one, *other, seen == kJumper};
    return std::nullopt;
}

std::optional<What> readAtHole(const Hole& hole, std::string_view seen) {
    if (seen == kGlows || seen == kShines[0]) return SawGlow{hole, seen == kGlows};
    if (const auto volts = voltsOf(seen)) return SawVolts{hole, *volts};
    return std::nullopt;
}

std::optional<What> readOfThing(const Bench& plan, const std::string& id, std::string_view seen) {
    const Part* part = plan.findPart(id);
    if (seen == kAsPlanned || seen == kNotAsPlanned) return SawBuilt{id, seen == kAsPlanned};
    if (seen == kMissing && plan.findJumper(id)) return SawMissing{id};
    if (part == nullptr) return std::nullopt;
    if (seen == kTooHot) return SawHot{id};
    if (!part->kind->emitsLight) return std::nullopt;
    if (seen == kAlways) return SawLight{id, Shine::Lit, true};
    for (std::size_t shine = 0; shine < kShines.size(); ++shine) {
        if (seen == kShines[shine]) return SawLight{id, static_cast<Shine>(shine), false};
    }
    return std::nullopt;
}

std::optional<What> readSeenSetting(const Part& part, std::string_view name, std::string_view seen) {
    const int value = part.kind->valueIndex(name), state = part.kind->stateIndex(name);
    if (value < 0 && state < 0) return std::nullopt;
    const ValueSpec& spec = value >= 0 ? part.kind->values[static_cast<std::size_t>(value)]
                                       : part.kind->state[static_cast<std::size_t>(state)];
    std::optional<double> read;
    if (spec.type == ValueType::Choice) {
        const auto choice = std::ranges::find(spec.choices, seen, &Choice::name);
        if (choice != spec.choices.end()) read = static_cast<double>(choice - spec.choices.begin());
    } else if (spec.type == ValueType::Switch) {
        if (seen == "0" || seen == "1") read = seen == "1";
    } else {
        read = parseQuantity(seen, spec.unit);
    }
    if (!read || !std::isfinite(*read)) return std::nullopt;
    return SawSetting{part.id, value < 0, value >= 0 ? value : state, *read};
}

const ValueSpec& settingSpecOf(const Bench& plan, const SawSetting& saw) {
    const PartKind& kind = *plan.findPart(saw.part)->kind;
    return (saw.state ? kind.state : kind.values)[static_cast<std::size_t>(saw.index)];
}

std::string seenSettingText(const ValueSpec& spec, double value) {
    if (spec.type == ValueType::Choice) return spec.choices[static_cast<std::size_t>(value)].name;
    return fmt::format("{}", value);
}

std::optional<What> readTip(const Bench& plan, std::string_view place, std::string_view seen) {
    const std::size_t point = place.find('.');
    const std::string id(place.substr(0, point));
    const std::string_view name = place.substr(point + 1);
    const auto in = planHole(plan, seen);
    const Part* part = plan.findPart(id);
    if (!in) return part ? readSeenSetting(*part, name, seen) : std::nullopt;
    if (part != nullptr) {
        const int lead = part->kind->leadIndex(name);
        if (lead < 0 || part->kind->leads[static_cast<std::size_t>(lead)].socket) return std::nullopt;
        return SawTip{id, lead, *in};
    }
    if (plan.findJumper(id) == nullptr || (name != "1" && name != "2")) return std::nullopt;
    return SawTip{id, name == "2", *in};
}

std::string voltsInWords(double volt) { return formatQuantity(volt, "V"); }

struct ObservationWriter {
    const Bench& plan;
    std::string operator()(const SawLight& saw) const {
        return fmt::format("{}={}", saw.part, saw.always ? kAlways : shineName(saw.shine));
    }
    std::string operator()(const SawVolts& saw) const { return fmt::format("{}={}", toString(saw.red), saw.volt); }
    std::string operator()(const SawGlow& saw) const {
        return fmt::format("{}={}", toString(saw.red), saw.glows ? kGlows : kShines[0]);
    }
    std::string operator()(const HeardBeep& heard) const {
        return fmt::format("{}~{}={}", toString(heard.one), toString(heard.other), heard.beeps ? kBeeps : kSilent);
    }
    std::string operator()(const SawExtra& saw) const {
        return fmt::format("{}~{}={}", toString(saw.one), toString(saw.other), saw.jumper ? kJumper : kNoJumper);
    }
    std::string operator()(const SawBuilt& saw) const {
        return fmt::format("{}={}", saw.id, saw.asPlanned ? kAsPlanned : kNotAsPlanned);
    }
    std::string operator()(const SawTip& saw) const {
        return fmt::format("{}.{}={}", saw.id, tipName(plan, saw.id, saw.tip), toString(saw.in));
    }
    std::string operator()(const SawSetting& saw) const {
        const ValueSpec& spec = settingSpecOf(plan, saw);
        return fmt::format("{}.{}={}", saw.part, spec.name, seenSettingText(spec, saw.value));
    }
    std::string operator()(const SawMissing& saw) const { return fmt::format("{}={}", saw.jumper, kMissing); }
    std::string operator()(const SawHot& saw) const { return fmt::format("{}={}", saw.part, kTooHot); }
};

struct ObservationTeller {
    const Bench& plan;
    std::string hole(const Hole& at) const { return holeName(plan, at); }
    std::string operator()(const SawLight& saw) const {
        return saw.always ? fmt::format("{} is always lit", saw.part)
                          : fmt::format("{} is {}", saw.part, shineName(saw.shine));
    }
    std::string operator()(const SawVolts& saw) const {
        return fmt::format("{} at {}", voltsInWords(saw.volt), hole(saw.red));
    }
    std::string operator()(const SawGlow& saw) const {
        return fmt::format("the probe light {} at {}", saw.glows ? "glows" : "stays dark", hole(saw.red));
    }
    std::string operator()(const HeardBeep& heard) const {
        return fmt::format("{} from {} to {}", heard.beeps ? "a beep" : "no beep", hole(heard.one), hole(heard.other));
    }
    std::string operator()(const SawExtra& saw) const {
        return fmt::format("{} from {} to {}", saw.jumper ? "a jumper too many" : "no jumper too many", hole(saw.one),
                           hole(saw.other));
    }
    std::string operator()(const SawBuilt& saw) const {
        const bool board = plan.findBoard(saw.id) != nullptr;
        return fmt::format("{}{} is {}", board ? "board " : "", saw.id, saw.asPlanned ? kAsPlanned : kNotAsPlanned);
    }
    std::string operator()(const SawTip& saw) const {
        return fmt::format("{} is in {}", tipInWords(plan, saw.id, saw.tip), hole(saw.in));
    }
    std::string operator()(const SawSetting& saw) const {
        const ValueSpec& spec = settingSpecOf(plan, saw);
        return fmt::format("{} of {} is {}", uncapitalised(spec.label), saw.part, describeSetting(spec, saw.value));
    }
    std::string operator()(const SawMissing& saw) const { return saw.jumper + " is missing"; }
    std::string operator()(const SawHot& saw) const { return saw.part + " is hot"; }
};

/// Whether it depends on how the switches stand.
bool dependsOnPosition(const What& what) {
    const auto* light = std::get_if<SawLight>(&what);
    return (light && !light->always) || std::holds_alternative<SawVolts>(what) ||
           std::holds_alternative<SawGlow>(what) || std::holds_alternative<HeardBeep>(what);
}

}  // namespace

std::string_view shineName(Shine shine) { return kShines[static_cast<std::size_t>(shine)]; }

std::string tipName(const Bench& plan, const std::string& id, int tip) {
    if (const Part* part = plan.findPart(id)) return part->kind->leads[static_cast<std::size_t>(tip)].name;
    return tip == 0 ? "1" : "2";
}

std::string tipInWords(const Bench& plan, const std::string& id, int tip) {
    constexpr std::size_t kLongestSign = 2;  // "1", "2b", "+"; else "anode", "wiper"
    const std::string name = tipName(plan, id, tip);
    if (plan.findPart(id) == nullptr) return fmt::format("end {} of {}", name, id);
    return name.size() > kLongestSign ? fmt::format("{}'s {}", id, name) : fmt::format("leg {} of {}", name, id);
}

Result<Observation> readObservation(const Bench& plan, std::string_view text, Digits digits,
                                    std::optional<Hole> black) {
    const std::size_t sign = text.rfind('=');
    if (sign == std::string_view::npos)
        return unreadable(text, "what was seen stands after a sign =, as in D1=dark or A.c14=5.0");
    const std::string_view place = text.substr(0, sign), seen = text.substr(sign + 1);
    std::optional<What> what;
    if (place.find('~') != std::string_view::npos) {
        what = readBetween(plan, place, seen);
    } else if (const auto hole = planHole(plan, place)) {
        what = readAtHole(*hole, seen);
    } else if (place.find('.') != std::string_view::npos) {
        what = readTip(plan, place, seen);
    } else {
        const std::string id(place);
        if (!plan.findPart(id) && !plan.findJumper(id) && !plan.findBoard(id))
            return unreadable(text, "the bench has nothing of that id");
        what = readOfThing(plan, id, seen);
    }
    if (!what)
        return unreadable(text, "this can't be seen there; examples: D1=dark, A.c14=5.0, A.c14~A.c20=beeps, W1.2=A.c9");
    return Observation{std::move(digits), std::move(*what), std::move(black)};
}

std::string writeObservation(const Bench& plan, const Observation& observation) {
    return std::visit(ObservationWriter{plan}, observation.what);
}

std::string observationInWords(const Bench& plan, const Observation& observation) {
    std::string words = std::visit(ObservationTeller{plan}, observation.what);
    if (dependsOnPosition(observation.what)) {
        const std::string position = positionInWords(plan, observation.digits);
        if (!position.empty()) words += " " + position;
    }
    return words;
}

}  // namespace tiepoint
