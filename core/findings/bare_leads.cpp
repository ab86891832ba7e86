// Bare metal that touches other metal: legs that cross, and legs over a hole that something is in. They look joined and should be apart.
// Jumpers are insulated down to the board, so one under a leg only looks joined. Legs of one net may touch.

#include "core/base/capital.h"
#include "core/edit/holes.h"
#include "core/findings/clash_mends.h"
#include "core/words/words.h"

namespace tiepoint {
namespace {

Suspicion legsTouch(const Bench& bench, const Clash& clash) {
    Suspicion found = clashSuspicion(bench, clash);
    found.finding.text = say("finding.bare.cross", {{"one", clash.one}, {"other", clash.other}});
    proposeShifts(bench, {clash.one, clash.other}, found.proposals);
    return found;
}

Suspicion legOnPin(const Bench& bench, const Clash& clash) {
    Suspicion found = clashSuspicion(bench, clash);
    const std::string plug = plugInWords(bench, clash.one, clash.oneLead);
    const std::string leg = plugInWords(bench, clash.other, clash.otherLead), hole = holeName(bench, *clash.hole);
    if (bench.findJumper(clash.one) != nullptr) {
        found.finding.severity = Severity::Remark;
        found.finding.text = say("finding.bare.look", {{"plug", capitalised(plug)}, {"hole", hole}, {"leg", leg}});
    } else {
        found.finding.text = say("finding.bare.touch", {{"hole", hole}, {"leg", leg}, {"plug", plug}});
    }
    proposeNextHole(bench, clash.one, clash.oneLead, *clash.hole, found.proposals);
    proposeShifts(bench, {clash.other, clash.one}, found.proposals);
    return found;
}

}  // namespace

Suspicions findBareLeads(const Examination& examination) {
    Suspicions all;
    for (const Clash& clash : examination.clashes()) {
        if (clash.kind == ClashKind::LegsTouch) all.push_back(legsTouch(examination.bench(), clash));
        if (clash.kind == ClashKind::LegOnPin) all.push_back(legOnPin(examination.bench(), clash));
    }
    return all;
}

}  // namespace tiepoint
