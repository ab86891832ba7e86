// A potentiometer that shorts the supply or burns a part at one end of its travel: nothing shows until someone turns the knob.

#include "core/base/quantity.h"
#include "core/bench/resolve.h"
#include "core/findings/figure_words.h"
#include "core/findings/over_limit.h"
#include "core/findings/resistor_mend.h"
#include "core/findings/rules.h"
#include "core/findings/shorted.h"
#include "core/findings/trial.h"
#include "core/words/words.h"

#include <algorithm>
#include <set>

namespace tiepoint {
namespace {

constexpr double kSafeShare = 0.7;

/// Maxima that are exceeded in any position of the switches, by part.
std::vector<Excess> burning(const Examination& examination) {
    std::vector<Excess> all = excesses(examination, "current");
    const auto more = excesses(examination, "power");
    all.insert(all.end(), more.begin(), more.end());
    std::erase_if(all, [](const Excess& each) { return !each.share.rating->maximum; });
    // A light is what people look at; of the rest the most exceeded comes first.
    std::stable_partition(all.begin(), all.end(),
                          [&](const Excess& each) { return examination.part(each.part).kind->emitsLight; });
    return all;
}

bool shortsAnywhere(const Examination& examination) {
    return std::ranges::any_of(examination.positions(), [](const Position& each) { return isShorted(*each.snapshot); });
}

/// What goes wrong at one end of the travel that doesn't go wrong now.
std::optional<Suspicion> atEnd(const Examination& examination, const Part& knob, const ValueSpec& travel, double end) {
    const auto bench = examination.after(setStateEdit(examination.bench(), knob.id, travel.name, end));
    if (!bench) return std::nullopt;
    const auto snapshot = evaluate(bench, *examination.now().inputs);
    const Examination there(*snapshot);
    Suspicion found;
    found.finding.severity = Severity::Risk;
    found.finding.parts = {knob.id};
    found.finding.holes = holesOf(knob);
    found.finding.figures = {{travel.name, end}};
    if (shortsAnywhere(there)) {
        found.finding.text = say("finding.knob.shorts", {{"knob", knob.id}});
        return found;
    }
    std::set<int> already;
    for (const Excess& each : burning(examination)) already.insert(each.part);
    for (const Excess& each : burning(there)) {
        if (already.contains(each.part)) continue;
        const Part& burnt = examination.part(each.part);
        if (burnt.id != knob.id) found.finding.parts.push_back(burnt.id);
        const std::string current = excessInWords(each), limit = limitInWords(each);
        found.finding.text =
            burnt.id == knob.id
                ? say("finding.knob.burnsItself", {{"knob", knob.id}, {"current", current}, {"limit", limit}})
                : say("finding.knob.burns",
                      {{"knob", knob.id}, {"part", burnt.id}, {"current", current}, {"limit", limit}});
        addFigure(found.finding, each.share.rating->quantity, each.shown(), each.share.limit);
        const double rated = ratedCurrentAmpere(burnt);
        if (rated > 0) {
            found.proposals =
                resistanceMends(*each.position->snapshot, each.part, kSafeShare * rated, examination.drawer());
            for (Mend& mend :
                 insertionMends(*each.position->snapshot, each.part, kSafeShare * rated, examination.drawer())) {
                found.proposals.push_back(std::move(mend));
            }
        }
        return found;
    }
    return std::nullopt;
}

/// A mend made on a bench with the knob turned must leave the knob where it is.
void dropTurned(Suspicion& found, const std::string& knob) {
    std::erase_if(found.proposals, [&](const Mend& mend) {
        return std::ranges::any_of(mend.edit.operations, [&](const Operation& operation) {
            const auto* replaced = std::get_if<ReplacePart>(&operation);
            return replaced != nullptr && replaced->part.id == knob;
        });
    });
}

}  // namespace

Suspicions findWiperShorts(const Examination& examination) {
    Suspicions all;
    if (shortsAnywhere(examination)) return all;
    for (const Part& part : examination.bench().parts) {
        if (part.kind->isSupply) continue;
        for (const ValueSpec& travel : part.kind->state) {
            if (travel.type != ValueType::Number || travel.remembered) continue;
            for (const double end : {travel.minimum, travel.maximum}) {
                auto found = atEnd(examination, part, travel, end);
                if (!found) continue;
                dropTurned(*found, part.id);
                all.push_back(std::move(*found));
                break;  // one end is enough to say so
            }
        }
    }
    return all;
}

}  // namespace tiepoint
