// A supply is switched off while something is connected to it: a beginner then looks for a fault that isn't there. Not said while a
// meter measures ohms or continuity, which wants it so.

#include "core/findings/rules.h"
#include "core/meter/meter.h"
#include "core/words/words.h"

#include <algorithm>

namespace tiepoint {
namespace {

/// Whether a lead of any other part is in a net that one of this part's leads is in.
bool isConnected(const Layout& layout, int part) {
    std::vector<char> own(layout.netCount, 0);
    for (int lead = layout.firstLead[part]; lead < layout.firstLead[part + 1]; ++lead) own[layout.netOfLead[lead]] = 1;
    for (int lead = 0; lead < layout.leadCount(); ++lead) {
        const bool ours = lead >= layout.firstLead[part] && lead < layout.firstLead[part + 1];
        if (!ours && own[layout.netOfLead[lead]]) return true;
    }
    return false;
}

Suspicion suspicionOfOff(const Bench& bench, const Part& part) {
    Suspicion found;
    found.finding.severity = Severity::Remark;
    found.finding.parts = {part.id};
    found.finding.holes = holesOf(part);
    found.finding.text = say("finding.supplyOff", {{"supply", part.id}});
    found.proposals.push_back({say("mend.switchOn", {{"supply", part.id}}), setStateEdit(bench, part.id, "on", 1)});
    return found;
}

}  // namespace

Suspicions findSuppliesOff(const Examination& examination) {
    const Layout& layout = examination.layout();
    const Bench& bench = examination.bench();
    Suspicions found;
    if (std::ranges::any_of(bench.parts, testsWithOwnSource)) return found;
    for (int part = 0; part < examination.partCount(); ++part) {
        const Part& supply = bench.parts[part];
        const int on = supply.kind->stateIndex("on");
        if (!supply.kind->isSupply || on < 0 || supply.stateValue(on) != 0) continue;
        if (isConnected(layout, part)) found.push_back(suspicionOfOff(bench, supply));
    }
    return found;
}

}  // namespace tiepoint
