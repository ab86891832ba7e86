#include "core/doctor/question_words.h"

#include "core/base/capital.h"
#include "core/base/quantity.h"
#include "core/bench/describe.h"
#include "core/doctor/observation_words.h"
#include "core/edit/holes.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace tiepoint {
namespace {

constexpr std::size_t kMostThingsNamed = 3, kMostAnswersTold = 4, kMostTipsTold = 4;

std::string roundVolts(double volt) {
    if (std::isnan(volt)) return "no reading";
    constexpr double kTenths = 10;
    const double rounded = std::round(volt * kTenths) / kTenths;
    return formatSetting(rounded == 0 ? 0 : rounded, "V");
}

/// "S1 and W2", "S1, W2 and D1", "S1, W2, D1 and 4 more".
std::string namesInWords(const std::vector<std::string>& names) {
    std::string words;
    const std::size_t told = names.size() > kMostThingsNamed + 1 ? kMostThingsNamed : names.size();
    for (std::size_t i = 0; i < told; ++i) {
        const bool last = i + 1 == names.size();
        words += (i == 0 ? "" : last ? " and " : ", ") + names[i];
    }
    if (told < names.size()) words += fmt::format(" and {} more", names.size() - told);
    return words;
}

std::string tipInLook(const Bench& plan, const SawTip& tip) {
    const std::string name = tipName(plan, tip.id, tip.tip);
    const bool jumper = plan.findJumper(tip.id) != nullptr;
    constexpr std::size_t kLongestSign = 2;
    return fmt::format("{}{} in {}",
                       jumper                       ? "end "
                       : name.size() > kLongestSign ? ""
                                                    : "leg ",
                       name, holeName(plan, tip.in));
}

std::string lookInWords(const Bench& plan, const std::vector<Observation>& seen) {
    std::string words;
    std::size_t told = 0;
    for (const Observation& each : seen) {
        if (const auto* built = std::get_if<SawBuilt>(&each.what)) return built->asPlanned ? "as planned" : "otherwise";
        if (std::holds_alternative<SawMissing>(each.what)) return "it is missing";
        std::string part;
        if (const auto* tip = std::get_if<SawTip>(&each.what)) part = tipInLook(plan, *tip);
        if (const auto* setting = std::get_if<SawSetting>(&each.what)) {
            const PartKind& kind = *plan.findPart(setting->part)->kind;
            const ValueSpec& spec =
                (setting->state ? kind.state : kind.values)[static_cast<std::size_t>(setting->index)];
            part = fmt::format("{} {}", uncapitalised(spec.label), describeSetting(spec, setting->value));
        }
        if (++told > kMostTipsTold) break;
        words += (words.empty() ? "" : ", ") + part;
    }
    return words;
}

std::string withPosition(const Bench& plan, const Digits& digits, const std::string& sentence) {
    const std::string position = positionInWords(plan, digits);
    return position.empty() ? capitalised(sentence) : capitalised(position) + ", " + sentence;
}

std::string blackInWords(const Bench& plan, const std::optional<Hole>& black) {
    if (black) return "in " + holeName(plan, *black);
    const auto minus = minusOfFirstSupply(plan);
    return minus ? "at the minus of " + plan.parts[static_cast<std::size_t>(minus->part)].id : "at minus";
}

}  // namespace

std::string answerInWords(const Bench& plan, const Question& question, const std::vector<Observation>& seen) {
    const auto& what = seen.front().what;
    switch (question.asking) {
        case Asking::Light:
            return std::string(shineName(std::get<SawLight>(what).shine));
        case Asking::Built:
            return std::get<SawBuilt>(what).asPlanned ? "yes" : "no";
        case Asking::Look:
            return lookInWords(plan, seen);
        case Asking::Extra:
            return std::get<SawExtra>(what).jumper ? "there is one" : "there is none";
        case Asking::Volts:
            return roundVolts(std::get<SawVolts>(what).volt);
        case Asking::Glow:
            return std::get<SawGlow>(what).glows ? "it glows" : "it stays dark";
        case Asking::Beep:
            return std::get<HeardBeep>(what).beeps ? "it beeps" : "it is silent";
    }
    return {};
}

std::string plannedPlace(const Bench& plan, const std::string& id) {
    std::vector<std::string> holes;
    if (const Part* part = plan.findPart(id)) {
        for (std::size_t lead = 0; lead < part->leads.size(); ++lead) {
            if (!part->leads[lead]) continue;
            SawTip tip{id, static_cast<int>(lead), *part->leads[lead]};
            holes.push_back(tipInLook(plan, tip));
        }
    } else if (const Jumper* jumper = plan.findJumper(id)) {
        for (const int end : {0, 1}) {
            if (const Hole* hole = std::get_if<Hole>(&jumper->ends[static_cast<std::size_t>(end)]))
                holes.push_back(tipInLook(plan, SawTip{id, end, *hole}));
        }
    }
    std::string words;
    for (const std::string& hole : holes) words += (words.empty() ? "" : ", ") + hole;
    return words;
}

std::string questionInWords(const Bench& plan, const Question& question) {
    switch (question.asking) {
        case Asking::Built:
            return "Is everything built as planned? Compare hole by hole, and say which leg stands elsewhere.";
        case Asking::Light:
            return withPosition(plan, question.digits, fmt::format("look at {}: is it dark, dim or lit?", question.id));
        case Asking::Look: {
            const std::string place = plannedPlace(plan, question.id);
            return place.empty() ? fmt::format("Look at {}: is it as planned?", question.id)
                                 : fmt::format("Look at {}: is it as planned ({})?", question.id, place);
        }
        case Asking::Extra:
            return fmt::format("Is there a jumper too many between the strips of {} and {}?",
                               holeName(plan, question.one), holeName(plan, question.other));
        case Asking::Volts:
            return withPosition(plan, question.digits,
                                fmt::format("measure at {}, black tip {}.", holeName(plan, question.one),
                                            blackInWords(plan, question.black)));
        case Asking::Glow:
            return withPosition(plan, question.digits,
                                fmt::format("hold the probe light to {}, its minus end {}.",
                                            holeName(plan, question.one), blackInWords(plan, question.black)));
        case Asking::Beep:
            return "Switch every supply off. " +
                   withPosition(plan, question.digits,
                                fmt::format("test for continuity from {} to {}.", holeName(plan, question.one),
                                            holeName(plan, question.other)));
    }
    return {};
}

std::string leavesInWords(const Reply& answer, const std::vector<Weighed>& live) {
    std::vector<std::string> names;
    bool nothing = false;
    for (const std::size_t at : answer.leaves) {
        const Suspect& suspect = *live[at].suspect;
        nothing = nothing || suspect.slips.empty();
        for (const std::string& id : suspect.concerned) {
            if (std::ranges::find(names, id) == names.end()) names.push_back(id);
        }
    }
    if (names.empty()) return nothing ? "all works as planned" : "";
    return "look at " + namesInWords(names);
}

std::string questionWithAnswers(const Bench& plan, const AskedQuestion& asked, const std::vector<Weighed>& live) {
    std::string words = questionInWords(plan, asked.question);
    const std::size_t told = std::min(asked.answers.size(), kMostAnswersTold);
    for (std::size_t i = 0; i < told; ++i) {
        const Reply& answer = asked.answers[i];
        words += fmt::format(" {}: {}.", capitalised(answer.words), leavesInWords(answer, live));
    }
    return words;
}

}  // namespace tiepoint
