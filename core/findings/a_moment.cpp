// A light that flashes once and stays dark: usually a capacitor in its only path, which is charged after a moment.

#include "core/circuit/element.h"
#include "core/findings/over_limit.h"
#include "core/findings/rules.h"
#include "core/findings/trial.h"
#include "core/snapshot/readings.h"
#include "core/words/words.h"

#include <algorithm>

namespace tiepoint {
namespace {

bool storesCharge(const Part& part) {
    return std::ranges::any_of(part.kind->model, [](const ElementSpec& spec) {
        return findElement(spec.element) == &kElementOf<CapacitanceLaw>;
    });
}

/// What stores charge and carries the light's own current while it is lit; -1 without one.
int storeInLine(const Examination& examination, int light) {
    const auto& brightest = *std::ranges::max_element(examination.allInstants(), {}, [&](const Position& position) {
        return currentThrough(*position.snapshot, light).inAmpere;
    });
    for (const int other : chainOf(*brightest.snapshot, light))
        if (storesCharge(examination.part(other))) return other;
    return -1;
}

}  // namespace

Suspicions findMoments(const Examination& examination) {
    Suspicions all;
    for (int light = 0; light < examination.partCount(); ++light) {
        const Part& part = examination.part(light);
        if (!part.kind->emitsLight) continue;
        const auto when = examination.momentOfLight(light);
        if (!when) continue;
        Suspicion found;
        found.finding.severity = Severity::Remark;
        found.finding.parts = {part.id};
        const int store = storeInLine(examination, light);
        if (store >= 0) found.finding.parts.push_back(examination.part(store).id);
        found.finding.holes = holesOf(part);
        found.finding.text = store >= 0
                                 ? say("finding.moment.store",
                                       {{"light", part.id}, {"when", *when}, {"store", examination.part(store).id}})
                                 : say("finding.moment", {{"light", part.id}, {"when", *when}});
        all.push_back(std::move(found));
    }
    return all;
}

}  // namespace tiepoint
