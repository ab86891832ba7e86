// A switch that changes nothing: whatever the other switches do, every other part carries the same current either way. Told only
// where every combination was solved and every light can light; else it is a consequence of something graver.

#include "core/base/stopping.h"
#include "core/circuit/element.h"
#include "core/edit/holes.h"
#include "core/findings/rules.h"
#include "core/findings/trial.h"
#include "core/snapshot/readings.h"
#include "core/words/words.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <iterator>
#include <map>

namespace tiepoint {
namespace {

/// Currents that differ by less are the same.
constexpr double kNoChangeAmpere = 1e-6;

/// How all switches but one stand, in words that tell positions apart.
std::string othersOf(const Snapshot& snapshot, int part) {
    const Bench& bench = *snapshot.layout->bench;
    std::string others;
    for (int other = 0; other < static_cast<int>(bench.parts.size()); ++other) {
        if (other == part || !isSwitch(*bench.parts[other].kind)) continue;
        others += snapshot.inputs->held.contains(bench.parts[other].id) ? '1' : '0';
        for (std::size_t s = 0; s < bench.parts[other].kind->state.size(); ++s) {
            others += fmt::format(",{}", bench.parts[other].stateValue(static_cast<int>(s)));
        }
        others += ';';
    }
    return others;
}

bool sameElsewhere(const Snapshot& a, const Snapshot& b, int part) {
    for (int other = 0; other < static_cast<int>(a.layout->bench->parts.size()); ++other) {
        if (other == part) continue;
        if (std::abs(currentThrough(a, other).inAmpere - currentThrough(b, other).inAmpere) > kNoChangeAmpere)
            return false;
    }
    return true;
}

bool changesNothing(const Examination& examination, int part) {
    std::map<std::string, const Snapshot*> firstOf;
    for (const Position& position : examination.positions()) {
        stopIfAsked();
        const auto [place, added] = firstOf.try_emplace(othersOf(*position.snapshot, part), position.snapshot.get());
        if (!added && !sameElsewhere(*place->second, *position.snapshot, part)) return false;
    }
    return true;
}

bool touchesOther(const Examination& examination, int part) {
    const Layout& layout = examination.layout();
    for (int lead = layout.firstLead[part]; lead < layout.firstLead[part + 1]; ++lead) {
        if (examination.meetsOthers(layout.netOfLead[lead], part)) return true;
    }
    return false;
}

/// Moves of what ends beside the switch or could: one of them may give it something to do.
void proposeWaysOut(const Examination& examination, int part, Suspicion& found) {
    const Layout& layout = examination.layout();
    const auto isOwn = [&](int net) {
        for (int lead = layout.firstLead[part]; lead < layout.firstLead[part + 1]; ++lead) {
            if (layout.netOfLead[lead] == net) return true;
        }
        return false;
    };
    std::vector<Move> moves;
    const auto add = [&](std::vector<Move> more) { std::ranges::move(more, std::back_inserter(moves)); };
    for (int other = 0; other < examination.partCount(); ++other) {
        if (!examination.part(other).kind->isSupply) add(movesOfPart(examination, other));
    }
    for (int jumper = 0; jumper < static_cast<int>(examination.bench().jumpers.size()); ++jumper)
        add(movesOfJumper(examination, jumper));
    for (Move& move : moves) {
        if (!isOwn(move.fromNet) && !isOwn(move.toNet)) continue;
        found.proposals.push_back(
            {say("mend.put", {{"plug", move.what}, {"hole", holeName(examination.bench(), move.to)}}),
             std::move(move.edit)});
    }
}

}  // namespace

Suspicions findWithoutEffect(const Examination& examination) {
    Suspicions all;
    // At rest a capacitor passes nothing, but a switch may well charge it.
    const bool knowable = !movesByItself(examination.bench()) && examination.complete() &&
                          examination.now().status() == Status::Solved && examination.darkLights().empty();
    for (int index = 0; knowable && index < examination.partCount(); ++index) {
        const Part& part = examination.part(index);
        if (!isSwitch(*part.kind) || !touchesOther(examination, index) || !changesNothing(examination, index)) continue;
        Suspicion found;
        found.finding.severity = Severity::Remark;
        found.finding.parts = {part.id};
        found.finding.holes = holesOf(part);
        found.finding.text = say("finding.noEffect", {{"part", part.id}});
        found.finding.figures = {{"change", 0}};
        proposeWaysOut(examination, index, found);
        all.push_back(std::move(found));
    }
    return all;
}

}  // namespace tiepoint
