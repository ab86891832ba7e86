// All leads of a part in one net: current goes round it, and whatever it should do it doesn't. Never said of a switch, whose
// sides a person joins on purpose while building, nor of a supply, which is then shorted, nor of a meter that looks on.

#include "core/edit/holes.h"
#include "core/findings/rules.h"
#include "core/findings/trial.h"
#include "core/meter/meter.h"
#include "core/words/words.h"

#include <algorithm>

namespace tiepoint {
namespace {

bool isInOneNet(const Layout& layout, int part) {
    const int first = layout.firstLead[part], end = layout.firstLead[part + 1];
    if (end - first < 2) return false;
    for (int lead = first; lead < end; ++lead) {
        if (layout.holeOfLead[lead] < 0 || layout.netOfLead[lead] != layout.netOfLead[first]) return false;
    }
    return true;
}

bool isInOneStrip(const Bench& bench, const Part& part) {
    return std::ranges::all_of(part.leads,
                               [&](const auto& hole) { return sameStrip(bench, *part.leads.front(), *hole); });
}

void proposeMoves(const Examination& examination, int part, Suspicion& found) {
    for (Move& move : movesOfPart(examination, part)) {
        found.proposals.push_back(
            {say("mend.put", {{"plug", move.what}, {"hole", shortName(move.to)}}), std::move(move.edit)});
    }
    const int net = examination.layout().netOfLead[examination.layout().firstLead[part]];
    for (std::size_t j = 0; j < examination.bench().jumpers.size(); ++j) {
        const std::string& id = examination.bench().jumpers[j].id;
        const int joint = examination.layout().jumperJoints[j][0];
        if (examination.layout().joints[joint].net != net) continue;
        found.proposals.push_back({say("mend.takeAway", {{"thing", id}}), removeEdit(examination.bench(), {id})});
    }
}

/// What joins the legs, as people see it; the two halves of a column are two strips.
std::string_view sameMetal(const Bench& bench, const Part& part) {
    if (!isInOneStrip(bench, part)) return "finding.bypassed.outside";
    return isRail(part.leads[0]->line) ? "finding.bypassed.rail" : "finding.bypassed.column";
}

}  // namespace

Suspicions findBypassed(const Examination& examination) {
    Suspicions all;
    for (int index = 0; index < examination.partCount(); ++index) {
        const Part& part = examination.part(index);
        const bool concerns = !part.kind->isSupply && !isSwitch(*part.kind) && !looksOn(part);
        if (!concerns || !isInOneNet(examination.layout(), index)) continue;
        Suspicion found;
        found.finding.severity = part.kind->emitsLight ? Severity::Fault : Severity::Risk;
        found.finding.parts = {part.id};
        found.finding.holes = holesOf(part);
        found.finding.text =
            say(sameMetal(examination.bench(), part), {{"part", part.id}, {"legs", part.leads.size()}});
        found.finding.figures = {{"voltage", 0}};
        const auto dark = examination.darkLightsNear(index);
        if (std::ranges::find(dark, part.id) != dark.end()) found.darkens = {part.id};
        proposeMoves(examination, index, found);
        all.push_back(std::move(found));
    }
    return all;
}

}  // namespace tiepoint
