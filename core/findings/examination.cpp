#include "core/findings/examination.h"

#include "core/base/stopping.h"
#include "core/behaviour/behaviour.h"
#include "core/edit/placement.h"
#include "core/findings/positions.h"
#include "core/findings/when_words.h"
#include "core/meter/meter.h"
#include "core/snapshot/readings.h"
#include "core/snapshot/settled_snapshot.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace tiepoint {
namespace {

/// Whether a supply is on; what an instrument tests with lights nothing.
bool isDriven(const Snapshot& snapshot) {
    return snapshot.status() == Status::Solved &&
           std::ranges::any_of(snapshot.solution.elements(), [&](const ElementState& element) {
               return element.closed && snapshot.layout->bench->parts[element.part].kind->isSupply;
           });
}

}  // namespace

std::vector<Hole> holesOf(const Part& part) {
    std::vector<Hole> holes;
    for (const auto& hole : part.leads) {
        if (hole) holes.push_back(*hole);
    }
    return holes;
}

Examination::Examination(const Snapshot& now, ResistorDrawer drawer)
    : drawer_(std::move(drawer)),
      around_(*now.layout->bench, {}, now.layout.get()) {
    // The caller owns the snapshot that was asked about.
    const Behaviour behaviour = behaviourAround({std::shared_ptr<const Snapshot>(), &now});
    const Digits& digits = behaviour.rows.front().digits;
    for (const BehaviourRow& row : behaviour.rows) {
        positions_.push_back({positionWords(behaviour.controls, *now.layout->bench, row.digits, digits), row.snapshot});
    }
    complete_ = behaviour.complete();
    for (const BehaviourRow& row : behaviour.rows) {
        if (!row.snapshot->settled) continue;
        decided_ = decided_ && !isUndecided(*row.snapshot);  // what is left of a charge on the way back leaks for long
        const bool first = &row == &behaviour.rows.front();
        const auto change = [&](const Digits& from, const Digits& to) {
            return changeInWords(behaviour.controls, *now.layout->bench, from, to);
        };
        ways_.push_back({first ? std::string() : change(digits, row.digits), row.snapshot});
        if (row.back) ways_.push_back({change(row.digits, digits), row.back});
    }
    if (!ways_.empty()) instants_ = positions_;
    for (const Way& way : ways_) addInstants(way);

    clashes_ = firstOfEachPair(around_.all());
    supplyNet_.assign(layout().netCount, 0);
    for (int index = 0; index < partCount(); ++index) {
        if (!part(index).kind->isSupply) continue;
        for (int lead = layout().firstLead[index]; lead < layout().firstLead[index + 1]; ++lead) {
            supplyNet_[layout().netOfLead[lead]] = 1;
        }
    }
    // Buttons only add paths, so all of them pressed shows what they can light; changeover switches also take paths away, and with
    // combinations unsolved no one can say that a light stays dark.
    const bool takesAway = std::ranges::any_of(behaviour.controls, [](const Throw& each) { return !each.isCap(); });
    if (!decided_ || !isDriven(now) || (!complete_ && takesAway)) return;
    for (int index = 0; index < partCount(); ++index) {
        if (part(index).kind->emitsLight && !isEverLit(index)) darkLights_.push_back(index);
    }
}

void Examination::addInstants(const Way& way) {
    for (PassingInstant& instant : passingInstants(*way.end)) {
        instants_.push_back({whenInWords(way.change, instant.returns ? std::nullopt : std::optional(instant.second)),
                             std::move(instant.snapshot), true});
    }
}

std::optional<std::string> Examination::momentOfLight(int index) const {
    if (!decided_) return std::nullopt;
    std::optional<std::string> found;
    for (const Position& position : positions_)
        if (position.snapshot->status() != Status::Solved || isLit(*position.snapshot, index)) return std::nullopt;
    for (const Way& way : ways_) {
        const Settled& settled = *way.end->settled;
        if (!found && settled.seenAmpere[index] >= kVisibleAmpere)
            found = whenInWords(way.change, settled.seenSecond[index]);
    }
    return found;
}

double Examination::mostAmpere(int index) const {
    double most = 0;
    for (const Position& position : allInstants()) {
        if (position.snapshot->status() == Status::Solved) {
            most = std::max(most, currentThrough(*position.snapshot, index).inAmpere);
        }
    }
    return most;
}

Figure Examination::mostCurrent(int index) const {
    const auto& most = *std::ranges::max_element(allInstants(), {}, [index](const Position& position) {
        return currentThrough(*position.snapshot, index).inAmpere;
    });
    return most.snapshot->shown().through(index).in;
}

bool Examination::isEverLit(int index) const {
    const auto seen = [index](const Way& way) { return way.end->settled->seenAmpere[index] >= kVisibleAmpere; };
    if (std::ranges::any_of(ways_, seen)) return true;
    return std::ranges::any_of(positions_, [index](const Position& position) {
        return position.snapshot->status() == Status::Solved && isLit(*position.snapshot, index);
    });
}

std::vector<char> Examination::netsNear(int start) const {
    std::vector<char> nets(layout().netCount, 0), seen(bench().parts.size(), 0);
    std::vector<int> open{start};
    seen[start] = 1;
    while (!open.empty()) {
        stopIfAsked();
        const int at = open.back();
        open.pop_back();
        for (int lead = layout().firstLead[at]; lead < layout().firstLead[at + 1]; ++lead) {
            const int net = layout().netOfLead[lead];
            if (supplyNet_[net] || nets[net]) continue;
            nets[net] = 1;
            for (int other = 0; other < layout().leadCount(); ++other) {
                const int owner = layout().partOfLead(other);
                if (layout().netOfLead[other] != net || seen[owner] || looksOn(part(owner))) continue;
                seen[owner] = 1;
                open.push_back(owner);
            }
        }
    }
    return nets;
}

std::vector<std::string> Examination::darkLightsNear(int index) const {
    const auto nets = netsNear(index);
    std::vector<std::string> ids;
    for (const int light : darkLights_) {
        bool near = light == index;
        for (int lead = layout().firstLead[light]; lead < layout().firstLead[light + 1]; ++lead) {
            near = near || nets[layout().netOfLead[lead]] != 0;
        }
        if (near) ids.push_back(part(light).id);
    }
    return ids;
}

bool Examination::meetsOthers(int net, int index) const {
    stopIfAsked();
    for (int lead = 0; lead < layout().leadCount(); ++lead) {
        const bool own = lead >= layout().firstLead[index] && lead < layout().firstLead[index + 1];
        if (!own && layout().netOfLead[lead] == net && !looksOn(part(layout().partOfLead(lead)))) return true;
    }
    return false;
}

std::shared_ptr<const Bench> Examination::after(const Edit& edit) const {
    stopIfAsked();
    auto applied = apply(bench(), edit);
    if (!applied) return nullptr;
    if (refusalOfChange(bench(), applied->bench)) return nullptr;
    return std::make_shared<const Bench>(std::move(applied).value().bench);
}

}  // namespace tiepoint
