// Supplies that fight: one drives current backwards through another, which a battery answers with heat and a bench supply with harm.

#include "core/base/quantity.h"
#include "core/edit/holes.h"
#include "core/findings/least_path.h"
#include "core/findings/rules.h"
#include "core/findings/trial.h"
#include "core/snapshot/readings.h"

#include <fmt/format.h>

#include <algorithm>
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

/// Supplies fight over a path of metal: each jumper on it may be the one that lies wrong.
void proposeJumpers(const Examination& examination, const Position& position, int giver, int taker, Suspicion& found) {
    const Layout& layout = examination.layout();
    NearZeroPaths paths(*position.snapshot);
    for (int lead = 0; lead < static_cast<int>(examination.part(giver).leads.size()); ++lead) {
        for (int other = 0; other < static_cast<int>(examination.part(taker).leads.size()); ++other) {
            const int from = layout.leadIndex(giver, lead), to = layout.leadIndex(taker, other);
            const auto path = paths.between(layout.jointOfLead[from], layout.jointOfLead[to]);
            if (!path) continue;
            for (const std::string& id : path->parts) {
                const int jumper = examination.bench().jumperIndex(id);
                if (jumper < 0) continue;
                if (std::ranges::find(found.finding.parts, id) == found.finding.parts.end())
                    found.finding.parts.push_back(id);
                for (Move& move : movesOfJumper(examination, jumper)) {
                    found.proposals.push_back(
                        {fmt::format("Put {} into {}", move.what, holeName(examination.bench(), move.to)),
                         std::move(move.edit)});
                }
                found.proposals.push_back({fmt::format("Take {} away", id), removeEdit(examination.bench(), {id})});
            }
        }
    }
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
            found.finding.text = saidOf(fmt::format("{} and {} fight: {} pushes {} backwards through {}.", other.id,
                                                    taker.id, other.id, formatQuantity(ampere, "A", 2), taker.id),
                                        position);
            found.finding.figures = {{"current", ampere}, {"power", snapshot.partPower[index]}};
            proposeJumpers(examination, position, giver, index, found);
            if (taker.kind->stateIndex("on") >= 0) {
                found.proposals.push_back(
                    {fmt::format("Switch {} off", taker.id), setStateEdit(examination.bench(), taker.id, "on", 0)});
            }
            all.push_back(std::move(found));
        }
    }
    return all;
}

}  // namespace tiepoint
