// Supplies that fight: one drives current backwards through another, which a battery answers with heat and a bench supply with harm.

#include "core/findings/rules.h"
#include "core/findings/trial.h"

#include "core/snapshot/readings.h"

#include "core/base/quantity.h"

#include <fmt/format.h>

#include <cmath>
#include <set>

namespace tiepoint {
namespace {

/// Less than this is how two equal sources settle, not a fight.
constexpr double kFightAmpere = 1e-3;

/// The supply that gives most at one instant, or -1.
int giverOf(const Snapshot& snapshot) {
    int giver = -1;
    for (const int supply : delivery(snapshot).supplies) {
        if (giver < 0 || snapshot.partPower[supply] < snapshot.partPower[giver]) giver = supply;
    }
    return giver;
}

}  // namespace

Suspicions findSupplyConflicts(const Examination& examination) {
    Suspicions all;
    std::set<int> told;
    for (const Position& position : examination.positions()) {
        const Snapshot& snapshot = *position.snapshot;
        const int giver = giverOf(snapshot);
        if (giver < 0) continue;
        for (int index = 0; index < examination.partCount(); ++index) {
            const Part& taker = examination.part(index);
            const double ampere = currentThrough(snapshot, index).inAmpere;
            const bool takes = taker.kind->isSupply && snapshot.partPower[index] > 0 && ampere > kFightAmpere;
            if (!takes || !told.insert(index).second) continue;
            const Part& other = examination.part(giver);
            Suspicion found;
            found.finding.parts = {taker.id, other.id};
            found.finding.holes = holesOf(taker);
            found.finding.text = saidOf(fmt::format("{} and {} fight: {} pushes {} backwards through {}.", other.id, taker.id, other.id,
                                                    formatQuantity(ampere, "A", 2), taker.id),
                                        position);
            found.finding.figures = {{"current", ampere}, {"power", snapshot.partPower[index]}};
            if (taker.kind->stateIndex("on") >= 0) {
                found.proposals.push_back({fmt::format("Switch {} off", taker.id), setStateEdit(examination.bench(), taker.id, "on", 0)});
            }
            all.push_back(std::move(found));
        }
    }
    return all;
}

}  // namespace tiepoint
