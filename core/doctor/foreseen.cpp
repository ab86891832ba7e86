// What somebody would see who asks a question of a board with a slip.

#include "core/doctor/question.h"

#include <algorithm>

namespace tiepoint {
namespace {

/// How a thing looks: as planned, or where each of its tips stands, or how it is set.
std::vector<Observation> lookedAt(const SuspectList& suspects, const Question& question, const Suspect& suspect) {
    std::vector<Observation> seen;
    const auto add = [&](auto what) { seen.push_back({question.digits, std::move(what), question.black}); };
    const Bench built = suspects.built(suspect);
    if (suspect.missing.contains(question.id)) {
        add(SawMissing{question.id});
        return seen;
    }
    const auto tip = [&](int index, const Hole* hole) {
        if (hole && suspects.ground().holeIndex(*hole) >= 0) add(SawTip{question.id, index, *hole});
    };
    const bool moved =
        std::ranges::any_of(suspect.tips, [&](const auto& each) { return each.first.first == question.id; });
    if (const Part* part = built.findPart(question.id); part && moved) {
        for (std::size_t lead = 0; lead < part->leads.size(); ++lead)
            tip(static_cast<int>(lead), part->leads[lead] ? &*part->leads[lead] : nullptr);
    } else if (const Jumper* jumper = built.findJumper(question.id); jumper && moved) {
        for (const int end : {0, 1}) tip(end, std::get_if<Hole>(&jumper->ends[static_cast<std::size_t>(end)]));
    }
    for (const auto& [of, value] : suspect.settings) {
        if (of.part == question.id && suspect.looks.contains(question.id))
            add(SawSetting{of.part, of.state, of.index, value});
    }
    if (seen.empty()) add(SawBuilt{question.id, !suspect.looks.contains(question.id)});
    return seen;
}

}  // namespace

std::vector<Observation> foreseen(Foresight& foresight, const SuspectList& suspects, const Question& question,
                                  const Suspect& suspect) {
    const Bench& plan = suspects.plan();
    const auto one = [&](auto what) {
        return std::vector{Observation{question.digits, std::move(what), question.black}};
    };
    switch (question.asking) {
        case Asking::Built:
            return one(SawBuilt{question.id, !suspect.isVisible()});
        case Asking::Light: {
            const double brightness = foresight.brightness(suspect, question.digits, plan.partIndex(question.id));
            return one(SawLight{question.id, shineOf(brightness), false});
        }
        case Asking::Look:
            return lookedAt(suspects, question, suspect);
        case Asking::Extra: {
            const Ground& ground = suspects.ground();
            const auto strip = [&](const Hole& hole) { return ground.stripOf(ground.holeIndex(hole)); };
            const std::pair<int, int> pair = std::minmax({strip(question.one), strip(question.other)});
            const bool there = std::ranges::find(suspect.extra, pair) != suspect.extra.end();
            return one(SawExtra{question.one, question.other, there});
        }
        case Asking::Volts:
            return one(SawVolts{question.one, foresight.volts(suspect, question.digits, question.one, question.black)});
        case Asking::Glow: {
            const double glow = foresight.glow(suspect, question.digits, question.one, question.black);
            return one(SawGlow{question.one, shineOf(glow) != Shine::Dark});
        }
        case Asking::Beep: {
            const double ohm = foresight.ohms(suspect, question.digits, question.one, question.other);
            return one(HeardBeep{question.one, question.other, ohm < kSurelyBeepsOhm});
        }
    }
    return {};
}

}  // namespace tiepoint
